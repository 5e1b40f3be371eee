using LabelForge.Cli.Help;

namespace LabelForge.Cli.Tests;

public sealed class HelpTests
{
    [Fact]
    public void The_page_of_commands_is_what_help_writes()
    {
        var page = Path.Combine(Repository.Folder, "docs", "commands.md");
        var written = CommandRun.Of("help", "--all").Output.ReplaceLineEndings("\n");
        Assert.True(File.ReadAllText(page).ReplaceLineEndings("\n") == written,
            "docs/commands.md is old. Write it anew: dotnet run --project src/LabelForge.Cli -- help --all > docs/commands.md");
    }

    [Fact]
    public void Help_for_a_verb_shows_what_it_takes_and_a_call_to_start_from()
    {
        var help = CommandRun.Of("help", "lot", "barcode");
        Assert.Equal(0, help.ExitCode);
        Assert.Contains("labelforge lot barcode <code>", help.Output);
        Assert.Contains("--gtin", help.Output);
        Assert.Contains(VerbExamples.All.Single(e => e.Verb == "lot barcode").Call, help.Output);
    }

    [Fact]
    public void Help_and_the_dash_dash_help_of_a_verb_say_the_same()
    {
        Assert.Equal(CommandRun.Of("sheet", "--help").Output, CommandRun.Of("help", "sheet").Output);
    }

    [Theory]
    [InlineData("today")]
    [InlineData("trace", "M1")]
    [InlineData("cost", "hayloft-bar")]
    [InlineData("buy", "hayloft-bar:6")]
    [InlineData("stock-in-hand")]
    [InlineData("books", "sales")]
    public void A_verb_that_only_reads_takes_no_word_for_who_did_it_and_no_note(params string[] call)
    {
        var help = CommandRun.Of("help", call[0]).Output;
        Assert.DoesNotContain("--by", help, StringComparison.Ordinal);
        Assert.DoesNotContain("--note", help, StringComparison.Ordinal);
        Assert.Equal(2, CommandRun.Of([.. call, "--by", "Ada"]).ExitCode);
    }

    [Fact]
    public void Every_verb_stands_in_the_group_of_what_it_is_for_and_once()
    {
        var grouped = VerbGroups.All.SelectMany(g => g.Verbs).ToArray();
        Assert.Equal(grouped.Distinct(), grouped);
        Assert.Empty(CommandTree.Root().Subcommands.Where(v => !v.Hidden).Select(v => v.Name).Except(grouped));
        Assert.DoesNotContain($"\n{VerbGroups.Rest}\n", CommandRun.Of("--help").Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Help_is_eighty_columns_wide_and_names_kinds_of_values_and_never_a_workshops_own()
    {
        IEnumerable<System.CommandLine.Command> Under(System.CommandLine.Command c) =>
        [c, .. c.Subcommands.Where(v => !v.Hidden).SelectMany(Under)];
        foreach (var verb in Under(CommandTree.Root()))
        {
            var lines = HelpText.Of(verb).Split('\n');
            // An example is copied whole.
            Assert.All(lines.Where(l => !l.StartsWith("    labelforge ", StringComparison.Ordinal)),
                l => Assert.InRange(l.Length, 0, HelpText.Width));
            Assert.DoesNotContain(lines,
                l => l.Contains("<bramble-bar", StringComparison.Ordinal) || l.Contains("bar-2x4|", StringComparison.Ordinal));
        }
    }

    [Fact]
    public void The_command_alone_shows_what_it_does() =>
        Assert.Equal((0, CommandRun.Of("--help").Output), (CommandRun.Of().ExitCode, CommandRun.Of().Output));

    [Theory]
    [InlineData("Did you mean label?", "lable", "bramble-bar")]
    [InlineData("label takes no --desing. Did you mean --design?", "label", "bramble-bar", "--desing", "bar-2x4")]
    [InlineData("--workshop stands behind the verb: labelforge today --workshop <folder>.", "--workshop", ".", "today")]
    [InlineData("gallery needs --out <file>", "gallery", "bramble-bar")]
    [InlineData("declare needs <recipe>: The recipe's file", "declare")]
    [InlineData("--format does not know \"xml\". Write one of: json, text.", "declare", "bramble-bar", "--format", "xml")]
    [InlineData("\"many\" is not a number that --dpi can use.", "label", "bramble-bar", "--lot", "26R25-01E", "--out", "x.png", "--dpi",
        "many")]
    [InlineData("lot does several things: lot new", "lot")]
    [InlineData("Did you mean barcode?", "lot", "bar-code", "26R25-01E")]
    public void A_slip_in_a_call_is_answered_with_what_was_meant(string says, params string[] call)
    {
        var run = CommandRun.Of(call);
        Assert.Equal((2, ""), (run.ExitCode, run.Output));
        Assert.Contains(says, run.Messages, StringComparison.Ordinal);
        Assert.Contains("--help", run.Messages, StringComparison.Ordinal);
    }

    [Fact]
    public void Help_for_what_is_no_verb_says_so()
    {
        var help = CommandRun.Of("help", "bake");
        Assert.Equal(2, help.ExitCode);
        Assert.Contains("\"bake\" is not something labelforge does", help.Messages);
    }
}
