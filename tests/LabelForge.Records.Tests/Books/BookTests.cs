using LabelForge.Markets;
using LabelForge.Measures;
using LabelForge.Records.Books;
using LabelForge.Records.Spreadsheets;
using Microsoft.Data.Sqlite;

namespace LabelForge.Records.Tests.Books;

public class BookTests : IDisposable
{
    private readonly TestShop _shop = new();

    public void Dispose() => _shop.Dispose();

    [Fact]
    public void What_expires_first_goes_out_first_and_what_has_expired_not_at_all()
    {
        _shop.Receive("base", 500, 7, TestShop.Day.AddDays(-1));
        var late = _shop.Receive("base", 600, 7, TestShop.Day.AddDays(90));
        var soon = _shop.Receive("base", 400, 7, TestShop.Day.AddDays(30));
        var open = _shop.Receive("base", 800, 7);
        var proposal = Bench.Propose(_shop.Book.Read(), [("base", 1200m)], TestShop.Day)[0];
        Assert.Equal([(soon.Id, 400m), (late.Id, 600m), (open.Id, 200m)], proposal.Take.Select(t => (t.From.Id, t.Grams)));
        Assert.Equal(0, proposal.Missing);
    }

    [Fact]
    public void More_than_is_there_is_refused_and_nothing_is_written()
    {
        _shop.Stock();
        _shop.Start("26T02-01E");
        Assert.Contains("short of", TestShop.Refusal(() => Bench.Weigh(_shop.Book, "26T02-01E", "scent", 501, null, TestShop.Day, "A")));
        Assert.Contains("less than nothing", TestShop.Refusal(() => Bench.Weigh(_shop.Book, "26T02-01E", "scent", 501, 3, TestShop.Day, "A")));
        Assert.Empty(_shop.Book.Read().AllWeighings);
    }

    [Fact]
    public void No_more_is_sold_than_was_made_and_none_of_an_open_batch()
    {
        _shop.Stock();
        _shop.Start("26T02-01E");
        Assert.Contains("not finished", TestShop.Refusal(() => Shop.Sell(_shop.Book, "26T02-01E", 1, "Ann", 7, TestShop.Day, "A")));
        _shop.Weigh("26T02-01E", 900, 27, 18);
        Bench.Close(_shop.Book, "26T02-01E", 8, 1, null, TestShop.Day, "A");
        Shop.Sell(_shop.Book, "26T02-01E", 7, "market day", 49, TestShop.Day, "A");
        Assert.Contains("1 pieces less than nothing", TestShop.Refusal(() => Shop.Sell(_shop.Book, "26T02-01E", 1, "Ann", 7, TestShop.Day, "A")));
    }

    [Fact]
    public void A_batch_closes_only_when_every_material_is_written_down()
    {
        _shop.Stock();
        _shop.Start("26T02-01E");
        Bench.Weigh(_shop.Book, "26T02-01E", "base", 900, null, TestShop.Day, "A");
        Assert.Contains("castor-oil, scent", TestShop.Refusal(() => Bench.Close(_shop.Book, "26T02-01E", 8, 0, null, TestShop.Day, "A")));
    }

    [Fact]
    public void A_correction_strikes_the_entry_and_keeps_it()
    {
        _shop.Stock();
        var lot = _shop.Finish("26T02-01E");
        var sale = Shop.Sell(_shop.Book, lot, 5, "Ann", 35, TestShop.Day, "A");
        var correction = Correcting.Of(_shop.Book, "sale", sale.Id, new Dictionary<string, string> { ["pieces"] = "3", ["paid"] = "21.00" }, "two came back", TestShop.Day, "A");
        var ledger = _shop.Book.Read();
        Assert.Equal(2, ledger.AllSales.Count);
        Assert.Equal((3, 21m, "Ann"), ledger.Sales.Select(s => (s.Pieces, s.Paid, s.To)).Single());
        Assert.Equal(5, ledger.PiecesLeft(ledger.BatchOf(lot)));
        Assert.Contains("was struck", TestShop.Refusal(() => Correcting.Of(_shop.Book, "sale", sale.Id, new Dictionary<string, string>(), "again", TestShop.Day, "A")));
        Correcting.Of(_shop.Book, "sale", correction.InsteadId!.Value, new Dictionary<string, string>(), "never happened", TestShop.Day, "A");
        ledger = _shop.Book.Read();
        Assert.Equal(8, ledger.PiecesLeft(ledger.BatchOf(lot)));
    }

    [Theory]
    [InlineData("sale", 99, "", "", "There is no sale 99")]
    [InlineData("purse", 1, "", "", "not a list")]
    [InlineData("receipt", 1, "colour", "red", "no \"colour\"")]
    [InlineData("receipt", 1, "price", "9,50", "decimal point")]
    [InlineData("receipt", 1, "id", "7", "no \"id\"")]
    [InlineData("receipt", 1, "amount", "5", "less than nothing")]
    [InlineData("receipt", 1, "", "", "would be struck")]
    [InlineData("batch", 1, "", "", "")]
    public void A_correction_that_makes_no_sense_is_refused(string list, int id, string field, string value, string says)
    {
        _shop.Stock();
        _shop.Start("26T02-01E");
        _shop.Weigh("26T02-01E", 900, 27, 18);
        var set = field.Length == 0 ? [] : new Dictionary<string, string> { [field] = value };
        void Act() => Correcting.Of(_shop.Book, list, id, set, "because", TestShop.Day, "A");
        if (says.Length > 0)
        {
            Assert.Contains(says, TestShop.Refusal(Act));
            Assert.Empty(_shop.Book.Read().Corrections);
            return;
        }
        // A whole batch struck gives its materials back.
        Act();
        var ledger = _shop.Book.Read();
        Assert.Equal(10_000, ledger.Left(ledger.Receipts.First()));
    }

