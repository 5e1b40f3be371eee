using LabelForge.Records.Books;
using Microsoft.Data.Sqlite;
using Npgsql;

namespace LabelForge.Records.Tests.Books;

/// <summary>What is promised when the power goes, the server goes, a clock jumps, or two people sell at once.</summary>
public sealed class PromiseTests
{
    private const int Sector = 512;

    // The disk keeps what was synchronised. Of what was written after it, each sector may have got there or not, in any order.
    [Fact]
    public void When_the_power_goes_in_the_midst_of_a_write_what_was_acknowledged_before_is_there_and_the_books_agree()
    {
        using var shop = new TestShop();
        // Another program has the books open, so that the log is not taken in at the end of each write.
        using var other = new SqliteConnection($"Data Source={shop.Book.Path};Pooling=False");
        other.Open();
        using (var ask = other.CreateCommand())
        {
            ask.CommandText = "SELECT COUNT(*) FROM \"Receipts\"";
            ask.ExecuteScalar();
        }
        var random = new Random(11);
        var (whole, lost) = (0, 0);
        for (var acknowledged = 0; acknowledged < 25; acknowledged++)
        {
            var (books, log) = (Bytes(shop.Book.Path), Bytes(shop.Book.Path + "-wal"));
            shop.Receive("base", 100 + acknowledged, 9);
            var (booksAfter, logAfter) = (Bytes(shop.Book.Path), Bytes(shop.Book.Path + "-wal"));
            for (var loss = 0; loss < 4; loss++)
            {
                var folder = Directory.CreateDirectory(Path.Combine(shop.Folder, $"after-{acknowledged}-{loss}")).FullName;
                var file = Path.Combine(folder, "records.db");
                File.WriteAllBytes(file, Mixed(books, booksAfter, random));
                File.WriteAllBytes(file + "-wal", Mixed(log, logAfter, random));
                var book = OpenBooks.Open(BookPlace.InFile(file));
                var kept = book.Read().AllReceipts.Count;
                Assert.InRange(kept, acknowledged, acknowledged + 1);
                Assert.Empty(book.Check().Differences);
                whole += kept - acknowledged;
                lost += 1 - (kept - acknowledged);
                Directory.Delete(folder, recursive: true);
            }
        }
        Assert.True(lost > 10, $"only {lost} writes were lost, {whole} kept: the power did not go in their midst");
    }

    [Fact]
    public void A_server_that_goes_away_in_the_midst_of_a_write_is_told_and_nothing_of_it_stands()
    {
        using var shop = TestShop.OnServer();
        shop.Stock();
        var says = TestShop.Refusal(() => shop.Book.Write((_, context) =>
        {
            context.Receipts.Add(new Receipt { On = TestShop.Day, By = "A", Material = "base", Amount = 5, Price = 1 });
            context.SaveChanges();
            using var keeper = new NpgsqlConnection(BookPlace.Of(shop.Folder).Server + ";Application Name=keeper");
            keeper.Open();
            using var end = keeper.CreateCommand();
            end.CommandText =
                "SELECT COUNT(pg_terminate_backend(pid)) FROM pg_stat_activity WHERE datname = current_database() AND pid <> "
                    + "pg_backend_pid()";
            Assert.Equal(1L, end.ExecuteScalar());
            return 0;
        }));
        Assert.Contains("does not answer", says, StringComparison.Ordinal);
        Assert.Contains("look whether the last entry stands", says, StringComparison.Ordinal);
        Assert.Equal(3, shop.Book.Read().AllReceipts.Count);
        shop.Receive("base", 5, 1);
        Assert.Empty(shop.Book.Check().Differences);
    }

    // Bench and market table: each has opened the books by itself.
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Two_people_see_each_others_entries_and_an_oversale_names_who_sold_the_last(bool server)
    {
        using var shop = server ? TestShop.OnServer() : new TestShop();
        shop.Stock();
        var lot = shop.Finish("26R02-01X");
        var (bench, table) = (OpenBooks.Open(shop.Folder), OpenBooks.Open(shop.Folder));
        Assert.Equal(8, bench.Ask(b => b.PiecesLeft(b.BatchOf(lot))));
        StockMovements.Sell(table, lot, 6, "Fairport market", 42, TestShop.Day, "Bea");
        Assert.Equal(2, bench.Ask(b => b.PiecesLeft(b.BatchOf(lot))));
        var says = TestShop.Refusal(() => StockMovements.Sell(bench, lot, 3, "Ann", 21, TestShop.Day, "Ada"));
        Assert.Matches(
            @"1 pieces less than nothing: the last that were sold, 6 to Fairport market on 2026-11-02, Bea wrote down at "
                + @"\d\d:\d\d:\d\d UTC", says);
    }

