using System.Diagnostics;

namespace LabelForge.Benchmarks;

/// <summary>Times an action in this process.</summary>
internal static class Timing
{
    private static readonly TimeSpan Enough = TimeSpan.FromSeconds(0.5);
    private static readonly TimeSpan WarmUpTime = TimeSpan.FromSeconds(3);
    private const int Least = 3;
    private const int Most = 200;

    /// <summary>Runs actions for some seconds, so that the compiler has seen what is hot in them before any is timed.</summary>
    public static void WarmUp(params IEnumerable<Action> actions)
    {
        var all = Stopwatch.StartNew();
        while (all.Elapsed < WarmUpTime)
        {
            foreach (var action in actions)
                action();
        }
    }

    /// <summary>The best of several runs, in seconds; the first may warm up, and is counted where the action is long.</summary>
    public static double Best(Action action)
    {
        var all = Stopwatch.StartNew();
        var best = double.MaxValue;
        for (var run = 0; run < Most && (run < Least || all.Elapsed < Enough); run++)
        {
            var clock = Stopwatch.StartNew();
            action();
            best = Math.Min(best, clock.Elapsed.TotalSeconds);
            if (run == 0 && clock.Elapsed > 20 * Enough)
                break;
        }
        return best;
    }
}
