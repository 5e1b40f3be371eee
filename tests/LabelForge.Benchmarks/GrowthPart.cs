using System.Globalization;
using System.Text;
using LabelForge.Benchmarks.Floor;
using LabelForge.Composition;
using LabelForge.Lots;
using LabelForge.Print.Jobs;
using LabelForge.Print.Output;
using LabelForge.Print.Reading;
using LabelForge.Print.Sheets;
using LabelForge.Tests.Shared;

namespace LabelForge.Benchmarks;

/// <summary>How each grows with its size, in this process, as tables and as pictures on log paper.</summary>
internal static class GrowthPart
{
    private static readonly DocumentInfo Info = new("Guest bar", DateTimeOffset.UnixEpoch);

    public static string Measure()
    {
        var text =
            new StringBuilder(
                $"{Machine.Line()} In one process, the best of some. *Power*: the exponent of the size by which the time grows over the "
                    + $"upper half of the sizes; n log n shows as about 1.1 to 1.2 there.\n");
        Add(text, "order", "The order of ingredients", "ingredients", Order(),
            "Every pair is proved on its own, safe or not, and a label may turn on any one of them: there are n (n - 1) / 2, so that "
                + "their growth is quadratic at best. It tells from a hundred on; no label has 400.");
        Add(text, "sheets", "Labels on sheets", "sheets of thirty labels", Sheets(),
            "All in step with the sheets; what is the same for all sheets, the drawing of the label, is most of the first.");
        Add(text, "check", "Reading a label back from a PDF", "letters on the page", Check(),
            "Blocks of lines are found by the distances between words, each to its neighbours, in PdfPig's analysis of the page's layout, "
                + "which is quadratic in the words of a page. A label holds some hundred; a page with more letters than any label "
                + "is refused.");
        return text.ToString();
    }

    /// <summary>The books by themselves, in a file and on a server: what is done and shown in a day must not grow with the shop.</summary>
    public static string MeasureBooks()
    {
        var text =
            new StringBuilder(
                $"{Machine.Line()} In one process, the best of some; *power* as above. A shop at work that makes ten batches a day and "
                    + $"has a hundred lots with pieces in the house, however long it has been; each batch has two weighings, a closing "
                    + $"and a sale, and twenty share a bottle of each material.\n");
        using var server = PostgresServer.IsInstalled ? new PostgresServer(keepsPromises: true) : null;
        Add(text, "books", "SQLite", n => BookFill.Make(n));
        if (server is not null)
            Add(text, "books-server", "PostgreSQL on this machine", n => BookFill.Make(n, server));
        return text.ToString();
    }

    private static void Add(StringBuilder text, string id, string store, Func<int, string> make)
    {
        int[] sizes = [100, 1000, 10_000, 100_000];
        var asked = new Dictionary<string, List<(string Group, string What, double Size, double Seconds)>>();
        foreach (var n in sizes)
        {
            var uses = new BookUses(make(n), n);
            foreach (var (group, of) in new[] { ("acts", uses.Acts), ("pages", uses.Pages), ("whole", uses.Whole) })
            {
                foreach (var use in of)
                    (asked.TryGetValue(use.What, out var known) ? known : asked[use.What] = [])
                        .Add((group, use.What, n, Timing.Best(use.Ask)));
            }
        }
        IReadOnlyList<Curve> Of(string group) =>
        [.. asked.Values.Where(a => a[0].Group == group).Select(a => new Curve(a[0].What, [.. a.Select(p => (p.Size, p.Seconds))]))];
        Add(text, $"{id}-acts", $"Written into the books: {store}", "batches", Of("acts"),
            "Each is a transaction that is on the disk when it is acknowledged: the lot found by index, the entry written, the balance "
                + "kept. It is flat. The first row is the store's own part of each: one row written by it alone, and flushed.");
        Add(text, $"{id}-pages", $"Shown by pages and verbs: {store}", "batches", Of("pages"),
            "Each asks for what it shows, by index and in pages, and is flat where what lies in the house and what is on a page are. The "
                + "names of the products ever made are read from name to name in an index, and what can be sold from what is in the house. "
                + "Under load the figures scatter by some factors.");
        Add(text, id, $"What lists or adds up all that was made: {store}", "batches", Of("whole"),
            "These grow with what they list or add up: every name, every lot of a product, every entry of a year and before it.");
    }

