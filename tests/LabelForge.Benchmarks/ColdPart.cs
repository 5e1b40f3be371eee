using System.Globalization;
using LabelForge.Print.Sheets;
using LabelForge.Records.Books;

namespace LabelForge.Benchmarks;

/// <summary>One call from a cold start: from the start of the process to its end.</summary>
internal static class ColdPart
{
    private const int Repeats = 20;

    public static string Measure()
    {
        var (command, whole, floor) = (Published.Command, Published.Whole, Published.Floor);
        var machine = Machine.Line();
        var (ink, to) = (Scratch.Path("ink.txt"), Scratch.Path("label.pdf"));
        InkRecording.Of(BenchWorkshop.Label(), LabelStock.Load(BenchWorkshop.Stock)).Write(ink);
        string[] shop = ["--workshop", BenchWorkshop.Folder, "--on", "2026-11-25"];
        string[] label = ["label", BenchWorkshop.Recipe, .. shop, "--lot", BenchWorkshop.Lot, "--design", BenchWorkshop.Design, "--out", to];
        var books = WithBooks();
        (string What, Func<ChildRun> Run)[] all =
        [
            ("a program that does nothing: the runtime's own share", () => ChildRun.Of(floor, "empty")),
            ("a bare program: reads the recorded ink, draws one label with SkiaSharp", () => ChildRun.Of(floor, "one", ink, to)),
            ("labelforge --version", () => ChildRun.Of(command, "--version")),
            ("labelforge declare", () => ChildRun.OfAnswer([0, 1], command, ["declare", BenchWorkshop.Recipe, .. shop])),
            ("labelforge check", () => ChildRun.OfAnswer([0, 1], command, ["check", BenchWorkshop.Recipe, .. shop])),
            ("labelforge label: workshop, dictionary, rules, declaration, layout, PDF", () => ChildRun.Of(command, label)),
            ("the same by the whole command, with books and page", () => ChildRun.Of(whole, label)),
            ("labelforge stock-in-hand: handed over, and the books opened", () => ChildRun.Of(command, "stock-in-hand", "--workshop", books)),
        ];
        var runs = ChildRun.BestOf(Repeats, [.. all.Select(a => a.Run)]);
        var rows = all.Zip(runs, (a, run) => string.Create(CultureInfo.InvariantCulture,
            $"| {a.What} | {Figures.Time(run.Wall)} | {Figures.Time(run.Cpu)} | {Figures.Bytes(run.PeakBytes)} |"));
        return string.Create(CultureInfo.InvariantCulture, $"""
            {machine} The first two and the whole command are compiled ahead of time (ReadyToRun), the others natively; the best of {Repeats} runs, taken in turn.

            | what | time | processor | peak memory |
            | --- | ---: | ---: | ---: |
            {string.Join('\n', rows)}

            labelforge label to the bare program: {Figures.Ratio(runs[5].Wall / runs[1].Wall)} by the clock, {Figures.Ratio(runs[5].Cpu / runs[1].Cpu)} by the processor; the aim is at most 2.5. A check takes {Figures.Time(runs[4].Wall - runs[2].Wall)} more than `--version`; the aim is 150 ms.
            """);
    }

    // Apart from the other workshop: where books are kept, its labels are asked of them too.
    private static string WithBooks()
    {
        var folder = Directory.CreateDirectory(Scratch.Path("with-books")).FullName;
        File.Copy(Path.Combine(BenchWorkshop.Folder, "workshop.yaml"), Path.Combine(folder, "workshop.yaml"));
        OpenBooks.Open(folder);
        return folder;
    }
}
