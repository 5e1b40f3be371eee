using LabelForge.Lots;
using LabelForge.Measures;
using LabelForge.Papers;
using LabelForge.Pouring;
using LabelForge.Recipes;
using LabelForge.Records.Books;

namespace LabelForge.Cli.Tests.Days;

/// <summary>One pot, several scents: the base is weighed once, each product has its lot, and what
/// the scale showed is in the books to the microgram.</summary>
public sealed class PourTests : IDisposable
{
    private static readonly DateOnly Day = new(2026, 11, 21);

    private readonly ExampleWorkshop _example = new();
    private readonly OpenBooks _book;

    public PourTests()
    {
        _book = OpenBooks.Open(Folder);
        StockMovements.Receive(_book,
            new Receipt { On = Day, By = "A", Material = "white-shea-base", Amount = 3000, Price = 30, BestBefore = Day.AddDays(90) });
        StockMovements.Receive(_book,
            new Receipt { On = Day, By = "A", Material = "white-shea-base", Amount = 9000, Price = 80, BestBefore = Day.AddDays(400) });
    }

    private string Folder => _example.Opened.Folder;

    private Workshop Workshop => Workshop.Open(Folder);

    public void Dispose() => _example.Dispose();

    private Poured Begin(params string[] words) => Pour.Begin(_book, Workshop, PourWish.ReadAll(Workshop, words), Day, "A");

    private string Refusal(params string[] words) => Assert.Throws<InputException>(() => Begin(words)).Message;

    [Fact]
    public void One_pot_of_seven_products_has_a_number_and_seven_lots()
    {
        var poured = Begin("bramble-bar=6", "meadow-bar=6");
        Assert.Equal(new LotCode(Day, 1).ToString(), poured.Pot);
        Assert.Equal(Enumerable.Range(2, 7).Select(n => new LotCode(Day, n).ToString()), poured.Batches.Select(b => b.Batch.Lot));
        Assert.Equal("white-shea-base", Assert.Single(poured.Needs, n => n.InPot).Material.Id);
        Assert.Equal(7 * 725m, poured.Needs[0].Grams);
    }

    [Theory]
    [InlineData(5075)]
    [InlineData(5080.1)]
    [InlineData(4999.999999)]
    public void What_is_weighed_once_is_in_the_batches_together_and_out_of_the_bottles(double shown)
    {
        var (pot, grams) = (Begin("bramble-bar=6", "meadow-bar=6").Pot!, (decimal)shown);
        Pots.Weigh(_book, pot, "white-shea-base", grams, null, Day, "A");
        var snapshot = _book.Read();
        Assert.Equal(grams, snapshot.BatchesOfPot(pot).Sum(b => snapshot.WeighedInto(b).Sum(w => w.Grams)));
        Assert.Equal(12_000 - grams, snapshot.Receipts.Sum(snapshot.Left));
        // The bottle that expires first is empty before the next one is touched.
        Assert.Equal(0, snapshot.Left(snapshot.ReceiptOf(1)));
        Assert.All(snapshot.BatchesOfPot(pot),
            b => Assert.InRange(snapshot.WeighedInto(b).Sum(w => w.Grams), grams / 7 - 0.000001m, grams / 7 + 0.000001m));
    }

    [Fact]
    public void Products_of_two_bases_have_no_pot_in_common() =>
        Assert.Contains("no base in common", Refusal("bramble-bar=6", "hayloft-bar=6"), StringComparison.Ordinal);

