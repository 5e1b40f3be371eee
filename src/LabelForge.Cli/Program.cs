using LabelForge.Cli;
using LabelForge.Cli.Help;

Messages.CannotFail();
// Figures and messages are written the same way on every machine, whatever its language.
Console.OutputEncoding = System.Text.Encoding.UTF8;
// No text that anyone hands in may hold a pattern up for long.
AppDomain.CurrentDomain.SetData("REGEX_DEFAULT_MATCH_TIMEOUT", TimeSpan.FromSeconds(5));
var root = CommandTree.Root();
var parsed = root.Parse(args, CommandTree.Reading);
if (args.Length == 0)
    return Exit.Run(() => root.Parse("--help", CommandTree.Reading)
        .Invoke(new InvocationConfiguration { EnableDefaultExceptionHandler = false }));
if (CallMessages.IsWrong(parsed))
{
    Console.Error.WriteLine(CallMessages.Of(parsed));
    return Exit.WrongInput;
}
// What help writes fails as an answer does: a reader that went away, a disk that is full.
return Exit.Run(() => parsed.Invoke(new InvocationConfiguration { EnableDefaultExceptionHandler = false }));
