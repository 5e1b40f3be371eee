using LabelForge.Markets;
using LabelForge.Measures;
using LabelForge.Recipes;
using LabelForge.Records.Books;
using LabelForge.Records.Spreadsheets;
using Microsoft.EntityFrameworkCore;

namespace LabelForge.Records.Tests.Books;

/// <summary>The rules of the books, the same wherever they are kept.</summary>
public abstract class BookTests(TestShop shop) : IDisposable
{
    private readonly TestShop _shop = shop;

    public void Dispose()
    {
        _shop.Dispose();
        GC.SuppressFinalize(this);
    }

    [Fact]
    public void What_expires_first_goes_out_first_and_what_has_expired_not_at_all()
    {
        _shop.Receive("base", 500, 7, TestShop.Day.AddDays(-1));
        var late = _shop.Receive("base", 600, 7, TestShop.Day.AddDays(90));
        var soon = _shop.Receive("base", 400, 7, TestShop.Day.AddDays(30));
        var open = _shop.Receive("base", 800, 7);
        var proposal = Production.Propose(_shop.Book.Read(), [("base", 1200m)], TestShop.Day)[0];
        Assert.Equal([(soon.Id, 400m), (late.Id, 600m), (open.Id, 200m)], proposal.Take.Select(t => (t.From.Id, t.Grams)));
        Assert.Equal(0, proposal.Missing);
    }

    [Fact]
    public void More_than_is_there_is_refused_and_nothing_is_written()
    {
        _shop.Stock();
        _shop.Start("26R02-01X");
        Assert.Contains("short of",
            TestShop.Refusal(() => Production.Weigh(_shop.Book, "26R02-01X", "scent", 501, null, TestShop.Day, "A")));
        Assert.Contains("less than nothing",
            TestShop.Refusal(() => Production.Weigh(_shop.Book, "26R02-01X", "scent", 501, 3, TestShop.Day, "A")));
        Assert.Empty(_shop.Book.Read().AllWeighings);
    }

    [Fact]
    public void No_more_is_sold_than_was_made_and_none_of_an_open_batch()
    {
        _shop.Stock();
        _shop.Start("26R02-01X");
        Assert.Contains("not finished",
            TestShop.Refusal(() => StockMovements.Sell(_shop.Book, "26R02-01X", 1, "Ann", 7, TestShop.Day, "A")));
        _shop.Weigh("26R02-01X", 900, 27, 18);
        Production.Close(_shop.Book, "26R02-01X", 8, 1, null, TestShop.Day, "A");
        StockMovements.Sell(_shop.Book, "26R02-01X", 7, "market day", 49, TestShop.Day, "A");
        Assert.Contains("1 pieces less than nothing",
            TestShop.Refusal(() => StockMovements.Sell(_shop.Book, "26R02-01X", 1, "Ann", 7, TestShop.Day, "A")));
    }

    [Fact]
    public void A_batch_closes_only_when_every_material_is_written_down()
    {
        _shop.Stock();
        _shop.Start("26R02-01X");
        Production.Weigh(_shop.Book, "26R02-01X", "base", 900, null, TestShop.Day, "A");
        Assert.Contains("castor-oil, scent",
            TestShop.Refusal(() => Production.Close(_shop.Book, "26R02-01X", 8, 0, null, TestShop.Day, "A")));
    }

    [Fact]
    public void A_correction_strikes_the_entry_and_keeps_it()
    {
        _shop.Stock();
        var lot = _shop.Finish("26R02-01X");
        var sale = StockMovements.Sell(_shop.Book, lot, 5, "Ann", 35, TestShop.Day, "A");
        var correction = Correcting.Of(_shop.Book, Shipped.Markets, "sale", sale.Id,
            new Dictionary<string, string> { ["pieces"] = "3", ["paid"] = "21.00" }, "two came back", TestShop.Day, "A");
        var snapshot = _shop.Book.Read();
        Assert.Equal(2, snapshot.AllSales.Count);
        Assert.Equal((3, 21m, "Ann"), snapshot.Sales.Select(s => (s.Pieces, s.Paid, s.To)).Single());
        Assert.Equal(5, snapshot.PiecesLeft(snapshot.BatchOf(lot)));
        Assert.Contains("was struck",
            TestShop.Refusal(() => Correcting.Of(_shop.Book, Shipped.Markets, "sale", sale.Id, new Dictionary<string, string>(), "again",
            TestShop.Day,
                "A")));
        Correcting.Of(_shop.Book, Shipped.Markets, "sale", correction.InsteadId!.Value, new Dictionary<string, string>(), "never happened", TestShop.Day,
            "A");
        snapshot = _shop.Book.Read();
        Assert.Equal(8, snapshot.PiecesLeft(snapshot.BatchOf(lot)));
    }

