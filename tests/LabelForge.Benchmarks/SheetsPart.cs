using System.Diagnostics;
using System.Globalization;
using System.Text;
using LabelForge.Benchmarks.Floor;
using LabelForge.Lots;
using LabelForge.Print.Jobs;
using LabelForge.Print.Output;
using LabelForge.Print.Sheets;

namespace LabelForge.Benchmarks;

/// <summary>30,000 labels on 1,000 sheets, of one lot and each with its own number, beside other ways to draw the same ink.</summary>
internal static class SheetsPart
{
    private const int Sheets = 1000;
    private const int PerSheet = 30;
    private const int BrowserSheets = 50;
    private const int Repeats = 3;

    public static string Measure()
    {
        var (command, floor) = (Published.Command, Published.Floor);
        var machine = Machine.Line();
        var (ink, label) = (Scratch.Path("ink.txt"), BenchWorkshop.Label());
        var recorded = InkRecording.Of(label, LabelStock.Load(BenchWorkshop.Stock));
        recorded.Write(ink);
        var runs = new List<(string What, int Sheets, ChildRun Run, long Bytes)>();
        void Add(int sheets, params (string What, Func<string, ChildRun> Run)[] programs)
        {
            var files = programs.Select((_, i) => Scratch.Path($"{i}.pdf")).ToList();
            var best = ChildRun.BestOf(Repeats, [.. programs.Select((p, i) => (Func<ChildRun>)(() => p.Run(files[i])))]);
            runs.AddRange(programs.Select((p, i) => (p.What, sheets, best[i], new FileInfo(files[i]).Length)));
        }
        Add(Sheets,
            ("labelforge, one lot", to => Sheet(command, "--count", $"{Sheets * PerSheet}", to)),
            ("written by hand: one form, placed 30,000 times", to => ChildRun.Of(floor, "form", ink, $"{Sheets}", to)),
            ("labelforge, each its own number and barcode", to => Sheet(command, "--serial", $"1..{Sheets * PerSheet}", to)),
            ("bare SkiaSharp loop, every label drawn again", to => ChildRun.Of(floor, "redraw", ink, $"{Sheets}", to)));
        Add(Sheets / 10, ("PDFsharp 6.2.4, every label drawn again", to => ChildRun.Of(floor, "pdfsharp", ink, $"{Sheets / 10}", to)));
        Add(BrowserSheets, (ChromiumPrint.Version() + " printing HTML", to => ChromiumPrint.Print(recorded, BrowserSheets, to)));

        var text =
            new StringBuilder(
                $"{machine} Each run is a process of its own, from its start to its end, "
                    + $"the best of {Repeats}; files in memory, no disk.\n\n");
        text.Append(
            "| what | sheets | time | processor | per sheet | peak memory | file |\n| --- | ---: | ---: | ---: | ---: | ---: | ---: |\n");
        foreach (var (what, sheets, run, bytes) in runs)
            text.Append(CultureInfo.InvariantCulture,
                $"| {what} | {sheets} | {Figures.Time(run.Wall)} | {Figures.Time(run.Cpu)} | {Figures.Time(run.Wall / sheets)} | {Figures.Bytes(run.PeakBytes)} | {Figures.Bytes(bytes)} |\n");
        var (one, form, serial, redraw, browser) = (runs[0].Run, runs[1].Run, runs[2].Run, runs[3].Run, runs[5].Run);
        text.Append(WritingAlone(label, recorded, out var written));
        text.Append("\n| ratio | aim | whole process | processor alone | writing alone |\n| --- | ---: | ---: | ---: | ---: |\n");
        Ratio("one lot, to the file written by hand", "at most 1.5", one, form, 1, written.One / written.Form);
        Ratio("bare loop, to one lot", "at least 10", redraw, one, 1, written.Redraw / written.One);
        Ratio("own numbers, to the bare loop", "at most 0.6", serial, redraw, 1, written.Serial / written.Redraw);
        Ratio("the browser a sheet, to one lot a sheet", "at least 20", browser, one, (double)Sheets / BrowserSheets, null);
        Ratio("the browser a sheet, to own numbers a sheet", "", browser, serial, (double)Sheets / BrowserSheets, null);
        text.Append(CultureInfo.InvariantCulture,
            $"\nMemory of own numbers: {Figures.Bytes(serial.PeakBytes)} for {Sheets} sheets, {Figures.Bytes(Peak(Sheets / 4))} for {Sheets / 4}, {Figures.Bytes(Peak(Sheets / 10))} for {Sheets / 10}, {Figures.Bytes(Peak(1))} for one.\n");
        return text.ToString();

        long Peak(int sheets) => Sheet(command, "--serial", $"1..{sheets * PerSheet}", Scratch.Path("fewer.pdf")).PeakBytes;

        void Ratio(string what, string aim, ChildRun a, ChildRun b, double perSheet, double? alone) =>
        text.Append(CultureInfo.InvariantCulture,
                $"| {what} | {aim} | {Figures.Ratio(a.Wall / b.Wall * perSheet)} | {Figures.Ratio(a.Cpu / b.Cpu * perSheet)} | {(alone is { } r ? Figures.Ratio(r) : "")} |\n");
    }

    private static ChildRun Sheet(string command, string how, string many, string to) =>
        ChildRun.Of(command, "sheet", BenchWorkshop.Recipe, "--workshop", BenchWorkshop.Folder,
            "--lot", BenchWorkshop.Lot, "--design", BenchWorkshop.Design, "--stock", BenchWorkshop.Stock, how, many, "--out", to, "--on",
            "2026-11-25");

    // In this process, warm, from the laid-out label to the file: what the start of a program and of its libraries leaves aside.
    private static string WritingAlone(Print.Drawing.LabelLayout label, Ink ink,
        out (double One, double Form, double Serial, double Redraw) written)
    {
        var to = Scratch.Path("alone.pdf");
        var info = new DocumentInfo("Guest bar", DateTimeOffset.UnixEpoch);
        double Best(Action<int> write)
        {
            write(5);
            return Enumerable.Range(0, Repeats).Min(_ => Timed(() => write(Sheets)));
        }
        var job = BenchWorkshop.Job();
        written = (
            Best(sheets => SheetWriter.WritePdf(to, BenchWorkshop.Order(label, sheets * PerSheet), info)),
            Best(sheets => FormFile.WriteSheets(ink, sheets, to)),
            Best(sheets =>
            {
                var serials = SerialLabels.Prepare(job, LotCode.Parse(BenchWorkshop.Lot).Value,
                    new SerialNumbers(1, sheets * PerSheet, 5));
                SerialSheets.WritePdf(to, serials, BenchWorkshop.Order(serials.Sample, serials.Count), info);
            }),
            Timed(() => SkiaLoop.WriteSheets(ink, Sheets, to)));
        return string.Create(CultureInfo.InvariantCulture,
            $"\nThe writing alone, in one warm process, from the laid-out label to the "
                + $"file: one lot {Figures.Time(written.One)}, by hand {Figures.Time(written.Form)}, own numbers {Figures.Time(written.Serial)}, bare loop {Figures.Time(written.Redraw)}.\n");
    }

    private static double Timed(Action action)
    {
        var clock = Stopwatch.StartNew();
        action();
        return clock.Elapsed.TotalSeconds;
    }
}
