using System.Text;
using LabelForge.Fuzz.Coverage;

namespace LabelForge.Fuzz;

/// <summary>
/// Runs a target on its corpus and then on inputs made of it. An input that reaches a branch not reached before joins the
/// corpus. What escapes the target is a failure; so is an input that does not come back.
/// </summary>
public sealed class FuzzLoop(string name, Action<byte[]> target, IReadOnlyList<byte[]> seeds, Mutation mutation)
{
    // Far above what any input takes on a busy machine: an input that is still running then is lost.
    private static readonly TimeSpan Lost = TimeSpan.FromMinutes(2);

    private readonly CoverageMap _map = new();
    private readonly List<byte[]> _corpus = [.. seeds];
    private readonly List<byte[]> _joined = [];
    private byte[] _running = [];

    /// <summary>The inputs that joined, in the order found.</summary>
    public IReadOnlyList<byte[]> Joined => _joined;

    /// <summary>How many marks of coverage were seen.</summary>
    public int Coverage => _map.Count;

    /// <summary>The most of the processor that one input took.</summary>
    public (TimeSpan Time, byte[] Input) Slowest { get; private set; } = (TimeSpan.Zero, []);

    /// <summary>Runs every input of the corpus, and then as many made ones as <paramref name="goOn"/> allows.</summary>
    /// <returns>How many inputs were run.</returns>
    public int Run(Func<int, bool> goOn)
    {
        using var watchdog = new Timer(_ => Environment.FailFast($"{name} does not come back from: {Shown(_running)}"));
        foreach (var input in seeds)
            Once(input, watchdog);
        var made = 0;
        for (; goOn(made); made++)
        {
            var input = mutation.Next(_corpus);
            if (!Once(input, watchdog))
                continue;
            _corpus.Add(input);
            _joined.Add(input);
        }
        return seeds.Count + made;
    }

    /// <summary>An input as it can be put into a test.</summary>
    public static string Shown(byte[] input) => $"{Convert.ToBase64String(input)}\nthat is, as text: {Encoding.UTF8.GetString(input)}";

    private bool Once(byte[] input, Timer watchdog)
    {
        _running = input;
        watchdog.Change(Lost, Timeout.InfiniteTimeSpan);
        var begun = Environment.CpuUsage.TotalTime;
        CoverageMap.Clear();
        try
        {
            target(input);
        }
        catch (Exception e)
        {
            throw new InvalidOperationException($"{name} fails with {e.GetType().Name} on: {Shown(input)}", e);
        }
        finally
        {
            watchdog.Change(Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);
        }
        if (Environment.CpuUsage.TotalTime - begun is var took && took > Slowest.Time)
            Slowest = (took, input);
        return _map.TakeIn();
    }
}