    [Fact]
    public void Moulds_at_hand_are_filled_one_scent_to_a_mould()
    {
        Assert.Contains("How many of bramble-bar?", Refusal("bramble-bar", "meadow-bar/Moss Lane"), StringComparison.Ordinal);
        File.AppendAllText(Path.Combine(Folder, "workshop.yaml"),
            "moulds: [ { cavities: 6, holds: 125 g, number: 2 }, { cavities: 4, holds: 90 g } ]\n");
        var poured = Begin("bramble-bar", "meadow-bar/Moss Lane");
        Assert.Equal([10, 6], poured.Batches.Select(b => b.Batch.PiecesPlanned));
        Assert.Equal(6 * 125m + 4 * 90m, Math.Round(poured.Batches[0].Wish.Formula.Total.Grams, 4));
        Assert.Contains("3 moulds", Refusal("meadow-bar"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_batch_at_the_bench_keeps_what_it_still_needs()
    {
        Begin("bramble-bar=60");
        var need = Pour.Needs(PourWish.ReadAll(Workshop, ["meadow-bar/Rainy Day=60"]), _book.Read(), Day)[0];
        // 12,000 g are there, 7,250 g of them are promised to the first batch.
        Assert.Equal(7250 - (12_000 - 7250), need.Missing);
    }

    [Fact]
    public void The_bench_sheet_follows_the_makers_steps_and_puts_cautions_first()
    {
        File.AppendAllText(Path.Combine(Folder, "recipes/meadow-bar.yaml"),
            "steps:\n  - { add: colourant, note: in a little oil }\n  - Stir until no streak is left\n  - { add: fragrance, note: "
                + "below 60 °C }\n");
        var content = PotSheet.Content(Workshop, Begin("meadow-bar/Moss Lane=6", "meadow-bar/Rainy Day=6"));
        Assert.Equal(["From the pot into the jug", "Castor oil", "Straw gold mica", "Stir until no streak is left",
            "Moss lane fragrance oil", "Fill 6 moulds"], content.Blocks[0].Rows.Select(r => r.Text));
        Assert.Equal("below 60 °C", content.Blocks[0].Rows[4].Under);
        Assert.Equal(1450m, content.Shared[0].Mass?.Grams);
        Assert.StartsWith("Melted base", content.Cautions[0], StringComparison.Ordinal);
        Assert.StartsWith("Read each supplier", content.Cautions[^1], StringComparison.Ordinal);
    }

    [Fact]
    public void What_all_do_before_anything_of_their_own_goes_in_is_done_once_at_the_pot()
    {
        File.AppendAllText(Path.Combine(Folder, "recipes/meadow-bar.yaml"), """
            steps:
              - { add: white-shea-base, note: in small cubes }
              - Melt it gently
              - { add: oil }
              - { add: colourant }
              - { add: fragrance, note: below 60 °C }
              - Melt it gently

            """);
        var content = PotSheet.Content(Workshop, Begin("meadow-bar/Moss Lane=6", "meadow-bar/Rainy Day=6"));
        Assert.Equal(["White shea base", "Melt it gently"], content.Shared.Select(r => r.Text));
        Assert.StartsWith("in small cubes", content.Shared[0].Under, StringComparison.Ordinal);
        Assert.All(content.Blocks, b => Assert.Equal(["From the pot into the jug", "Castor oil"], b.Rows.Take(2).Select(r => r.Text)));
        // The same words once more at the end are each product's own.
        Assert.All(content.Blocks, b => Assert.Equal("Melt it gently", b.Rows[^2].Text));
    }

    [Fact]
    public void A_step_after_something_that_no_step_names_is_each_products_own()
    {
        File.AppendAllText(Path.Combine(Folder, "recipes/meadow-bar.yaml"), "steps:\n  - Stir it in\n  - { add: fragrance }\n");
        var content = PotSheet.Content(Workshop, Begin("meadow-bar/Moss Lane=6", "meadow-bar/Rainy Day=6"));
        Assert.Equal(["White shea base"], content.Shared.Select(r => r.Text));
        Assert.Contains("Stir it in", content.Blocks[0].Rows.Select(r => r.Text));
    }

    [Fact]
    public void The_bench_sheet_speaks_French_but_for_the_makers_own_words()
    {
        File.AppendAllText(Path.Combine(Folder, "recipes/meadow-bar.yaml"), "steps:\n  - Stir until no streak is left\n");
        var content = PotSheet.Content(Workshop, Begin("meadow-bar/Moss Lane=6", "meadow-bar/Rainy Day=6"), PaperWords.In("fr"));
        Assert.Contains("12 pièces de 2 produits", content.Subtitle, StringComparison.Ordinal);
        Assert.Equal("Du pot dans le pichet", content.Blocks[0].Rows[0].Text);
        Assert.Equal("Remplir 6 moules", content.Blocks[0].Rows[^1].Text);
        Assert.StartsWith("La base fondue", content.Cautions[0], StringComparison.Ordinal);
        Assert.StartsWith("Lisez d’abord", content.Cautions[^1], StringComparison.Ordinal);
        using var pdf = new MemoryStream();
        LabelForge.Print.Documents.PotSheetWriter
            .WritePdf(pdf, content, new LabelForge.Print.Output.DocumentInfo("pot", DateTimeOffset.UnixEpoch));
        Assert.True(pdf.Length > 1000);
    }

    [Theory]
    [InlineData("bramble-bar=0", "not a number of pieces")]
    [InlineData("bramble-bar=some", "does not say how much")]
    [InlineData("bramble-bar=6 x soap", "not a set of moulds")]
    public void A_size_that_says_nothing_is_asked_about(string word, string told) =>
        Assert.Contains(told, Refusal(word), StringComparison.Ordinal);

    [Fact]
    public void All_batches_of_a_pot_are_closed_together_or_none_is()
    {
        var poured = Begin("bramble-bar=6", "meadow-bar/Rainy Day=6");
        Pots.Weigh(_book, poured.Pot!, "white-shea-base", 1450, null, Day, "A");
        string[] lots = [.. poured.Batches.Select(b => b.Batch.Lot)];
        Assert.Contains("Nothing is written for",
            Assert.Throws<InputException>(() => Production.CloseAll(_book, lots, 6, 0, Day, "A")).Message, StringComparison.Ordinal);
        foreach (var (batch, wish) in poured.Batches)
        {
            foreach (var line in wish.Formula.Lines.Where(l => l.Material.Id != "white-shea-base"))
                Production.Weigh(_book, batch.Lot, line.Material.Id, line.Mass.Grams, null, Day, "A");
        }
        Assert.Equal(2, Production.CloseAll(_book, lots, 6, 0, Day, "A").Count);
    }
}
