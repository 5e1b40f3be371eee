using System.Xml.Linq;

namespace LabelForge.Cli.Tests;

/// <summary><c>check --report</c>: a page with the label's picture and the places marked.</summary>
public sealed class CheckReportTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("labelforge-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void A_text_label_is_shown_with_its_words_marked_and_nothing_of_it_runs()
    {
        var label = Path.Combine(_folder, "label.txt");
        File.WriteAllText(label,
            "Fen & Furrow\nBar Soap <script>alert(1)</script>\nNet Wt 4 oz (133 g)\nHeals <img src=x onerror=alert(2)> "
                + "hands\nIngredients: Sodium Olivate, Water\n");
        var report = Path.Combine(_folder, "report.html");
        Assert.Equal(1, CommandRun.Of("check", label, "--report", report).ExitCode);
        var page = File.ReadAllText(report);
        Assert.Contains("<mark>Net Wt 4 oz (133 g)<sup>", page);
        Assert.DoesNotContain("<script", page);
        Assert.DoesNotContain("<img", page);
        Assert.Contains("&lt;script&gt;", page);
        Assert.DoesNotContain("http:", page.Replace("http://www.w3.org/2000/svg", ""));
    }

    [Fact]
    public void A_drawing_is_shown_by_its_words_with_the_places_framed()
    {
        var drawing = Path.Combine(Repository.Folder, "tests", "LabelForge.Print.Tests", "DrawnElsewhere",
            "036-no-ingredients.browser.pdf");
        var report = Path.Combine(_folder, "report.html");
        Assert.Equal(1, CommandRun.Of("check", drawing, "--report", report).ExitCode);
        var page = File.ReadAllText(report);
        var svg =
            XElement.Parse(page[page.IndexOf("<svg", StringComparison.Ordinal)..(page.IndexOf("</svg>", StringComparison.Ordinal) + 6)]);
        Assert.Contains(svg.Elements(), e => e.Name.LocalName == "text" && e.Value == "Net");
        Assert.Contains(svg.Elements(), e => e.Name.LocalName == "rect" && (string?)e.Attribute("stroke") == "#b00020");
        var pdf = Path.Combine(_folder, "report.pdf");
        Assert.Equal(1, CommandRun.Of("check", drawing, "--report", pdf).ExitCode);
        Assert.StartsWith("%PDF-", File.ReadAllText(pdf)[..5]);
    }

    [Fact]
    public void A_report_of_another_kind_is_refused()
    {
        var label = Path.Combine(_folder, "label.txt");
        File.WriteAllText(label, "Bar Soap\n");
        var run = CommandRun.Of("check", label, "--report", Path.Combine(_folder, "report.doc"));
        Assert.Equal(2, run.ExitCode);
        Assert.Empty(run.Output);
    }
}
