using System.CommandLine.Help;
using LabelForge.Cli.Completion;
using LabelForge.Cli.Help;
using LabelForge.Cli.Verbs;

namespace LabelForge.Cli;

/// <summary>Everything the command does, as the tree that reads the call, writes the help and proposes the next word.</summary>
public static class CommandTree
{
    /// <summary>How calls are read: a word that begins with @ is that word, as in a note or a
    /// handle, and no file to take words from.</summary>
    public static ParserConfiguration Reading { get; } = new() { ResponseFileTokenReplacer = null };

    /// <summary>The command with all its verbs.</summary>
    public static Command Root()
    {
        // Named by hand: the program file has another name, since the domain's own assembly has this one.
        var root = new Command("labelforge",
            "From a recipe to a checked, printed sheet of labels. Reports what it checked against; it does not decide what is "
                + "lawful for you.")
        {
            new HelpOption { Recursive = true, Action = new ShowHelp() },
            new VersionOption { Action = new ShowVersion() },
        };
        foreach (var verb in new Command[]
        {
            InitVerb.Build(), DemoVerb.Build(), DeclareVerb.Build(), AskVerb.Build(), QuantityVerb.Build(), CheckVerb.Build(),
            RulesVerb.Build(), LotVerb.Build(), LabelVerb.Build(), SheetVerb.Build(), StockVerb.Build(), DesignVerb.Build(),
            GalleryVerb.Build(), ColourVerb.Build(), CalibrateVerb.Build(), BatchVerb.Build(), FragranceVerb.Build(), MaterialVerb.Build(),
            SoapVerb.Build(), ServeVerb.Build(),
        }.Concat(RecordVerbs.All()).Concat([CompletionVerb.Build(), HelpVerb.Build(root), CompleteVerb.Build(root)]))
        {
            root.Subcommands.Add(verb);
        }
        WordSources.AddTo(root);
        return root;
    }
}
