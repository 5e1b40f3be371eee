using System.Text.Json;
using LabelForge.Recipes;
using LabelForge.Records.Books;
using LabelForge.Records.Spreadsheets;
using Microsoft.Data.Sqlite;
using Npgsql;
using Trace = LabelForge.Records.Tracing.Trace;

namespace LabelForge.Records.Tests.Books;

/// <summary>Books that an earlier version wrote, opened by this one: all that was written is
/// there, and what is left is the same.</summary>
public sealed class OldBooksTests
{
    private static readonly string Folder = Path.Combine(AppContext.BaseDirectory, "OldBooks");

    // Columns that came later, or that no longer stand in the list word for word.
    private static readonly string[] Later = ["frozen", "pot", "spoiled", "run", "stock", "places", "drawing", "tax", "payment", "ticket"];

    // One ounce, a half and a quarter of it were written finer than a microgram: up for what came in, down for what went out.
    private static readonly Dictionary<string, string> Rounded = new()
    {
        ["28.349523125"] = "28.349524",
        ["14.1747615625"] = "14.174761",
        ["7.08738078125"] = "7.08738",
        ["0"] = "0",
    };

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Every_list_of_old_books_says_what_it_said(bool server)
    {
        using var shop = server ? OnServer() : InFile();
        var snapshot = OpenBooks.Open(shop.Folder).Read();
        foreach (var file in Directory.EnumerateFiles(Path.Combine(Folder, "lists"), "*.csv"))
        {
            var list = Path.GetFileNameWithoutExtension(file);
            var (heading, rows) = BookTables.Of(snapshot, list);
            var now = TextTable.Read(SafeCsv.Write(heading, rows), file);
            var then = TextTable.ReadFile(file);
            Assert.Equal(then.Count, now.Count);
            foreach (var (old, fresh) in then.Zip(now))
                Assert.Equal(Cells(then[0].Cells, old.Cells),
                    Cells(now[0].Cells, fresh.Cells).Where(c => then[0].Cells.Contains(c.Column)));
        }
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void What_is_left_of_old_books_is_reckoned_once_and_agrees_with_every_entry(bool server)
    {
        using var shop = server ? OnServer() : InFile();
        var book = OpenBooks.Open(shop.Folder);
        Assert.Empty(book.Check().Differences);
        using var then = JsonDocument.Parse(File.ReadAllText(Path.Combine(Folder, "stock-in-hand.json")));
        var pieces = then.RootElement.GetProperty("pieces").EnumerateArray()
            .ToDictionary(p => p.GetProperty("lot").GetString()!, p => p.GetProperty("left").GetInt32());
        Assert.Equal(2, pieces.Count);
        Assert.All(pieces, p => Assert.Equal(p.Value, book.Ask(b => b.PiecesLeft(b.BatchOf(p.Key)))));
        var lots = then.RootElement.GetProperty("materials").EnumerateArray().Where(m => m.GetProperty("lot").GetString() != "M3")
            .ToArray();
        Assert.Equal(5, lots.Length);
        Assert.All(lots,
            m => Assert.Equal(m.GetProperty("left").GetDecimal(),
                book.Ask(
                    b => b.Left(b.ReceiptOf(int.Parse(m.GetProperty("lot").GetString()![1..],
                        System.Globalization.CultureInfo.InvariantCulture))))));
        Assert.Equal(["M1"], Trace.Of(book, "26R02-03T").Uses.Where(u => u.Material == "base").Select(u => $"M{u.MaterialLot}"));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void What_was_written_finer_than_a_microgram_stays_word_for_word_beside_the_entry(bool server)
    {
        using var shop = server ? OnServer() : InFile();
        OpenBooks.Open(shop.Folder);
        var kept = new List<string>();
        using System.Data.Common.DbConnection connection = server
            ? new NpgsqlConnection(BookPlace.Of(shop.Folder).Server)
            : new SqliteConnection($"Data Source={shop.Folder}/records.db;Pooling=False");
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText =
            "SELECT \"List\" || ' ' || \"EntryId\" || ' ' || \"Written\" FROM \"AmountsAsWritten\" ORDER BY \"List\", \"EntryId\"";
        using var reader = command.ExecuteReader();
        while (reader.Read())
            kept.Add(reader.GetString(0));
        Assert.Equal(["receipt 3 28.349523125", "weighing 3 14.1747615625", "weighing 4 7.08738078125", "weighing 5 14.1747615625"], kept);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Old_books_are_written_on_in_as_if_they_had_always_been_so(bool server)
    {
        using var shop = server ? OnServer() : InFile();
        var book = OpenBooks.Open(shop.Folder);
        Assert.Contains("1 pieces less than nothing",
            TestShop.Refusal(() => StockMovements.Sell(book, "26R02-01X", 4, "Dot", 28, TestShop.Day, "A")), StringComparison.Ordinal);
        StockMovements.Sell(book, "26R02-01X", 3, "Dot", 21, TestShop.Day, "A");
        Assert.Contains("would be struck",
            TestShop.Refusal(() => Correcting.Of(book, Shipped.Markets, "receipt", 7, new Dictionary<string, string>(), "no", TestShop.Day, "A")),
            StringComparison.Ordinal);
        Assert.Contains("were printed with the lot", TestShop.Refusal(() => shop.Start("26R05-019")), StringComparison.Ordinal);
        Assert.Equal(8, shop.Receive("base", 1, 1).Id);
        Assert.Empty(book.Check().Differences);
    }

    private static IEnumerable<(string Column, string Text)> Cells(IReadOnlyList<string> heading, IReadOnlyList<string> cells) =>
        heading.Zip(cells).Where(c => !Later.Contains(c.First))
            .Select(c => (c.First,
                c.First == "left" && c.Second.StartsWith("0.00000", StringComparison.Ordinal)
                    ? "0"
                    : Rounded.GetValueOrDefault(c.Second, c.Second)));

    private static TestShop InFile()
    {
        var shop = new TestShop();
        File.Copy(Path.Combine(Folder, "printings.db"), Path.Combine(shop.Folder, "records.db"), overwrite: true);
        foreach (var ending in (string[])["-wal", "-shm"])
            File.Delete(Path.Combine(shop.Folder, "records.db" + ending));
        return shop;
    }

    private static TestShop OnServer()
    {
        var server = TestServer.NewDatabase();
        using (var connection = new NpgsqlConnection(server))
        {
            connection.Open();
            using var command = connection.CreateCommand();
            command.CommandText = File.ReadAllText(Path.Combine(Folder, "printings-server.sql"));
            command.ExecuteNonQuery();
        }
        return new TestShop(server);
    }
}