    [Fact]
    public void A_receipt_corrected_keeps_what_was_taken_from_it()
    {
        _shop.Stock();
        _shop.Start("26T02-01E");
        _shop.Weigh("26T02-01E", 900, 27, 18);
        Correcting.Of(_shop.Book, "receipt", 1, new Dictionary<string, string> { ["amount"] = "5000", ["supplier lot"] = "B78" }, "half of it went back", TestShop.Day, "A");
        var ledger = _shop.Book.Read();
        var receipt = ledger.Receipts.Single(r => r.Material == "base");
        Assert.Equal((4100m, "B78"), (ledger.Left(receipt), receipt.SupplierLot));
    }

    [Fact]
    public void The_database_itself_refuses_to_change_or_lose_an_entry()
    {
        _shop.Stock();
        using var connection = new SqliteConnection($"Data Source={_shop.Book.Path};Pooling=False");
        connection.Open();
        foreach (var sql in new[] { "UPDATE Receipts SET Price = 0", "DELETE FROM Receipts" })
        {
            using var command = connection.CreateCommand();
            command.CommandText = sql;
            Assert.Contains("never changed", Assert.Throws<SqliteException>(() => command.ExecuteNonQuery()).Message);
        }
    }

    [Fact]
    public void Foreign_keys_hold_and_the_log_is_write_ahead()
    {
        Assert.Contains("refused", TestShop.Refusal(() => _shop.Book.Write((_, c) => c.Sales.Add(new Sale { On = TestShop.Day, By = "A", BatchId = 7, Pieces = 1, To = "x", Paid = 1 }))));
        Assert.True(File.Exists(_shop.Book.Path));
        using var connection = new SqliteConnection($"Data Source={_shop.Book.Path};Pooling=False");
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = "PRAGMA journal_mode";
        Assert.Equal("wal", command.ExecuteScalar());
    }

    [Fact]
    public void Two_programs_at_once_never_sell_the_same_bar()
    {
        _shop.Stock();
        var lot = _shop.Finish("26T02-01E");
        var sold = 0;
        Parallel.For(0, 12, new ParallelOptions { MaxDegreeOfParallelism = 4 }, i =>
        {
            try
            {
                Shop.Sell(RecordBook.Open(_shop.Folder), lot, 1, $"buyer {i}", 7, TestShop.Day, "A");
                Interlocked.Increment(ref sold);
            }
            catch (InputException)
            {
            }
        });
        Assert.Equal(8, sold);
        Assert.Equal(8, _shop.Book.Read().Sales.Count());
    }

    [Fact]
    public void What_was_really_weighed_decides_what_the_label_must_say()
    {
        _shop.Stock();
        _shop.Start("26T02-01E");
        _shop.Weigh("26T02-01E", 900, 27, 18);
        Assert.Empty(Label("26T02-01E").Changes);
        _shop.Start("26T02-02N");
        _shop.Weigh("26T02-02N", 900, 18, 36);
        Assert.Contains("now stands before", Assert.Single(Label("26T02-02N").Changes));
    }

    // 15 business days, FD&C Act 605(a): told on Wednesday 2026-11-25, the fifteenth business day is Wednesday 2026-12-16.
    [Fact]
    public void A_serious_reaction_gets_its_dates()
    {
        var complaint = Shop.Complain(_shop.Book, null, "a buyer", "hospital", true, false, new DateOnly(2026, 11, 25), "A");
        Assert.Equal((new DateOnly(2026, 12, 16), new DateOnly(2032, 11, 25)), (complaint.ReportBy, complaint.KeepUntil));
        var small = Shop.Complain(_shop.Book, null, "a buyer", "itch", false, true, new DateOnly(2028, 2, 29), "A");
        Assert.Equal(((DateOnly?)null, new DateOnly(2031, 2, 28)), (small.ReportBy, small.KeepUntil));
    }

    [Fact]
    public void Lists_are_safe_in_a_spreadsheet()
    {
        Shop.Complain(_shop.Book, null, "=cmd|' /C calc'!A0", "@x", false, false, TestShop.Day, "A");
        var (heading, rows) = BookTables.Of(_shop.Book.Read(), BookLists.Complaint);
        var read = TextTable.Read(SafeCsv.Write(heading, rows), "c.csv");
        Assert.StartsWith("'=", read[1].Cells[4]);
    }

    [Theory]
    [InlineData("6 x 113 g, 12 x 85 g", 18, 1698)]
    [InlineData("8 of 4 oz", 8, 907.18474)]
    public void Moulds_at_hand_set_the_size(string moulds, int pieces, decimal grams)
    {
        var batch = BatchSize.ToMoulds(_shop.Workshop, _shop.Workshop.Recipe("bar"), moulds);
        Assert.Equal(pieces, batch.Recipe.Pieces);
        Assert.InRange(batch.Total.Grams, grams - 0.001m, grams + 0.001m);
    }

    // Common practice: six pounds of base fill eighteen bars of five ounces with some over.
    [Fact]
    public void Six_pounds_fill_eighteen_bars_of_five_ounces_with_some_over() =>
        Assert.InRange(Mass.FromPounds(6).Grams - 18 * Mass.FromOunces(5).Grams, 1, 5 * Mass.GramsPerOunce * 18);

    private WeighedLabel Label(string lot)
    {
        var ledger = _shop.Book.Read();
        return WeighedLabel.Of(_shop.Workshop, _shop.Workshop.Recipe("bar"), ledger, ledger.BatchOf(lot), Market.Us, TestShop.Day);
    }
}
