using System.Runtime.CompilerServices;
using LabelForge.Cli.Help;

namespace LabelForge.Cli.Tests;

public sealed class HelpTests
{
    [Fact]
    public void The_page_of_commands_is_what_help_writes()
    {
        var page = Path.Combine(Path.GetDirectoryName(Here())!, "..", "..", "docs", "commands.md");
        var written = CommandRun.Of("help", "--all").Output.ReplaceLineEndings("\n");
        Assert.True(File.ReadAllText(page).ReplaceLineEndings("\n") == written, "docs/commands.md is old. Write it anew: dotnet run --project src/LabelForge.Cli -- help --all > docs/commands.md");
    }

    [Fact]
    public void Help_for_a_verb_shows_what_it_takes_and_a_call_to_start_from()
    {
        var help = CommandRun.Of("help", "lot", "barcode");
        Assert.Equal(0, help.ExitCode);
        Assert.Contains("labelforge lot barcode <CODE>", help.Output);
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
    public void Help_for_what_is_no_verb_says_so()
    {
        var help = CommandRun.Of("help", "bake");
        Assert.Equal(2, help.ExitCode);
        Assert.Contains("\"bake\" is not something labelforge does", help.Messages);
    }

    private static string Here([CallerFilePath] string here = "") => here;
}
