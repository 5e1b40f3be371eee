using System.CommandLine;
using System.CommandLine.Help;
using LabelForge.Cli;
using LabelForge.Cli.Verbs;

// Figures and messages are written the same way on every machine, whatever its language.
Console.OutputEncoding = System.Text.Encoding.UTF8;
// No text that anyone hands in may hold a pattern up for long.
AppDomain.CurrentDomain.SetData("REGEX_DEFAULT_MATCH_TIMEOUT", TimeSpan.FromSeconds(5));
// Named by hand: the program file has another name, since the domain's own assembly has this one.
var root = new Command("labelforge", "From a recipe to a checked, printed sheet of labels. Reports what it checked against; it does not decide what is lawful for you.")
{
    new HelpOption { Recursive = true },
    new VersionOption(),
};
foreach (var verb in new Command[]
{
    InitVerb.Build(), DemoVerb.Build(), DeclareVerb.Build(), QuantityVerb.Build(), CheckVerb.Build(), RulesVerb.Build(), LotVerb.Build(),
    LabelVerb.Build(), SheetVerb.Build(), StockVerb.Build(), DesignVerb.Build(), CalibrateVerb.Build(), BatchVerb.Build(),
    FragranceVerb.Build(), MaterialVerb.Build(), SoapVerb.Build(), ServeVerb.Build(),
}.Concat(RecordVerbs.All()))
{
    root.Subcommands.Add(verb);
}
var parsed = root.Parse(args);
if (parsed.Errors.Count > 0)
{
    var asked = parsed.CommandResult.Command;
    var wrong = parsed.UnmatchedTokens is [var word, ..] && asked == root ? $"\"{word}\" is not something labelforge does." : parsed.Errors[0].Message;
    Console.Error.WriteLine($"{wrong} See: {(asked == root ? "labelforge" : $"labelforge {asked.Name}")} --help");
    return Exit.WrongInput;
}
return parsed.Invoke();
