using System.CommandLine;
using LabelForge.Cli;
using LabelForge.Cli.Verbs;

// Figures and messages are written the same way on every machine, whatever its language.
Console.OutputEncoding = System.Text.Encoding.UTF8;
// No text that anyone hands in may hold a pattern up for long.
AppDomain.CurrentDomain.SetData("REGEX_DEFAULT_MATCH_TIMEOUT", TimeSpan.FromSeconds(5));
var root = new RootCommand("From a recipe to a checked, printed sheet of labels. Reports what it checked against; it does not decide what is lawful for you.");
foreach (var verb in new Command[]
{
    InitVerb.Build(), DemoVerb.Build(), DeclareVerb.Build(), QuantityVerb.Build(), CheckVerb.Build(), RulesVerb.Build(), LotVerb.Build(),
    LabelVerb.Build(), SheetVerb.Build(), StockVerb.Build(), DesignVerb.Build(), CalibrateVerb.Build(), BatchVerb.Build(),
    FragranceVerb.Build(), MaterialVerb.Build(), SoapVerb.Build(),
}.Concat(RecordVerbs.All()))
{
    root.Subcommands.Add(verb);
}
var parsed = root.Parse(args);
if (parsed.Errors.Count > 0)
{
    Console.Error.WriteLine($"{parsed.Errors[0].Message} See: labelforge {parsed.CommandResult.Command.Name} --help");
    return Exit.WrongInput;
}
return parsed.Invoke();
