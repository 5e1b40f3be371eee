using System.CommandLine;
using LabelForge.Cli;
using LabelForge.Cli.Help;

Messages.CannotFail();
// Figures and messages are written the same way on every machine, whatever its language.
Console.OutputEncoding = System.Text.Encoding.UTF8;
// No text that anyone hands in may hold a pattern up for long.
AppDomain.CurrentDomain.SetData("REGEX_DEFAULT_MATCH_TIMEOUT", TimeSpan.FromSeconds(5));
var root = CommandTree.Root();
var parsed = root.Parse(args, CommandTree.Reading);
if (parsed.Errors.Count > 0)
{
    var asked = parsed.CommandResult.Command;
    var wrong = parsed.UnmatchedTokens is [var word, ..] && asked == root ? $"\"{word}\" is not something labelforge does." : parsed.Errors[0].Message;
    Console.Error.WriteLine($"{wrong} See: {(asked == root ? "labelforge" : $"labelforge {VerbExamples.PathOf(asked)}")} --help");
    return Exit.WrongInput;
}
// What help writes fails as an answer does: a reader that went away, a disk that is full.
return Exit.Run(() => parsed.Invoke(new InvocationConfiguration { EnableDefaultExceptionHandler = false }));
