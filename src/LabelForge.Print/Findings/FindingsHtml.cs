using System.Net;
using LabelForge.Checks;
using LabelForge.Checks.Reading;
using LabelForge.Print.Output;

namespace LabelForge.Print.Findings;

/// <summary>A check's report as one HTML file: no scripts, nothing fetched, everything that was read escaped.</summary>
public static class FindingsHtml
{
    private const string Style = """
        body{font:16px/1.45 system-ui,sans-serif;max-width:60rem;margin:2rem auto;padding:0 1rem;color:#1c1c1c;background:#fff}
        h1{font-size:1.5rem}h2{font-size:1.15rem;margin-top:2rem;border-bottom:1px solid #bbb}
        figure{margin:1rem 0}svg.label{max-width:100%;height:auto;border:1px solid #999;background:#fff}
        dl{display:grid;grid-template-columns:max-content 1fr;gap:.2rem 1rem}dt{color:#555}dd{margin:0;overflow-wrap:anywhere}
        ol{padding-left:0;list-style:none}li{margin:.8rem 0;padding-left:.8rem;border-left:4px solid #777}
        li.must{border-color:#b00020}li.should{border-color:#b36b00}li.note{border-color:#4a6078}
        .fix{margin:.2rem 0}.source{color:#555;font-size:.85rem}code{font-size:.85rem}
        pre{white-space:pre-wrap;background:#f7f7f5;padding:1rem;border:1px solid #ccc}mark{background:#fff1b8;border-bottom:2px solid #b36b00}
        @media print{body{margin:0;max-width:none}li,figure{break-inside:avoid}}
        """;

    /// <summary>Writes the report, whole or not at all.</summary>
    /// <param name="path">Where to.</param>
    /// <param name="labels">What was checked, each with its answer; one or more.</param>
    /// <param name="on">The day they were judged by.</param>
    public static void Write(string path, ImmutableArray<JudgedLabel> labels, DateOnly on) =>
        AtomicFile.Write(path, Page(labels, on));

    /// <summary>The page.</summary>
    public static string Page(ImmutableArray<JudgedLabel> labels, DateOnly on)
    {
        var page =
            new StringBuilder(
                "<!doctype html>\n<html lang=\"en\">\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" "
                    + "content=\"width=device-width\">\n");
        page.Append(
            "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'; img-src data:\">\n");
        page.Append(CultureInfo.InvariantCulture,
            $"<title>{Safe(string.Join("; ", labels.Select(l => l.Title)))}</title>\n<style>{Style}</style>\n");
        foreach (var label in labels)
            Write(page, label, on);
        return page.Append("</html>\n").ToString();
    }

    private static void Write(StringBuilder page, JudgedLabel label, DateOnly on)
    {
        var (report, pages, reading) = (label.Report, label.Pages, label.Reading);
        page.Append(CultureInfo.InvariantCulture, $"<h1>{Safe(label.Title)}</h1>\n");
        page.Append(CultureInfo.InvariantCulture,
            $"<p>Checked against the rules of {report.Market} as of {on:yyyy-MM-dd}: {Counted(report)}. This is not legal advice.</p>\n");
        for (var i = 0; i < pages.Length; i++)
            page.Append(CultureInfo.InvariantCulture,
                $"<figure>{FindingsSvg.Of(pages[i], report)}{(pages[i].Label is null ? "<figcaption>The words where they stand, not how they look.</figcaption>" : "")}</figure>\n");
        if (reading is not null && pages.IsEmpty)
            page.Append(CultureInfo.InvariantCulture, $"<pre>{Marked(reading, report)}</pre>\n");
        Read(page, report.Found);
        var number = 0;
        foreach (var group in report.Findings.GroupBy(f => f.Severity))
        {
            page.Append(CultureInfo.InvariantCulture, $"<h2>{Heading(group.Key)}</h2>\n<ol>\n");
            foreach (var finding in group)
                page.Append(CultureInfo.InvariantCulture,
                    $"<li class=\"{Name(finding.Severity)}\"><b>{++number}. {Safe(finding.Message)}</b><div class=\"fix\">{Safe(finding.Fix)}</div><div class=\"source\"><code>{Safe(finding.Rule)}</code> {Safe(finding.Source)}</div></li>\n");
            page.Append("</ol>\n");
        }
    }

    private static string Counted(CheckReport report) => report.Findings.IsEmpty
        ? "nothing was found wrong or missing by these checks"
        : string.Join(", ", report.Findings.GroupBy(f => f.Severity).Select(g => $"{g.Count()} {Name(g.Key)}"));

    private static void Read(StringBuilder page, LabelFound found)
    {
        page.Append("<h2>What stands on the label, as read</h2>\n<dl>\n");
        foreach (var (what, text) in found.Parts)
            page.Append(CultureInfo.InvariantCulture, $"<dt>{what}</dt><dd>{(string.IsNullOrEmpty(text) ? "(none)" : Safe(text))}</dd>\n");
        page.Append("</dl>\n");
    }

    // Marks that overlap run together; each run tells the numbers of its findings.
    private static string Marked(LabelStatement reading, CheckReport report)
    {
        var text = reading.Text.Text;
        var numbers = new SortedSet<int>?[text.Length];
        foreach (var (finding, number) in report.Findings.Select((f, i) => (f, i + 1)))
        {
            foreach (var at in FindingPlaces.Of(finding, reading).SelectMany(s => Enumerable.Range(s.Start, s.Length)))
                (numbers[at] ??= []).Add(number);
        }
        var page = new StringBuilder();
        for (var start = 0; start < text.Length;)
        {
            var end = start + 1;
            while (end < text.Length
                && (numbers[end] is null
                    ? numbers[start] is null
                    : numbers[start] is not null && numbers[end]!.SetEquals(numbers[start]!)))
                end++;
            var words = Safe(text[start..end]);
            page.Append(numbers[start] is { } of ? $"<mark>{words}<sup>{string.Join(' ', of)}</sup></mark>" : words);
            start = end;
        }
        return page.ToString();
    }

    private static string Heading(Severity severity) => severity switch
    {
        Severity.Must => "Must: a rule requires it",
        Severity.Should => "Should: good practice, or a risk",
        _ => "Notes",
    };

    private static string Name(Severity severity) => severity.ToString().ToLowerInvariant();

    private static string Safe(string text) => WebUtility.HtmlEncode(text);
}
