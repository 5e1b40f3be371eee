using LabelForge.Recipes.Files;

namespace LabelForge.Cli.Help;

/// <summary><c>help</c>: one verb, or all of them as a page in Markdown or for <c>man</c>.</summary>
internal static class HelpVerb
{
    public static Command Build(Command root)
    {
        var asked = new Argument<string[]>("VERB") { Description = "The verb, as: sheet, or: lot new", Arity = ArgumentArity.ZeroOrMore };
        asked.CompletionSources
            .Add(_ => root.Subcommands.Where(v => !v.Hidden).Select(v => new System.CommandLine.Completions.CompletionItem(v.Name)));
        var all = new Option<bool>("--all") { Description = "Everything, as a page in Markdown" };
        var manual = new Option<bool>("--manual")
        {
            Description = "Everything, as a manual page: labelforge help --manual > labelforge.1",
        };
        var verb = new Command("help", "What a verb does and takes, with examples") { asked, all, manual };
        verb.SetAction(r =>
        {
            if (r.GetValue(manual))
            {
                Console.Write(ManualPage.Of(root));
                return Exit.Done;
            }
            if (r.GetValue(all))
            {
                Console.Write(CommandPage.Markdown(root));
                return Exit.Done;
            }
            var found = root;
            foreach (var word in r.GetValue(asked) ?? [])
            {
                if (found.Subcommands.FirstOrDefault(v => v.Name == word) is not { } next)
                {
                    var near = Spelling.NearestOfFew(word, found.Subcommands.Where(v => !v.Hidden).Select(v => v.Name));
                    Console.Error.WriteLine($"\"{word}\" is not something {(found == root ? "labelforge" : found.Name)} does.{(near is null ? "" : $" Did you mean {near}?")} See: labelforge --help");
                    return Exit.WrongInput;
                }
                found = next;
            }
            Console.Write(HelpText.Of(found));
            return Exit.Done;
        });
        return verb;
    }
}
