using System.Globalization;
using System.Text;
using LabelForge.Records.Books;
using LabelForge.Tests.Shared;

namespace LabelForge.Benchmarks;

/// <summary>The command on the books of a shop with 100,000 batches, each call a process of its
/// own; what is asked of them within one is under growth.</summary>
internal static class RecordsPart
{
    private const int Batches = 100_000;

    private static readonly string[][] Calls = [["trace", "M1"], ["trace", BookFill.Lot(Batches / 2 + 1)], ["today"], ["stock-in-hand"],
        ["books", "sale", "--last", "20"], ["sell", BookFill.Lot(Batches), "1", "--to", "Market", "--paid", "5", "--sure"],
        ["year", "2025"]];

    public static string Measure()
    {
        var (command, machine) = (Published.Command, Machine.Line());
        using var server = PostgresServer.IsInstalled ? new PostgresServer(keepsPromises: true) : null;
        (string Store,
            string Folder)[] stores = [("SQLite", BookFill.Make(Batches)),
                .. server is null ? [] : new[] { ("PostgreSQL", BookFill.Make(Batches, server)) }];
        var size = new FileInfo(Path.Combine(stores[0].Folder, OpenBooks.FileName)).Length;
        var text = new StringBuilder(string.Create(CultureInfo.InvariantCulture,
            $"{machine} {Batches:#,0} batches, {2 * Batches:#,0} weighings, {Batches / 10:#,0} bottles, {Batches:#,0} sales: {Figures.Bytes(size)} in SQLite. Each call is a process of its own, with its own start: the best of three, and the most memory it held.\n\n"));
        text.Append(CultureInfo.InvariantCulture,
            $"| call |{string.Concat(stores.Select(s => $" {s.Store} | memory |"))}\n| --- |{string.Concat(stores.Select(_ => " ---: | ---: |"))}\n");
        foreach (var call in Calls)
        {
            text.Append(CultureInfo.InvariantCulture, $"| `labelforge {string.Join(' ', call)}` |");
            foreach (var (_, folder) in stores)
            {
                ChildRun[] runs = [.. Enumerable.Range(0, 3).Select(_ => ChildRun.Of(command, [.. call, "--workshop", folder]))];
                text.Append(CultureInfo.InvariantCulture,
                    $" {Figures.Time(runs.Min(r => r.Wall))} | {Figures.Bytes(runs.Max(r => r.PeakBytes))} |");
            }
            text.Append('\n');
        }
        return text.ToString();
    }
}