    // What stands is in the order of its numbers; a time says when, by the store's clock, and decides nothing.
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_clock_that_jumps_changes_no_order_and_no_balance(bool server)
    {
        using var shop = server ? TestShop.OnServer() : new TestShop();
        shop.Stock();
        var lot = shop.Finish("26R02-01X");
        shop.Write("in.csv",
            $"number,on,by,lot,pieces,to,paid,written at\n1,2026-11-02,Bea,{lot},2,from the future,14,2199-01-01 "
                + $"00:00:00Z\n2,2026-11-02,Bea,{lot},1,from the past,7,1999-01-01 00:00:00Z\n");
        ListImport.ReadFiles(shop.Book, [Path.Combine(shop.Folder, "in.csv")], TestShop.Day, "A");
        var sale = StockMovements.Sell(shop.Book, lot, 1, "today", 7, TestShop.Day.AddDays(-400), "Ada");
        Assert.Equal(3, sale.Id);
        Assert.Equal(["from the future", "from the past", "today"],
            shop.Book.Ask(b => b.SalesOf(b.BatchOf(lot)).Select(s => s.To).ToArray()));
        Assert.Equal([2199, 1999], shop.Book.Read().AllSales.Take(2).Select(s => s.WrittenAt!.Value.Year));
        Assert.InRange((DateTime.UtcNow - shop.Book.Read().AllSales[2].WrittenAt!.Value).TotalMinutes, -5, 5);
        Assert.Equal(4, shop.Book.Ask(b => b.PiecesLeft(b.BatchOf(lot))));
        Assert.Empty(shop.Book.Check().Differences);
    }

    // The tables themselves, whatever program writes into them.
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void The_database_itself_refuses_less_than_nothing(bool server)
    {
        using var shop = server ? TestShop.OnServer() : new TestShop();
        shop.Stock();
        shop.Finish("26R02-01X");
        foreach (var sql in new[]
        {
            "UPDATE \"ReceiptStock\" SET \"LeftMillionths\" = -1",
            "UPDATE \"BatchStock\" SET \"Sold\" = 9, \"Left\" = -1",
            "UPDATE \"BatchStock\" SET \"Left\" = 9",
            "UPDATE \"BatchStock\" SET \"Returned\" = 1",
        })
        {
            Assert.Contains("CK_",
                TestShop.Refusal(() => shop.Book
                    .Write((_, context) => Microsoft.EntityFrameworkCore.RelationalDatabaseFacadeExtensions
                        .ExecuteSqlRaw(context.Database, sql))), StringComparison.Ordinal);
        }
    }

    // What is checked can fail: a balance changed behind the books' back is found.
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_balance_that_does_not_agree_with_the_entries_is_found(bool server)
    {
        using var shop = server ? TestShop.OnServer() : new TestShop();
        shop.Stock();
        shop.Finish("26R02-01X");
        shop.Book
            .Write((_, context) => Microsoft.EntityFrameworkCore.RelationalDatabaseFacadeExtensions
                .ExecuteSqlRaw(context.Database,
                    "UPDATE \"ReceiptStock\" SET \"LeftMillionths\" = 5 WHERE \"Bottle\" = 1; DELETE FROM \"BatchStock\""));
        var check = shop.Book.Check();
        Assert.Equal(2, check.Differences.Count);
        Assert.Contains("Bottle M1: the entries come to 9100 of base", check.Differences[0], StringComparison.Ordinal);
        Assert.Contains("the balance kept is nothing", check.Differences[1], StringComparison.Ordinal);
    }

    private static byte[] Bytes(string path)
    {
        if (!File.Exists(path))
            return [];
        using var file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        var bytes = new byte[file.Length];
        file.ReadExactly(bytes);
        return bytes;
    }

    // A sector that did not get there is as it was; beyond the old end, nothing or noughts.
    private static byte[] Mixed(byte[] before, byte[] after, Random random)
    {
        var mixed = (byte[])after.Clone();
        for (var at = 0; at < mixed.Length; at += Sector)
        {
            var length = Math.Min(Sector, mixed.Length - at);
            if (random.Next(3) > 0)
                continue;
            Array.Clear(mixed, at, length);
            if (at < before.Length)
                Array.Copy(before, at, mixed, at, Math.Min(length, before.Length - at));
        }
        return random.Next(2) == 0 || mixed.Length <= before.Length ? mixed : mixed[..random.Next(before.Length, mixed.Length + 1)];
    }
}