    private static void Add(StringBuilder text, string id, string title, string size, IReadOnlyList<Curve> curves, string? reason)
    {
        Directory.CreateDirectory(Repository.File("docs/growth"));
        LogPaper.Draw(Repository.File($"docs/growth/{id}.svg"), title, size, curves);
        text.Append(CultureInfo.InvariantCulture,
            $"\n### {title}\n\n![{title}: time against {size}, on log paper](growth/{id}.svg)\n\n| what | {string.Join(" | ", curves[0].Points.Select(p => p.Size.ToString("#,0", CultureInfo.InvariantCulture)))} | power |\n| --- |{string.Concat(curves[0].Points.Select(_ => " ---: |"))} ---: |\n");
        foreach (var curve in curves)
            text.Append(CultureInfo.InvariantCulture,
                $"| {curve.Name} | {string.Join(" | ", curve.Points.Select(p => Figures.Time(p.Seconds)))} | {curve.Power:0.00} |\n");
        if (reason is not null)
            text.Append(CultureInfo.InvariantCulture, $"\n{reason}\n");
    }

    private static IReadOnlyList<Curve> Order()
    {
        int[] sizes = [10, 20, 50, 100, 200, 400];
        Timing.WarmUp(sizes.SelectMany(n => new[] { ListedOrder.Strict, ListedOrder.Label }
            .Select(l => (Action)(() => Prover.Prove(Instances.Of(n, l))))));
        return
        [
            new("lists in descending order", [.. sizes.Select(n => ((double)n, Timed(Instances.Of(n, ListedOrder.Strict))))]),
            new("lists trusted as labels", [.. sizes.Select(n => ((double)n, Timed(Instances.Of(n, ListedOrder.Label))))]),
        ];
        static double Timed(System.Collections.Immutable.ImmutableArray<MaterialPart> parts) => Timing.Best(() => Prover.Prove(parts));
    }

    private static IReadOnlyList<Curve> Sheets()
    {
        int[] sizes = [1, 10, 100, 1000, 3000];
        var (label, to, job) = (BenchWorkshop.Label(), Scratch.Path("growth.pdf"), BenchWorkshop.Job());
        var ink = InkRecording.Of(label, LabelStock.Load(BenchWorkshop.Stock));
        return
        [
            Each("each its own number and barcode", sheets =>
            {
                var serials = SerialLabels.Prepare(job, LotCode.Parse(BenchWorkshop.Lot).Value, new SerialNumbers(1, sheets * 30, 6));
                SerialSheets.WritePdf(to, serials, BenchWorkshop.Order(serials.Sample, serials.Count), Info);
            }),
            Each("one lot", sheets => SheetWriter.WritePdf(to, BenchWorkshop.Order(label, sheets * 30), Info)),
            Each("written by hand: one form placed", sheets => FormFile.WriteSheets(ink, sheets, to)),
        ];
        Curve Each(string name, Action<int> write)
        {
            Timing.WarmUp(() => write(20));
            return new(name, [.. sizes.Select(n => ((double)n, Timing.Best(() => write(n))))]);
        }
    }

    // The labels of a sheet read as one label: more and more letters on one page.
    private static IReadOnlyList<Curve> Check()
    {
        var points = new List<(double, double)>();
        foreach (var labels in new[] { 1, 2, 4, 8, 16, 30 })
        {
            var path = Scratch.Path("growth.pdf");
            SheetWriter.WritePdf(path, BenchWorkshop.Order(BenchWorkshop.Label(), labels), Info);
            var bytes = File.ReadAllBytes(path);
            var letters = PdfLabelReader.Read(bytes, path).Text.Length;
            points.Add((letters, Timing.Best(() => PdfLabelReader.Read(bytes, path))));
        }
        return [new("PDF to words and heights", points)];
    }
}
