using LabelForge.Days;
using LabelForge.Lots;
using LabelForge.Recipes;
using LabelForge.Records.Books;

namespace LabelForge.Cli.Tests.Days;

/// <summary>What is open on a day, in the order of what to do first.</summary>
public sealed class OpenTodayTests : IDisposable
{
    private static readonly DateOnly Today = new(2026, 11, 25);
    private static readonly string Lot = new LotCode(Today, 1).ToString();

    private readonly ExampleWorkshop _example = new();
    private readonly OpenBooks _book;

    public OpenTodayTests() => _book = OpenBooks.Open(_example.Opened.Folder);

    public void Dispose() => _example.Dispose();

    private OpenToday Open(DateOnly? on = null) => OpenToday.Of(_example.Opened, _book.Read(), on ?? Today);

    private void Receive(string material, decimal grams, DateOnly? best = null) =>
        StockMovements.Receive(_book,
            new Receipt { On = Today.AddDays(-30), By = "A", Material = material, Amount = grams, Price = 9, BestBefore = best });

    private BatchFormula Begin(string recipe = "bramble-bar", int day = 0)
    {
        var batch = _example.Batch(recipe);
        Production.Start(_book, FrozenRecipe.Of(_example.Opened, batch, "us", null), new LotCode(Today.AddDays(day), 1).ToString(),
            Today.AddDays(day), "A");
        return batch;
    }

    private void Finish(BatchFormula batch, int made, int rejected = 0)
    {
        foreach (var line in batch.Lines)
            Production.Weigh(_book, Lot, line.Material.Id, line.Mass.Grams, null, Today, "A");
        Production.Close(_book, Lot, made, rejected, null, Today, "A");
    }

    [Fact]
    public void A_workshop_without_books_has_nothing_open() => Assert.Empty(OpenToday.Of(_example.Opened, null, Today).Open);

    [Fact]
    public void A_batch_waits_for_its_labels_and_for_its_end_until_both_are_there()
    {
        var batch = Begin();
        Assert.Equal([OpenKind.Labels, OpenKind.Batch], Open().Open.Select(o => o.Kind));
        Assert.Equal(batch.Recipe.Pieces, Open().Open[0].Count);
        Finish(batch, 6, 1);
        var open = Assert.Single(Open().Open);
        Assert.Equal((OpenKind.Labels, 5), (open.Kind, open.Count));
        PrintedLots.Print(_book,
            [new Printing { On = Today, By = "A", Lot = Lot, Recipe = "bramble-bar", Product = "Bramble", Labels = 3 }]);
        Assert.Equal(2, Assert.Single(Open().Open).Count);
        PrintedLots.Print(_book,
            [new Printing { On = Today, By = "A", Lot = Lot, Recipe = "bramble-bar", Product = "Bramble", Labels = 2 }]);
        Assert.Empty(Open().Open);
        Assert.Equal((5, 0), (Open().Shelf[0].Left, Open().Shelf[0].WithoutLabels));
    }

    [Fact]
    public void Several_products_out_of_one_pot_are_one_thing_to_go_on_with()
    {
        var workshop = _example.Opened;
        var (pot, batches) = Pots.Begin(_book,
            [.. new[] { "meadow-bar/Moss Lane", "meadow-bar/Rainy Day" }.Select(workshop.ProductOf)
                .Select(p => (p.Recipe, FrozenRecipe.Of(workshop, p.Batch, "us", null)))], Today, "A");
        var open = Assert.Single(Open().Open, o => o.Kind == OpenKind.Batch);
        Assert.Equal((pot, batches.Sum(b => b.PiecesPlanned), null), (open.Pot, open.Count, open.Lot));
        Assert.Equal(batches.Select(b => b.Lot), open.Lots);
        Assert.Contains("Next: White shea base.", open.Detail, StringComparison.Ordinal);
        // Their labels are one line each, which the page draws; the command puts many together.
        Assert.Equal(2, Open().Open.Count(o => o.Kind == OpenKind.Labels));
    }