    [Theory]
    [InlineData("sale", 99, "", "", "There is no sale 99")]
    [InlineData("purse", 1, "", "", "not a list")]
    [InlineData("receipt", 1, "colour", "red", "no \"colour\"")]
    [InlineData("receipt", 1, "price", "9,50", "decimal point")]
    [InlineData("receipt", 1, "id", "7", "no \"id\"")]
    [InlineData("receipt", 1, "price", "9.505", "finer than a cent")]
    [InlineData("receipt", 1, "amount", "0", "above nothing")]
    [InlineData("receipt", 1, "material", "scent", "holds scent")]
    [InlineData("weighing", 1, "from", "M2", "holds castor-oil")]
    [InlineData("weighing", 1, "from", "M9", "There is no M9")]
    [InlineData("weighing", 1, "lot", "26R02X02N", "No batch has the lot")]
    [InlineData("batch", 1, "lot", "nonsense", "not a lot code")]
    [InlineData("receipt", 1, "by", "", "no \"by\"")]
    [InlineData("receipt", 1, "amount", "5", "less than nothing")]
    [InlineData("receipt", 1, "", "", "would be struck")]
    [InlineData("batch", 1, "", "", "")]
    public void A_correction_that_makes_no_sense_is_refused(string list, int id, string field, string value, string says)
    {
        _shop.Stock();
        _shop.Start("26R02-01X");
        _shop.Weigh("26R02-01X", 900, 27, 18);
        var set = field.Length == 0 ? [] : new Dictionary<string, string> { [field] = value };
        void Act() => Correcting.Of(_shop.Book, Shipped.Markets, list, id, set, "because", TestShop.Day, "A");
        if (says.Length > 0)
        {
            Assert.Contains(says, TestShop.Refusal(Act));
            Assert.Empty(_shop.Book.Read().Corrections);
            return;
        }
        // A whole batch struck gives its materials back.
        Act();
        var snapshot = _shop.Book.Read();
        Assert.Equal(10_000, snapshot.Left(snapshot.Receipts.First()));
    }

    [Fact]
    public void The_number_on_the_bottle_outlives_a_correction()
    {
        _shop.Stock();
        Correcting.Of(_shop.Book, Shipped.Markets, "receipt", 1, new Dictionary<string, string> { ["supplier lot"] = "B78" }, "misread", TestShop.Day, "A");
        _shop.Start("26R02-01X");
        Production.Weigh(_shop.Book, "26R02-01X", "base", 900, 1, TestShop.Day, "A");
        var snapshot = _shop.Book.Read();
        Assert.Equal((4, "M1"), (snapshot.ReceiptOf(1).Id, snapshot.Bottle(4)));
        Assert.Equal(9100, snapshot.Left(snapshot.ReceiptOf(1)));
        Assert.Equal("M1", BookTables.Of(snapshot, BookLists.Weighing).Rows[0][5]);
    }

    // The mistake that a recall hangs on: the wrong bottle was written down, and pieces are sold already.
    [Fact]
    public void The_wrong_bottle_is_put_right_after_the_sale()
    {
        _shop.Stock();
        var other = _shop.Receive("scent", 500, 60);
        var lot = _shop.Finish("26R02-01X");
        StockMovements.Sell(_shop.Book, lot, 1, "Ann", 7, TestShop.Day, "A");
        var weighing = _shop.Book.Read().Weighings.Single(w => w.Material == "scent");
        Correcting.Of(_shop.Book, Shipped.Markets, "weighing", weighing.Id, new Dictionary<string, string> { ["from"] = $"M{other.Id}" },
            "it was the other bottle", TestShop.Day, "A");
        var snapshot = _shop.Book.Read();
        Assert.Equal((500m, 482m), (snapshot.Left(snapshot.ReceiptOf(3)), snapshot.Left(snapshot.ReceiptOf(other.Id))));
    }

