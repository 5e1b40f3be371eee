using System.Diagnostics;
using LabelForge.Records.Books;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace LabelForge.Records.Tests.Books;

public class SafetyTests
{
    private const int Rounds = 200;
    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(45);

    /// <summary>A real <c>kill -9</c> of the real command, at a random instant while it writes; up to 200 rounds or 45 seconds.</summary>
    [Fact]
    public void Killed_at_any_instant_nothing_acknowledged_is_lost()
    {
        using var shop = new TestShop();
        File.WriteAllText(Path.Combine(shop.Folder, "in.csv"), "material,amount,price\n" + string.Concat(Enumerable.Repeat("base,1 kg,9.50\n", 3000)));
        var random = new Random(9);
        var clock = Stopwatch.StartNew();
        var (acknowledged, rounds) = (0, 0);
        for (; rounds < Rounds && (rounds < 3 || clock.Elapsed < Longest); rounds++)
        {
            using var process = Process.Start(new ProcessStartInfo("dotnet", [Path.Combine(AppContext.BaseDirectory, "LabelForge.Cli.dll"), "receive-list", Path.Combine(shop.Folder, "in.csv"), "--workshop", shop.Folder])
            { RedirectStandardOutput = true })!;
            var first = process.StandardOutput.ReadLine();
            Assert.StartsWith("M", first);
            Thread.Sleep(random.Next(0, 40));
            process.Kill();
            var seen = new[] { first! }.Concat(process.StandardOutput.ReadToEnd().Split('\n').Where(l => l.EndsWith(" base", StringComparison.Ordinal))).ToArray();
            process.WaitForExit();
            acknowledged += seen.Length;
            var ledger = RecordBook.Open(shop.Folder).Read();
            var kept = ledger.Receipts.Select(r => $"M{r.Id} {r.Material}").ToHashSet();
            Assert.All(seen, line => Assert.Contains(line.Trim(), kept));
            // The entry under way may stand without having been acknowledged; no other may.
            Assert.InRange(kept.Count, acknowledged, acknowledged + rounds + 1);
        }
        TestContext.Current.SendDiagnosticMessage($"{rounds} kills, {acknowledged} entries acknowledged and kept");
        Assert.True(rounds >= 3);
    }

    [Fact]
    public void A_copy_made_in_use_is_put_back_whole()
    {
        using var shop = new TestShop();
        shop.Stock();
        shop.Finish("26T02-01E");
        var copy = Path.Combine(shop.Folder, "copy.db");
        var entries = BookCopy.Backup(shop.Folder, copy);
        Assert.Equal(3 + 1 + 3 + 1, entries);
        Shop.Sell(shop.Book, "26T02-01E", 1, "Ann", 7, TestShop.Day, "A");
        var (restored, kept) = BookCopy.Restore(shop.Folder, copy);
        Assert.Equal(entries, restored);
        Assert.True(File.Exists(kept));
        Assert.Empty(RecordBook.Open(shop.Folder).Read().Sales);
    }

    [Fact]
    public void Damaged_books_say_what_to_do_and_a_damaged_copy_is_not_put_in_place()
    {
        using var shop = new TestShop();
        shop.Stock();
        var copy = Path.Combine(shop.Folder, "copy.db");
        BookCopy.Backup(shop.Folder, copy);
        File.WriteAllBytes(shop.Book.Path, [.. Enumerable.Range(0, 9000).Select(i => (byte)(i * 7))]);
        File.Delete(shop.Book.Path + "-wal");
        Assert.Contains("labelforge restore", TestShop.Refusal(() => RecordBook.Open(shop.Folder).Read()));
        var torn = Path.Combine(shop.Folder, "torn.db");
        File.WriteAllBytes(torn, File.ReadAllBytes(copy)[..5000]);
        Assert.Contains("not a sound copy", TestShop.Refusal(() => BookCopy.Restore(shop.Folder, torn)));
        BookCopy.Restore(shop.Folder, copy);
        Assert.Equal(3, RecordBook.Open(shop.Folder).Read().Receipts.Count);
    }

    [Fact]
    public void Where_no_file_can_be_made_the_message_says_so() =>
        Assert.Contains("read-only, or not there", TestShop.Refusal(() => RecordBook.Open("/proc/nowhere")));

    [Fact]
    public void A_full_disk_loses_nothing_that_was_acknowledged()
    {
        using var shop = new TestShop();
        shop.Stock();
        // SQLite's own limit of pages stands in for the end of the disk.
        var says = TestShop.Refusal(() => shop.Book.Write((_, context) =>
        {
            context.Database.ExecuteSqlRaw("PRAGMA max_page_count=1");
            return context.Receipts.Add(new Receipt { On = TestShop.Day, By = "A", Material = "base", Amount = 1, Price = 1, Note = new string('x', 200_000) });
        }));
        Assert.Contains("disk is full", says);
        Assert.Equal(3, shop.Book.Read().Receipts.Count);
        shop.Receive("base", 5, 1);
        Assert.Equal(4, shop.Book.Read().Receipts.Count);
    }

    [Fact]
    public void The_tables_are_those_that_the_program_knows()
    {
        using var shop = new TestShop();
        using var context = new RecordsContext(new DbContextOptionsBuilder<RecordsContext>().UseSqlite(new SqliteConnectionStringBuilder { DataSource = shop.Book.Path, Pooling = false }.ToString()).Options);
        Assert.False(context.Database.HasPendingModelChanges());
        Assert.Empty(context.Database.GetPendingMigrations());
    }
}
