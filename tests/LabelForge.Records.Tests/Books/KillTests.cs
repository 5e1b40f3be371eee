using System.Diagnostics;
using System.Globalization;
using LabelForge.Records.Books;
using Microsoft.Data.Sqlite;

namespace LabelForge.Records.Tests.Books;

/// <summary>Real processes, really killed (SIGKILL, as <c>kill -9</c>) while they write.</summary>
public sealed class KillTests : IDisposable
{
    private const int Rounds = 220;
    private static readonly TimeSpan Stuck = TimeSpan.FromSeconds(120);

    // A process split off that has told nothing for so long is killed as it is: a fork may leave it waiting for a thread it has not got.
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(5);
    private readonly TestShop _shop = new();
    private readonly Process? _writer;
    private Task<string?>? _line;

    public KillTests()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "The writer splits processes off by fork.");
        _writer = Process.Start(new ProcessStartInfo("dotnet", [Path.Combine(AppContext.BaseDirectory, "LabelForge.Records.Writer.dll")])
        {
            RedirectStandardOutput = true,
            RedirectStandardInput = true,
            // Else the two sides of a fork would share the memory that compiled code lies in.
            Environment = { ["DOTNET_EnableWriteXorExecute"] = "0" },
        })!;
        Assert.Equal("ready", Line());
    }

    public void Dispose()
    {
        if (_writer is { HasExited: false })
            _writer.Kill();
        _writer?.Dispose();
        _shop.Dispose();
    }

    [Fact]
    public void Killed_at_any_instant_nothing_acknowledged_is_lost_and_nothing_is_half_written()
    {
        Production.Start(_shop.Book, new FrozenRecipe("bar", "Bar", 1000, 8, "us", null, [new FrozenLine("base", "Base", 1000, "")], ""),
            "26R02-01X", TestShop.Day, "A");
        var random = new Random(9);
        var (acknowledged, between, clock) = (0, 0, Stopwatch.StartNew());
        var before = Entries(_shop.Book.Read());
        for (var round = 0; round < Rounds; round++)
        {
            // Most are killed in the midst of writing, some while they open the books.
            var told = Killed($"write {_shop.Folder}", waited: round % 6 != 0, TimeSpan.FromMilliseconds(random.NextDouble() * 15));
            var kept = Entries(OpenBooks.Open(_shop.Folder).Read());
            Assert.Equal("ok", Ask("PRAGMA integrity_check"));
            var said = told.Where(l => l.StartsWith("ok ", StringComparison.Ordinal))
                .SelectMany(l => l[3..].Split(' ').Chunk(2).Select(p => $"{p[0]} {p[1]}")).ToArray();
            Assert.DoesNotContain(told, l => l.StartsWith("failed", StringComparison.Ordinal));
            Assert.All(before.Concat(said), e => Assert.Contains(e, kept));
            // The write under way may stand without having been acknowledged: one, and whole. 150 g come from two bottles of 100.25 g,
            // or from three, where a bottle before them holds a rest: 0.75, 100.25 and 49 g.
            var unsaid = kept.Except(before).Except(said).Select(e => e.Split(' ')[0]).Order(StringComparer.Ordinal).ToArray();
            Assert.Contains(string.Join(' ', unsaid),
                new[] { "", "receipt", "correction receipt", "weighing", "weighing weighing", "weighing weighing weighing" });
            acknowledged += said.Length;
            between += unsaid.Length > 0 ? 1 : 0;
            before = kept;
        }
        var snapshot = OpenBooks.Open(_shop.Folder).Read();
        BooksInvariants.Check(snapshot.Whole);
        // Two bottles of 100.25 g are taken in for every 150 g weighed; a weighing cut in half would show here.
        Assert.All(snapshot.Weighings.GroupBy(w => w.BatchId), g => Assert.Equal(0, g.Sum(w => w.Grams) % 150m));
        Assert.Equal(snapshot.Receipts.Count * 100.25m, snapshot.Receipts.Sum(snapshot.Left) + snapshot.Weighings.Sum(w => w.Grams));
        Assert.True(acknowledged > Rounds / 2, $"only {acknowledged} writes were acknowledged");
        TestContext.Current
            .SendDiagnosticMessage(
                $"{Rounds} kills in {clock.Elapsed.TotalSeconds:0.0} s; {acknowledged} entries acknowledged and kept, {between} writes kept that were not acknowledged");
    }

    [Fact]
    public void Killed_while_the_books_are_made_they_are_made_the_next_time()
    {
        var random = new Random(10);
        for (var round = 0; round < 40; round++)
        {
            var folder = Directory.CreateDirectory(Path.Combine(_shop.Folder, $"new-{round}")).FullName;
            Killed($"make {folder}", waited: false, TimeSpan.FromMilliseconds(random.NextDouble() * 20));
            Assert.Empty(OpenBooks.Open(folder).Read().AllReceipts);
        }
    }

    // The whole command, too: it starts slowly, so only a few times. What it told stands; what it did not is there whole or not at all.
    [Fact]
    public void The_command_itself_killed_leaves_a_list_whole_or_unwritten_and_loses_nothing_that_it_told()
    {
        const int Rows = 1000;
        File.WriteAllText(Path.Combine(_shop.Folder, "in.csv"),
            "material,amount,price\n" + string.Concat(Enumerable.Repeat("base,1 kg,9.50\n", Rows)));
        for (var (round, there) = (0, 0); round < 4; round++)
        {
            using var command = Process.Start(new ProcessStartInfo("dotnet",
                [Path.Combine(AppContext.BaseDirectory, "LabelForge.Cli.dll"), "receive-list", Path.Combine(_shop.Folder, "in.csv"),
                    "--sure", "--workshop", _shop.Folder])
            { RedirectStandardOutput = true })!;
            if (round == 0)
                Assert.StartsWith("M", command.StandardOutput.ReadLine(), StringComparison.Ordinal);
            else
                Thread.Sleep(250 * round);
            command.Kill();
            var told = (round == 0 ? 1 : 0) + command.StandardOutput.ReadToEnd().Split('\n')
                .Count(l => l.EndsWith(" base", StringComparison.Ordinal));
            command.WaitForExit();
            var now = OpenBooks.Open(_shop.Folder).Read().Receipts.Count;
            Assert.Contains(now - there, told > 0 ? [Rows] : (int[])[0, Rows]);
            there = now;
        }
    }

    // Kills the process a little after it told the first of what it does, or at once where nothing is waited for.
    private List<string> Killed(string command, bool waited, TimeSpan later)
    {
        _writer!.StandardInput.WriteLine(command);
        var told = new List<string>();
        var pid = 0;
        for (var line = Line(); line is not ("killed" or "ended"); line = Line(pid != 0))
        {
            if (line is null)
            {
                Kill(pid);
                (pid, waited) = (0, true);
            }
            else if (line.StartsWith("pid ", StringComparison.Ordinal))
                pid = int.Parse(line.AsSpan(4), CultureInfo.InvariantCulture);
            else
                told.Add(line);
            if (pid != 0 && (told.Count > 0 || !waited))
            {
                Wait(later);
                Kill(pid);
                pid = 0;
                waited = true;
            }
        }
        return told;
    }

    private static void Kill(int pid)
    {
        try
        {
            using var process = Process.GetProcessById(pid);
            process.Kill();
        }
        catch (ArgumentException)
        {
            // It had ended by itself: only where it makes books.
        }
    }

    private static void Wait(TimeSpan time)
    {
        for (var clock = Stopwatch.StartNew(); clock.Elapsed < time;)
            Thread.Yield();
    }

    // Null where a process that may be killed keeps still.
    private string? Line(bool mayBeStill = false)
    {
        _line ??= _writer!.StandardOutput.ReadLineAsync();
        if (!_line.Wait(mayBeStill ? Patience : Stuck))
            return mayBeStill ? null : throw new InvalidOperationException("The writer is stuck.");
        var line = _line.Result ?? throw new InvalidOperationException("The writer is gone.");
        _line = null;
        return line;
    }

    private object? Ask(string sql)
    {
        using var connection = new SqliteConnection($"Data Source={_shop.Book.Path};Pooling=False");
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        return command.ExecuteScalar();
    }

    private static HashSet<string> Entries(ReckonedBooks snapshot) =>
    [
        .. snapshot.AllReceipts.Select(e => $"receipt {e.Id}"), .. snapshot.AllWeighings.Select(e => $"weighing {e.Id}"),
    .. snapshot.Corrections.Select(e => $"correction {e.Id}"),
    ];
}