    [Fact]
    public void A_sale_and_a_complaint_are_put_to_the_right_lot()
    {
        _shop.Stock();
        _shop.Finish("26R02-01X");
        _shop.Finish("26R02X02N");
        StockMovements.Sell(_shop.Book, "26R02-01X", 2, "Ann", 14, TestShop.Day, "A");
        StockMovements.Complain(_shop.Book, Shipped.Markets, null, "Ann", "a rash", false, false, TestShop.Day, "A");
        Correcting.Of(_shop.Book, Shipped.Markets, "sale", 1, new Dictionary<string, string> { ["lot"] = "26R02X02N" }, "the other tray", TestShop.Day,
            "A");
        Correcting.Of(_shop.Book, Shipped.Markets, "complaint", 1, new Dictionary<string, string> { ["lot"] = "26r02x02n" },
            "she read the lot off the label", TestShop.Day, "A");
        var snapshot = _shop.Book.Read();
        Assert.Equal((8, 6), (snapshot.PiecesLeft(snapshot.BatchOf("26R02-01X")), snapshot.PiecesLeft(snapshot.BatchOf("26R02X02N"))));
        Assert.Equal(2, snapshot.Complaints.Single().BatchId);
    }

    [Fact]
    public void Nothing_of_an_open_batch_is_thrown_away_and_a_struck_one_leaves_nothing_hanging()
    {
        _shop.Stock();
        _shop.Start("26R02-01X");
        Assert.Contains("not finished",
            TestShop.Refusal(() => StockMovements.DisposePieces(_shop.Book, "26R02-01X", 1, "broken", TestShop.Day, "A")));
        StockMovements.DisposeMaterial(_shop.Book, 3, 100, "spilt", TestShop.Day, "A");
        Assert.Contains("is of M3, which would be struck",
            TestShop.Refusal(() => Correcting.Of(_shop.Book, Shipped.Markets, "receipt", 3, new Dictionary<string, string>(),
            "never came", TestShop.Day,
                "A")));
    }

    [Fact]
    public void A_receipt_corrected_keeps_what_was_taken_from_it()
    {
        _shop.Stock();
        _shop.Start("26R02-01X");
        _shop.Weigh("26R02-01X", 900, 27, 18);
        Correcting.Of(_shop.Book, Shipped.Markets, "receipt", 1, new Dictionary<string, string> { ["amount"] = "5000", ["supplier lot"] = "B78" },
            "half of it went back", TestShop.Day, "A");
        var snapshot = _shop.Book.Read();
        var receipt = snapshot.Receipts.Single(r => r.Material == "base");
        Assert.Equal((4100m, "B78"), (snapshot.Left(receipt), receipt.SupplierLot));
    }

    [Fact]
    public void The_database_itself_refuses_to_change_or_lose_an_entry()
    {
        _shop.Stock();
        foreach (var sql in new[] { "UPDATE \"Receipts\" SET \"PriceCents\" = 0", "DELETE FROM \"Receipts\"" })
            Assert.Contains("never changed",
                TestShop.Refusal(() => _shop.Book.Write((_, context) => context.Database.ExecuteSqlRaw(sql))));
        Assert.Equal(3, _shop.Book.Read().Receipts.Count);
    }

    [Fact]
    public void What_hangs_on_nothing_is_refused() =>
        Assert.Contains("refused",
            TestShop.Refusal(() => _shop.Book
                .Write((_, c) => c.Sales.Add(new Sale { On = TestShop.Day, By = "A", BatchId = 7, Pieces = 1, To = "x", Paid = 1 }))));