    [Fact]
    public void A_supplier_who_was_asked_comes_after_who_was_not_and_the_day_is_told()
    {
        var folder = _example.Opened.Folder;
        OpenThing[] Questions() =>
        [.. OpenQuestions.Of(Workshop.Open(folder), Today)
            .Where(q => q is { Kind: OpenKind.Question, Details.Length: > 0 } && q.Details[0].Key != "as-told")];
        Assert.All(Questions(), q => Assert.DoesNotContain("Asked on", q.Detail, StringComparison.Ordinal));
        var asked = CommandRun.Of("ask", "--asked", "--workshop", folder);
        Assert.Equal(0, asked.ExitCode);
        Assert.All(Questions(), q => Assert.StartsWith("Asked on 20", q.Detail, StringComparison.Ordinal));
        // The comments of the maker's file stay.
        var path = Path.Combine(folder, $"materials/{Questions()[0].Material}.yaml");
        Assert.Contains("\nasked: 20", File.ReadAllText(path), StringComparison.Ordinal);
        Assert.Contains("# Bought in", File.ReadAllText(path), StringComparison.Ordinal);
        File.WriteAllText(path, File.ReadAllText(path).Replace("asked:", "# asked:", StringComparison.Ordinal));
        Assert.DoesNotContain("Asked on", Questions()[0].Detail, StringComparison.Ordinal);
    }

    [Fact]
    public void Lots_of_before_labels_were_written_down_are_not_asked_about_for_ever()
    {
        Finish(Begin(), 6);
        Assert.Single(Open(Today.AddDays(14)).Open);
        Assert.Empty(Open(Today.AddDays(15)).Open);
    }

    [Theory]
    [InlineData(31, 0)]
    [InlineData(30, 1)]
    [InlineData(0, 1)]
    [InlineData(-5, 1)]
    public void A_date_is_told_from_thirty_days_before(int days, int told)
    {
        Receive("castor-oil", 10_000, Today.AddDays(days));
        var open = Open().Open;
        Assert.Equal(told, open.Count(o => o.Kind == OpenKind.Date));
        Assert.Equal(told == 1 && days < 0, open.Any(o => o.Title.Contains("past its date", StringComparison.Ordinal)));
    }

    [Fact]
    public void A_material_that_will_not_do_for_the_next_batch_runs_low()
    {
        Receive("castor-oil", 1);
        var low = Assert.Single(Open().Open);
        Assert.Equal((OpenKind.Stock, "castor-oil"), (low.Kind, low.Material));
        Receive("castor-oil", 10_000);
        Assert.Empty(Open().Open);
    }

    [Fact]
    public void Many_materials_that_run_low_are_one_line_that_holds_each()
    {
        OpenThing Low(string material) =>
            new(OpenKind.Stock, new("runs-low", material), [new("as-told", "1 g left.")]) { Material = material };
        var other = new OpenThing(OpenKind.Paper, new("as-told", "a paper"), []);
        Assert.Equal(4, OpenTogether.Low([Low("a"), other, Low("b"), Low("c")]).Length);
        var open = OpenTogether.Low([Low("a"), other, Low("b"), Low("c"), Low("d")]);
        Assert.Equal(["4 materials run low", "a paper"], open.Select(o => o.Title));
        Assert.Equal("a, b, c, d.", open[0].Detail);
        Assert.Equal(["a", "b", "c", "d"], open[0].Each.Select(e => e.Material));
    }

    // FD&C Act, section 605(a): fifteen business days; 2026-11-26 is Thanksgiving, a federal holiday.
    [Fact]
    public void A_serious_complaint_stands_first_with_its_day()
    {
        Begin();
        StockMovements.Complain(_book, Shipped.Markets, Lot, "A. Reader", "It stung", serious: false, smallBusiness: true, Today, "A");
        StockMovements.Complain(_book, Shipped.Markets, Lot, "B. Reader", "Hospital", serious: true, smallBusiness: true, Today, "A");
        var open = Open().Open;
        Assert.Equal([OpenKind.Complaint, OpenKind.Labels, OpenKind.Batch, OpenKind.Complaint], open.Select(o => o.Kind));
        Assert.Equal(StockMovements.LastDayToReport(Shipped.Markets, Today), open[0].By);
        Assert.Contains("serious", open[0].Title, StringComparison.Ordinal);
    }

