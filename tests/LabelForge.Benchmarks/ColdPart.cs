using System.Globalization;
using LabelForge.Print.Sheets;

namespace LabelForge.Benchmarks;

/// <summary>One label from a cold start: from the start of the process to the finished PDF.</summary>
internal static class ColdPart
{
    private const int Repeats = 20;

    public static string Measure()
    {
        var (command, floor) = (Published.Command, Published.Floor);
        var machine = Machine.Line();
        var (ink, to) = (Scratch.Path("ink.txt"), Scratch.Path("label.pdf"));
        InkRecording.Of(BenchWorkshop.Label(), LabelStock.Load(BenchWorkshop.Stock)).Write(ink);
        var runs = ChildRun.BestOf(Repeats,
            () => ChildRun.Of(floor, "empty"),
            () => ChildRun.Of(floor, "one", ink, to),
            () => ChildRun.Of(command, "label", BenchWorkshop.Recipe, "--workshop", BenchWorkshop.Folder, "--lot", BenchWorkshop.Lot,
                "--design", BenchWorkshop.Design, "--out", to, "--on", "2026-11-25"));
        string[] names = ["a program that does nothing: the runtime's own share",
            "a bare program: reads the recorded ink, draws one label with SkiaSharp",
            "labelforge label: workshop, dictionary, rules, declaration, layout, PDF"];
        var rows = names.Zip(runs,
            (name,
                run) => string.Create(CultureInfo.InvariantCulture,
                    $"| {name} | {Figures.Time(run.Wall)} | {Figures.Time(run.Cpu)} | {Figures.Bytes(run.PeakBytes)} |"));
        return string.Create(CultureInfo.InvariantCulture, $"""
            {machine} All three are published ahead-of-time compiled (ReadyToRun); the best of {Repeats} runs, taken in turn.

            | what | time | processor | peak memory |
            | --- | ---: | ---: | ---: |
            {string.Join('\n', rows)}

            labelforge to the bare program: {Figures.Ratio(runs[2].Wall / runs[1].Wall)} by the clock, {Figures.Ratio(runs[2].Cpu / runs[1].Cpu)} by the processor; the aim is at most 2. The runtime's own start is {runs[0].Wall / runs[2].Wall * 100:0} % of it.
            """);
    }
}
