using System.CommandLine.Invocation;
using LabelForge.Records.Books;

namespace LabelForge.Cli.Handover;

/// <summary>What a verb does for which the whole program may be needed: it is asked before anything is read, said or written.</summary>
/// <param name="needs">Whether this call needs it.</param>
/// <param name="run">What the verb does.</param>
internal sealed class WholeAction(Func<ParseResult, bool> needs, Func<ParseResult, int> run) : SynchronousCommandLineAction
{
    public override int Invoke(ParseResult parseResult) => Exit.Run(() => WholeProgram.IsThis || !needs(parseResult)
        ? run(parseResult)
        : throw new NeedsWholeProgramException());
}

/// <summary>How a verb says what of the whole program it needs.</summary>
internal static class WholeVerbs
{
    extension(Command verb)
    {
        /// <summary>It opens the books, whatever the call says.</summary>
        public Command OpensBooks(Func<ParseResult, int> run) => verb.Does(new WholeAction(_ => true, run));

        /// <summary>It looks into the books of a workshop that keeps some.</summary>
        /// <param name="folder">The workshop's folder, or null where the call asks for nothing that stands in books.</param>
        /// <param name="run">What it does.</param>
        public Command OpensBooksWhereKept(Func<ParseResult, string?> folder, Func<ParseResult, int> run) =>
            verb.Does(new WholeAction(r => folder(r) is { } kept && Keeps(kept), run));

        /// <summary>It serves the page.</summary>
        public Command OpensPage(Func<ParseResult, int> run) => verb.Does(new WholeAction(_ => true, run));

        private Command Does(WholeAction action)
        {
            verb.Action = action;
            return verb;
        }
    }

    // What cannot be read is told by the verb itself.
    private static bool Keeps(string folder)
    {
        try
        {
            return OpenBooks.Exists(folder);
        }
        catch (InputException)
        {
            return false;
        }
    }
}