    [Fact]
    public void The_command_says_the_same_as_text_and_as_data()
    {
        Begin();
        var folder = _example.Opened.Folder;
        var text = CommandRun.Of("today", "--workshop", folder, "--on", "2026-11-25");
        Assert.Equal((0, ""), (text.ExitCode, text.Messages));
        Assert.StartsWith(Open().Open[0].Title, text.Output, StringComparison.Ordinal);
        using var data = System.Text.Json.JsonDocument
            .Parse(CommandRun.Of("today", "--workshop", folder, "--on", "2026-11-25", "--format", "json").Output);
        Assert.Equal(["labels", "batch", "question"],
            data.RootElement.GetProperty("open").EnumerateArray().Select(o => o.GetProperty("kind").GetString()));
        Assert.Equal(Lot, data.RootElement.GetProperty("open")[0].GetProperty("lot").GetString());
    }

    [Fact]
    public void An_opened_bottle_is_told_of_before_it_has_kept_too_long()
    {
        File.AppendAllText(Path.Combine(_example.Opened.Folder, "materials/castor-oil.yaml"), "period after opening: 6 months\n");
        Receive("castor-oil", 1000);
        var workshop = Workshop.Open(_example.Opened.Folder);
        IEnumerable<OpenThing> Dates(DateOnly on) => OpenToday.Of(workshop, _book.Read(), on).Open.Where(o => o.Kind == OpenKind.Date);
        Assert.Empty(Dates(Today.AddMonths(12)));
        Begin();
        Production.Weigh(_book, Lot, "castor-oil", 14, null, Today, "A");
        Assert.Empty(Dates(Today.AddMonths(4)));
        Assert.Equal(Today.AddMonths(6), Assert.Single(Dates(Today.AddMonths(6).AddDays(-20))).By);
        Assert.Contains("longer than it keeps", Assert.Single(Dates(Today.AddMonths(7))).Title, StringComparison.Ordinal);
        Assert.Equal(Today, _book.Ask(b => b.OpenedOn(b.ReceiptOf(1))));
    }

    [Fact]
    public void A_supplier_who_has_not_been_asked_and_a_list_of_ours_are_questions_until_they_are_answered()
    {
        var folder = _example.Opened.Folder;
        OpenThing[] Questions() => [.. OpenQuestions.Of(Workshop.Open(folder), Today)];
        var first = Questions()[0];
        Assert.Equal((OpenKind.Question, "Quarrelsome Heron Supply (invented)"), (first.Kind, first.Supplier));
        Assert.Equal("Ask Quarrelsome Heron Supply (invented) 3 questions", first.Title);
        Assert.Matches("about [1-9][0-9]* of [1-9][0-9]* open pairs", first.Detail);
        Assert.InRange(Questions().Length, 1, OpenQuestions.MostSuppliers + 1);

        // A list of ours stands first: it may be wrong for this bottle, and then somebody itches.
        var castor = Path.Combine(folder, "materials/castor-oil.yaml");
        var written = File.ReadAllText(castor);
        File.WriteAllText(castor, written + "to confirm: usual for goods of that kind\n");
        Assert.Equal(("Compare Castor oil with its wrapper", "castor-oil"), (Questions()[0].Title, Questions()[0].Material));
        File.WriteAllText(castor, written);
        Assert.DoesNotContain(Questions(), q => q.Title.Contains("wrapper", StringComparison.Ordinal));
    }

    [Fact]
    public void A_recipe_that_cannot_be_read_asks_nothing_and_stops_no_other()
    {
        var folder = _example.Opened.Folder;
        var before = OpenQuestions.Of(Workshop.Open(folder), Today).Length;
        File.WriteAllText(Path.Combine(folder, "recipes/half.yaml"), "name: Half\nmaterials:\n");
        Assert.Equal(before, OpenQuestions.Of(Workshop.Open(folder), Today).Length);
    }

    [Fact]
    public void What_is_at_the_bench_is_not_promised_twice()
    {
        Receive("castor-oil", 25);
        Assert.DoesNotContain(Open().Open,
            o => o.Kind == OpenKind.Stock && o.Material == "castor-oil" && o.Detail.Contains("at the bench", StringComparison.Ordinal));
        Begin();
        Assert.Contains("14 g of it for what is at the bench",
            Assert.Single(Open().Open, o => o.Kind == OpenKind.Stock && o.Material == "castor-oil").Detail, StringComparison.Ordinal);
    }
}
