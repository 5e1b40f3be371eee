using System.Globalization;
using System.Text.Json;
using LabelForge.Days;
using LabelForge.Records.Books;
using LabelForge.Years;

namespace LabelForge.Cli.Tests.Days;

/// <summary>
/// Ten scents, one Saturday, through the command: one pot, sixty bars, one mixed print run, forty sales of which two are
/// undone, one complaint and its trace. At the end the books balance to the gram and the cent.
/// </summary>
public sealed class SaturdayTests : IDisposable
{
    private const string Friday = "2026-11-20";
    private const string Saturday = "2026-11-28";
    private const string Market = "Fairport market";

    private readonly ExampleWorkshop _example = new();

    private string Folder => _example.Opened.Folder;

    private OpenBooks Books => OpenBooks.Open(Folder);

    public void Dispose() => _example.Dispose();

    private JsonElement Do(string on, params string[] words) => CommandRun.Json([.. words, "--workshop", Folder, "--on", on]);

    [Fact]
    public void From_one_pot_to_the_market_table_and_back()
    {
        Prepare();
        var lots = PourSixty();
        PrintThem(lots);
        var paid = SellForty();
        AnswerFor(lots);
        Balance(paid);
    }

    // A range of ten: seven are there, three are copied, each with its own scent and hue; moulds are the maker's.
    private void Prepare()
    {
        File.AppendAllText(Path.Combine(Folder, "workshop.yaml"),
            "moulds: [ { cavities: 6, holds: 125 g, number: 10 } ]\nlabel stock: [ us-letter-10-2x4in ]\nsales tax: { rate: 5.5 %, "
                + "prices: with tax }\n");
        File.AppendAllText(Path.Combine(Folder, "materials/label-2x4.yaml"), "label stock: us-letter-10-2x4in\n");
        foreach (var (name, scent, hue) in ((string, string, string)[])[("Fern Hollow", "moss-fragrance", "150"),
            ("Quince Row", "peach-fragrance", "85"), ("Slate Quay", "rain-fragrance", "250")])
            CommandRun.Json("recipe", "copy", "meadow-bar/Salt Meadow", name, "--scent", scent, "--hue", hue, "--workshop", Folder);
        foreach (var (material, amount, price) in ((string, string, string)[])[("white-shea-base", "5 kg", "40.00"),
            ("white-shea-base", "5 kg", "42.00"), ("castor-oil", "250 g", "9.50"), ("label-2x4", "100 pieces", "7.80"),
            ("clear-bag", "100 pieces", "12.00")])
            Do(Friday, "receive", material, amount, "--price", price);
        foreach (var material in _example.Opened.Materials.Values
            .Where(m => m.Kind is Recipes.MaterialKind.Fragrance or Recipes.MaterialKind.Colourant))
            Do(Friday, "receive", material.Id, "60 g", "--price", "8.40");
    }

    private string[] PourSixty()
    {
        var begun = Do(Friday, "batch", "begin", "bramble-bar", "meadow-bar", "--out", Path.Combine(Folder, "bench.pdf"));
        var pot = begun.GetProperty("pot").GetString()!;
        var batches = begun.GetProperty("batches").EnumerateArray().ToArray();
        Assert.Equal((10, 60), (batches.Length, batches.Sum(b => b.GetProperty("pieces").GetInt32())));
        Assert.True(new FileInfo(Path.Combine(Folder, "bench.pdf")).Length > 1000);
        var based = begun.GetProperty("materials").EnumerateArray().First();
        Assert.True(based.GetProperty("inPot").GetBoolean());
        Assert.Equal(0, based.GetProperty("missing").GetDecimal());
        Do(Friday, "batch", "weigh", pot, "white-shea-base", $"{Figure(based.GetProperty("grams").GetDecimal())} g");
        foreach (var lot in batches.Select(b => b.GetProperty("lot").GetString()!))
        {
            foreach (var line in CommandRun.Json("batch", "show", lot, "--workshop", Folder).GetProperty("materials").EnumerateArray()
                .Where(m => m.GetProperty("weighed").GetDecimal() == 0))
                Do(Friday, "batch", "weigh", lot, line.GetProperty("material").GetString()!,
                    $"{Figure(Math.Round(line.GetProperty("planned").GetDecimal(), 2))} g");
        }
        Do(Friday, "batch", "close", pot, "--made", "6");
        return [.. batches.Select(b => b.GetProperty("lot").GetString()!)];
    }

