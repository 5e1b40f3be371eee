using System.Globalization;
using System.Text;
using LabelForge.Print.Output;
using LabelForge.Print.Sheets;

namespace LabelForge.Benchmarks;

/// <summary>Checking a PDF: reading its letters back and judging what they say.</summary>
internal static class CheckPart
{
    private const int MostPages = 4;

    /// <summary>A PDF of so many pages, one label on each.</summary>
    private static string Pdf(int pages)
    {
        var path = Scratch.Path($"check-{pages}.pdf");
        var order = new SheetOrder { Stock = LabelStock.Load("roll-3x1in"), Runs = [new LabelRun(BenchWorkshop.Label(), pages)] };
        SheetWriter.WritePdf(path, order, new DocumentInfo("Guest bar", DateTimeOffset.UnixEpoch));
        return path;
    }

    public static string Measure()
    {
        var command = Published.Command;
        var text =
            new StringBuilder(
                $"{Machine.Line()} `labelforge check` as a process of its own, the best of 3; each page is one label.\n\n| pages | answer "
                    + $"| time | processor | peak memory |\n| ---: | --- | ---: | ---: | ---: |\n");
        foreach (var pages in new[] { 1, 2, MostPages, 10, 100 })
        {
            var path = Pdf(pages);
            var run = ChildRun.BestOf(3, () => ChildRun.OfAnswer(pages > MostPages ? [2] : [0, 1], command, "check", path))[0];
            text.Append(CultureInfo.InvariantCulture,
                $"| {pages} | {(pages > MostPages ? "refused" : "checked")} | {Figures.Time(run.Wall)} | {Figures.Time(run.Cpu)} | {Figures.Bytes(run.PeakBytes)} |\n");
        }
        text.Append(CultureInfo.InvariantCulture,
            $"\nA PDF of more than {MostPages} pages is no label and is refused when its pages are counted, before any is read: a hostile "
                + $"file costs no more than a long one.\n");
        return text.ToString();
    }
}
