using System.Diagnostics;
using System.Globalization;

namespace LabelForge.Benchmarks;

/// <summary>One run of a program as a process of its own, from its start to its end.</summary>
/// <param name="Wall">Seconds on the clock.</param>
/// <param name="Cpu">Seconds on the processor, user and system: less moved by what else the machine does.</param>
/// <param name="PeakBytes">The most memory it held.</param>
internal sealed record ChildRun(double Wall, double Cpu, long PeakBytes)
{
    /// <summary>Runs a program and measures it.</summary>
    /// <exception cref="InvalidOperationException">It failed.</exception>
    public static ChildRun Of(string program, params IEnumerable<string> arguments) => OfAnswer([0], program, arguments);

    /// <summary>Runs a program that answers by its exit code, and measures it.</summary>
    /// <exception cref="InvalidOperationException">It gave none of these answers.</exception>
    public static ChildRun OfAnswer(int[] answers, string program, params IEnumerable<string> arguments)
    {
        // GNU time asks the kernel for the child's own figures; its start is part of what is measured, the same for all.
        var report = Scratch.Path("time.txt");
        var start = new ProcessStartInfo("/usr/bin/time", ["-o", report, "-f", "%U %S %M", program, .. arguments])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        var clock = Stopwatch.StartNew();
        using var process = Process.Start(start)!;
        var said = process.StandardOutput.ReadToEndAsync();
        var wrong = process.StandardError.ReadToEnd();
        process.WaitForExit();
        var wall = clock.Elapsed.TotalSeconds;
        if (!answers.Contains(process.ExitCode))
            throw new InvalidOperationException($"{program} {string.Join(' ', start.ArgumentList.Skip(5))} failed: {wrong}{said.Result}");
        // Before its figures, GNU time tells of an exit code that is not zero.
        var figures = File.ReadLines(report).Last().Split(' ').Select(f => double.Parse(f, CultureInfo.InvariantCulture)).ToArray();
        return new ChildRun(wall, figures[0] + figures[1], (long)figures[2] * 1024);
    }

    /// <summary>Runs several programs in turn, so many times, and gives each one's best run: the
    /// others were held up by something.</summary>
    public static IReadOnlyList<ChildRun> BestOf(int times, params IReadOnlyList<Func<ChildRun>> programs)
    {
        var runs = programs.Select(_ => new List<ChildRun>()).ToList();
        for (var time = 0; time < times; time++)
        {
            foreach (var (program, i) in programs.Select((p, i) => (p, i)))
                runs[i].Add(program());
        }
        return [.. runs.Select(r => new ChildRun(r.Min(o => o.Wall), r.Min(o => o.Cpu), r.Max(o => o.PeakBytes)))];
    }
}