    private void PrintThem(string[] lots)
    {
        var labels = Path.Combine(Folder, "labels.pdf");
        var run = Do(Friday, "print", "--today", "--out", labels);
        Assert.Equal(10, run.GetProperty("labels").GetArrayLength());
        var sheets = run.GetProperty("sheets").EnumerateArray().ToArray();
        Assert.Equal(6, sheets.Length);
        Assert.All(sheets, s => Assert.Equal(0, s.GetProperty("freeAfter").GetInt32()));
        // Six of one lot and four of the next stand on one sheet.
        Assert.Equal(2, sheets[0].GetProperty("places").EnumerateArray().Select(p => p.GetProperty("lot").GetString()).Distinct().Count());
        Assert.Equal(2, CommandRun.Of("print", "--today", "--workshop", Folder, "--on", Friday, "--dry-run").ExitCode);
        // Two came out badly: only these are printed again, and what is left of their sheet is remembered.
        var again = Do(Friday, "print", "--spoiled", $"{lots[3]}=2", "--today", "--out", Path.Combine(Folder, "two.pdf"))
            .GetProperty("sheets").EnumerateArray().Single();
        Assert.Equal((2, 8), (again.GetProperty("places").GetArrayLength(), again.GetProperty("freeAfter").GetInt32()));
        Assert.Equal("A: 1-2",
            Assert.Single(Do(Friday, "print", "--batch", lots[0], "--count", $"{lots[0]}=1", "--dry-run").GetProperty("sheets")
                .EnumerateArray().Select(s => $"{s.GetProperty("sheet").GetString()}: {s.GetProperty("usedBefore").GetString()}")));
        // What was printed once can be printed again to the byte.
        var first = File.ReadAllBytes(labels);
        File.AppendAllText(Path.Combine(Folder, "recipes/meadow-bar.yaml"), "notes: changed since\n");
        Do(Friday, "print", "--again", "1", "--out", labels);
        Assert.Equal(first, File.ReadAllBytes(labels));
        CommandRun.Of("correct", "printing", Books.Read().Printings.Count.ToString(CultureInfo.InvariantCulture), "--reason", "tried",
            "--workshop", Folder);
    }

    private decimal SellForty()
    {
        string[] scents = ["Bramble & Shea", "Salt Meadow", "Peach Morning", "Beeswing", "Moss Lane", "Rainy Day", "Winter Smoke",
            "Fern Hollow", "Quince Row", "Slate Quay"];
        var paid = 0m;
        for (var buyer = 0; buyer < 40; buyer++)
        {
            // Every eighth buyer takes two scents in one go.
            string[] taken = buyer % 8 == 7 ? [$"{scents[buyer % 10]}=1", $"{scents[(buyer + 3) % 10]}=1"] : [$"{scents[buyer % 10]}=1"];
            var sold = Do(Saturday, ["market", "sell", .. taken, "--to", Market, "--payment", buyer % 3 == 0 ? "card" : "cash"]);
            if (buyer is 11 or 26)
                Do(Saturday, "market", "undo");
            else
                paid += sold.GetProperty("paid").GetDecimal();
        }
        var day = Do(Saturday, "market", "day", "--to", Market, "--float", "40", "--card", "91", "--cash", "224", "--out",
            Path.Combine(Folder, "day.pdf"));
        Assert.Equal(38, day.GetProperty("tickets").GetInt32());
        Assert.Equal(paid, day.GetProperty("paid").GetDecimal());
        Assert.Equal(paid, day.GetProperty("byPayment").EnumerateObject().Sum(p => p.Value.GetDecimal()));
        Assert.Equal(40 + paid - 91, day.GetProperty("expected").GetDecimal());
        Assert.Equal(day.GetProperty("products").EnumerateArray().Sum(p => p.GetProperty("tax").GetDecimal()),
            day.GetProperty("tax").GetDecimal());
        Assert.True(File.Exists(Path.Combine(Folder, "day.pdf")));
        // What is left went back into stock by never having left it.
        Assert.Equal(60 - day.GetProperty("products").EnumerateArray().Sum(p => p.GetProperty("sold").GetInt32()),
            Books.Read().Batches.Sum(b => Books.Read().PiecesLeft(b)));
        return paid;
    }