    [Fact]
    public void Two_programs_at_once_never_sell_the_same_bar()
    {
        _shop.Stock();
        var lot = _shop.Finish("26R02-01X");
        var sold = 0;
        Parallel.For(0, 12, new ParallelOptions { MaxDegreeOfParallelism = 4 }, i =>
        {
            try
            {
                StockMovements.Sell(OpenBooks.Open(_shop.Folder), lot, 1, $"buyer {i}", 7, TestShop.Day, "A");
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
        _shop.Start("26R02-01X");
        _shop.Weigh("26R02-01X", 900, 27, 18);
        Assert.Empty(Label("26R02-01X").Changes);
        _shop.Start("26R02X02N");
        _shop.Weigh("26R02X02N", 900, 18, 36);
        Assert.Contains("now stands before", Assert.Single(Label("26R02X02N").Changes));
    }

    // 15 business days, FD&C Act 605(a): told on Wednesday 2026-11-25, the fifteenth business day is Wednesday 2026-12-16.
    [Fact]
    public void A_serious_reaction_gets_its_dates()
    {
        var complaint = StockMovements.Complain(_shop.Book, Shipped.Markets, null, "a buyer", "hospital", true, false, new DateOnly(2026, 11, 25), "A");
        Assert.Equal((new DateOnly(2026, 12, 16), new DateOnly(2032, 11, 25)), (complaint.ReportBy, complaint.KeepUntil));
        var small = StockMovements.Complain(_shop.Book, Shipped.Markets, null, "a buyer", "itch", false, true, new DateOnly(2028, 2, 29), "A");
        Assert.Equal(((DateOnly?)null, new DateOnly(2031, 2, 28)), (small.ReportBy, small.KeepUntil));
        // What turns out serious later counts from the day it was told: Tuesday 2028-02-29, so Tuesday 2028-03-21.
        Correcting.Of(_shop.Book, Shipped.Markets, "complaint", small.Id, new Dictionary<string, string> { ["serious"] = "yes" }, "hospital after all",
            new DateOnly(2028, 3, 2), "A");
        Assert.Equal(new DateOnly(2028, 3, 21),
            _shop.Book.Read().Complaints.Single(c => c.From == "a buyer" && c.What == "itch").ReportBy);
    }

    [Fact]
    public void Lists_are_safe_in_a_spreadsheet()
    {
        StockMovements.Complain(_shop.Book, Shipped.Markets, null, "=cmd|' /C calc'!A0", "@x", false, false, TestShop.Day, "A");
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

    // 2 % is common practice; a recipe that says 5 % is held to that.
    [Theory]
    [InlineData("", true)]
    [InlineData("tolerance: 5 %\n", false)]
    public void The_recipes_own_tolerance_decides_what_is_flagged(string line, bool flagged)
    {
        File.AppendAllText(Path.Combine(_shop.Folder, "recipes/bar.yaml"), line);
        _shop.Stock();
        _shop.Start("26R02-01X");
        _shop.Weigh("26R02-01X", 930, 27, 18);
        var snapshot = _shop.Book.Read();
        Assert.Equal(flagged, Production.Compare(snapshot, snapshot.BatchOf("26R02-01X"))[0].Off);
    }

    [Fact]
    public void A_lot_keeps_the_formula_that_its_materials_had_when_it_was_begun()
    {
        _shop.Stock();
        var lot = _shop.Finish("26R02-01X");
        var before = Label(lot);
        Assert.Empty(before.Changes);
        _shop.Write("materials/scent.yaml", "name: Scent\nkind: oil\ncontains: Cocos Nucifera Oil\n");
        var after = Label(lot);
        Assert.Equal(before.Weighed.Statement, after.Weighed.Statement);
        Assert.Contains("has changed since", Assert.Single(after.Changes));
    }

    [Fact]
    public void Pieces_lighter_than_declared_are_told_when_the_batch_is_closed()
    {
        _shop.Stock();
        _shop.Start("26R02-01X");
        _shop.Weigh("26R02-01X", 900, 27, 18);
        Production.Close(_shop.Book, "26R02-01X", 8, 0, 896m, TestShop.Day, "A");
        Assert.Contains("112 g on average, less than the 113 g", Assert.Single(Label("26R02-01X").Changes));
    }

    // Without a net quantity of its own a piece declares what came out, shared out: 896 g over 8 pieces.
    [Fact]
    public void What_came_out_of_a_lot_sets_what_its_pieces_declare()
    {
        var recipe = Path.Combine(_shop.Folder, "recipes/bar.yaml");
        File.WriteAllLines(recipe, File.ReadAllLines(recipe).Where(l => !l.StartsWith("net:", StringComparison.Ordinal)));
        _shop.Stock();
        _shop.Start("26R02-01X");
        _shop.Weigh("26R02-01X", 900, 27, 18);
        Assert.Equal(945m / 8, Label("26R02-01X").Formula.PerPiece.Grams);
        Production.Close(_shop.Book, "26R02-01X", 8, 0, 896m, TestShop.Day, "A");
        var label = Label("26R02-01X");
        Assert.Equal(112m, label.Formula.PerPiece.Grams);
        // What stayed in the pot is of the same stuff, and what is printed is bound to the recipe that carries it.
        Assert.Equal(945m, label.Formula.Yield.Grams);
        Assert.Equal(112m, BatchFormula.Of(label.Workshop, label.Formula.Recipe).PerPiece.Grams);
        Assert.Contains(label.Changes, c => c.StartsWith("49 g less came out", StringComparison.Ordinal));
    }

    // Where the recipe says that water leaves, the scale says how much of it left this lot.
    [Theory]
    [InlineData("yield: 905 g")]
    [InlineData("loss: 40 g water")]
    public void What_came_out_of_a_lot_says_how_much_left_it(string key)
    {
        File.AppendAllText(Path.Combine(_shop.Folder, "recipes/bar.yaml"), key + "\n");
        _shop.Stock();
        _shop.Start("26R02-01X");
        _shop.Weigh("26R02-01X", 900, 27, 18);
        Production.Close(_shop.Book, "26R02-01X", 8, 0, 896m, TestShop.Day, "A");
        var formula = Label("26R02-01X").Formula;
        Assert.Equal((896m, 112m), (formula.Yield.Grams, formula.PerPiece.Grams));
        Assert.Equal(49m, formula.Losses.Sum(l => l.Mass.Grams), 12);
    }

    [Fact]
    public void A_lot_is_never_labelled_as_another_product()
    {
        _shop.Stock();
        _shop.Finish("26R02-01X");
        File.Copy(Path.Combine(_shop.Folder, "recipes/bar.yaml"), Path.Combine(_shop.Folder, "recipes/other.yaml"));
        var snapshot = _shop.Book.Read();
        Assert.Contains("not other",
            TestShop.Refusal(() => WeighedLabel.Of(_shop.Workshop, _shop.Workshop.Recipe("other"), snapshot, snapshot.BatchOf("26R02-01X"),
                Market.Us, TestShop.Day)));
    }

    // A soap loses its water: what the recipe says of its yield is scaled with it.
    [Fact]
    public void A_recipe_with_a_yield_is_scaled_with_its_loss()
    {
        File.AppendAllText(Path.Combine(_shop.Folder, "recipes/bar.yaml"), "yield: 905 g\n");
        var batch = BatchSize.ToPieces(_shop.Workshop, _shop.Workshop.Recipe("bar"), 4);
        Assert.Equal((472.5m, 452.5m), (batch.Total.Grams, batch.Yield.Grams));
        Assert.Equal(9, BatchSize.ToMass(_shop.Workshop, _shop.Workshop.Recipe("bar"), Mass.FromGrams(1065)).Recipe.Pieces);
    }

    private WeighedLabel Label(string lot)
    {
        var snapshot = _shop.Book.Read();
        return WeighedLabel.Of(_shop.Workshop, _shop.Workshop.Recipe("bar"), snapshot, snapshot.BatchOf(lot), Market.Us, TestShop.Day);
    }
}

/// <summary>The rules of books in a file.</summary>
public sealed class FileBookTests() : BookTests(new TestShop());

/// <summary>The same rules of books on a server.</summary>
public sealed class ServerBookTests() : BookTests(TestShop.OnServer());
