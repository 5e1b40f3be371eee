using LabelForge.Cli.Help;
using LabelForge.Markets;

namespace LabelForge.Cli.Tests;

public sealed class ManualPageTests
{
    [Fact]
    public void The_manual_page_has_every_verb_and_every_example()
    {
        var root = CommandTree.Root();
        var page = ManualPage.Of(root).ReplaceLineEndings("\n");
        Assert.All(root.Subcommands.Where(v => !v.Hidden),
            v => Assert.Contains($"\n.SS {v.Name.Replace("-", "\\-", StringComparison.Ordinal)}\n", page, StringComparison.Ordinal));
        Assert.All(VerbExamples.All,
            e => Assert.Contains(e.Call.Replace("\\", "\\e", StringComparison.Ordinal).Replace("-", "\\-", StringComparison.Ordinal), page,
                StringComparison.Ordinal));
    }

    [Fact]
    public void No_line_of_the_manual_page_is_taken_for_a_request_that_is_none()
    {
        // man(7): a line that begins with a full stop or an apostrophe is a request.
        string[] requests = [".TH", ".SH", ".SS", ".PP", ".TP", ".B", ".I", ".nf", ".fi", ".RS", ".RE"];
        var begun = ManualPage.Of(CommandTree.Root()).Split('\n').Where(l => l.StartsWith('.') || l.StartsWith('\''))
            .Select(l => l.Split(' ')[0]).Distinct();
        Assert.Empty(begun.Except(requests));
    }

    [Fact]
    public void The_version_says_the_commit_and_the_day_of_the_law()
    {
        var said = CommandRun.Of("--version");
        Assert.Equal(0, said.ExitCode);
        Assert.Matches(@"^labelforge \d+\.\d+\.\d+\r?\n", said.Output);
        Assert.Contains($"{LawTexts.All.Max(t => t.ReadOn):yyyy-MM-dd}", said.Output, StringComparison.Ordinal);
        Assert.All(MarketBook.Shipped.Ids, m => Assert.Contains(m, said.Output, StringComparison.Ordinal));
    }
}