    private void AnswerFor(string[] lots)
    {
        Do("2026-11-30", "complaint", "--from", "a buyer", "--what", "it itched", "--lot", lots[4]);
        Do("2026-11-30", "return", lots[4], "1", "--from", Market, "--paid-back", "7.00", "--payment", "cash", "--reason", "it itched");
        var trace = CommandRun.Json("trace", lots[4], "--workshop", Folder);
        Assert.Contains(trace.GetProperty("materialLots").EnumerateArray(),
            u => u.GetProperty("material").GetString() == "white-shea-base");
        // From the pot, all who have of the same base.
        var pot = Books.Read().BatchOf(lots[4]).Pot!;
        Assert.Equal(10, CommandRun.Json("trace", pot, "--workshop", Folder).GetProperty("batches").GetArrayLength());
        Assert.Contains(OpenToday.Of(_example.Opened, Books.Read(), new DateOnly(2026, 11, 30)).Open,
            o => o.Kind == OpenKind.Complaint && o.Lot == lots[4]);
        Do("2026-11-30", "count", $"{lots[0]}={Books.Read().PiecesLeft(Books.Read().BatchOf(lots[0])) - 1}");
    }

    private void Balance(decimal paid)
    {
        var snapshot = Books.Read();
        BooksInvariants.Check(snapshot.Whole);
        // To the gram: what came in is in the bottles, in the bars, or on them.
        foreach (var material in snapshot.Receipts.Select(r => r.Material).Distinct())
        {
            var receipts = snapshot.Receipts.Where(r => r.Material == material).ToDictionary(r => r.Id);
            Assert.Equal(receipts.Values.Sum(r => r.Amount), receipts.Values.Sum(snapshot.Left)
                + snapshot.Weighings.Where(w => w.Material == material).Sum(w => w.Grams) + snapshot.PackingUses
                    .Where(u => receipts.ContainsKey(u.ReceiptId)).Sum(u => u.Used));
        }
        // 60 labels, 2 spoiled ones printed anew, and 60 of the run that was printed again: 18
        // more than the 100 that came in, and no more than these are booked.
        Assert.Equal(0, snapshot.Left(snapshot.Receipts.Single(r => r.Material == "label-2x4")));
        Assert.Equal(40, snapshot.Left(snapshot.Receipts.Single(r => r.Material == "clear-bag")));
        // To the cent: what was paid is in what was sold, lost, or is in the house, counted thing by thing.
        var year = YearBook.Of(snapshot, 2026);
        Assert.Equal(paid - 7, year.Whole.Paid);
        Assert.Equal((0m, snapshot.Receipts.Sum(r => r.Price)), (year.AtStart, year.Bought));
        Assert.Equal(Math.Round(StockValue.Of(snapshot).Whole, 9), Math.Round(year.AtEnd, 9));
        Assert.Equal(0, Math.Round(year.OutOfBalance, 9));
        Assert.Equal(year.Whole.Paid, year.Lines.Where(l => l.By == "product").Sum(l => l.Paid));
        Assert.Equal(year.Whole.Cost, year.Lines.Where(l => l.By == "market").Sum(l => l.Cost));
        Assert.Empty(year.WithoutAPrice);
    }

    private static string Figure(decimal figure) => figure.ToString(CultureInfo.InvariantCulture);
}
