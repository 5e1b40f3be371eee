using LabelForge.Days;
using LabelForge.Markets;
using LabelForge.Measures;
using LabelForge.Recipes;
using LabelForge.Records.Books;

namespace LabelForge.Cli.Tests.Days;

/// <summary>A limit that is another than when a product was made last is told before it is made again.</summary>
public sealed class ChangedLimitsTests : IDisposable
{
    private static readonly DateOnly Day = new(2026, 11, 26);

    private readonly ExampleWorkshop _example = new();

    private string Folder => _example.Opened.Folder;

    private Workshop Workshop => Workshop.Open(Folder);

    private OpenBooks Book => OpenBooks.Open(Folder);

    public void Dispose() => _example.Dispose();

    private void Begin() =>
        Production.Start(Book, FrozenRecipe.Of(Workshop, Workshop.ProductsOf("bramble-bar")[0].Batch, "us", null), "26R25-02C",
            Day.AddDays(-1), "A");

    private void Change(string from, string to)
    {
        var file = Path.Combine(Folder, "materials/bramble-fragrance.yaml");
        var text = File.ReadAllText(file);
        Assert.Contains(from, text, StringComparison.Ordinal);
        File.WriteAllText(file, text.Replace(from, to, StringComparison.Ordinal));
    }

    private OpenThing[] Told() =>
        Book.Ask(books => OpenToday.Of(Workshop, books, Day)).Open.Where(o => o.Kind == OpenKind.Limit).ToArray();

    [Fact]
    public void Nothing_is_told_while_the_certificate_is_the_same()
    {
        Begin();
        Change("name: ", "supplier: Heron\nname: ");
        Assert.Empty(Told());
    }

    [Fact]
    public void A_limit_that_fell_is_told_today_and_when_the_next_batch_is_begun()
    {
        Begin();
        var before = Workshop.Materials["bramble-fragrance"].Limits.Single(l => l.Category == "9").Highest.Percent;
        Change($"category 9: {before:0.####} %", "category 9: 1.2 %");
        var told = Assert.Single(Told());
        Assert.Contains(FormattableString.Invariant($"at most {before:0.####} % in category 9"), told.Detail, StringComparison.Ordinal);
        Assert.Contains("1.2 % now", told.Detail, StringComparison.Ordinal);
        Assert.Equal(("bramble-fragrance", "26R25-02C"), (told.Material, told.Lot));
        var run = CommandRun.Of("batch", "start", "bramble-bar", "--workshop", Folder, "--on", "2026-11-26", "--sure");
        Assert.Equal(0, run.ExitCode);
        Assert.Contains("26R25-02C", run.Messages, StringComparison.Ordinal);
        Assert.Contains("1.2 %", run.Messages, StringComparison.Ordinal);
    }

    [Fact]
    public void A_paper_that_ends_is_told_until_a_later_one_takes_its_place()
    {
        var paper = Path.Combine(Folder, "paper.pdf");
        File.WriteAllText(paper, "%PDF-");
        OpenThing[] Papers() => Book.Ask(books => OpenToday.Of(Workshop, books, Day)).Open.Where(o => o.Kind == OpenKind.Paper).ToArray();
        Assert.Equal(0,
            CommandRun.Of("attach", paper, "--to", "castor-oil", "--kind", "certificate", "--holds-until", "2026-12-10", "--workshop",
                Folder).ExitCode);
        Assert.Contains("2026-12-10", Assert.Single(Papers()).Title, StringComparison.Ordinal);
        Assert.Equal(0,
            CommandRun.Of("attach", paper, "--to", "castor-oil", "--kind", "certificate", "--holds-until", "2027-12-10", "--workshop",
                Folder).ExitCode);
        Assert.Empty(Papers());
    }

    [Fact]
    public void A_law_that_changed_between_two_batches_is_told_by_its_rule()
    {
        // Regulation (EU) 2026/909 prohibits triphenyl phosphate (Annex II, 1767) from 1 January 2027.
        File.WriteAllText(Path.Combine(Folder, "materials/softener.yaml"),
            "name: Softener\nkind: additive\ncontains: Triphenyl Phosphate\n");
        var recipe = Path.Combine(Folder, "recipes/bramble-bar.yaml");
        File.WriteAllText(recipe,
            File.ReadAllText(recipe)
                .Replace("materials:\n", "materials:\n  - { use: softener, amount: 1 g }\n", StringComparison.Ordinal));
        Begin();
        var last = Book.Ask(b => b.HistoryOf("bramble-bar", null)).Last!;
        var product = Workshop.ProductsOf("bramble-bar")[0];
        var eu = MarketBook.Shipped.Find("eu").OrRefuse();
        Assert.Empty(ChangedLimits.OfLaw(product, last, eu, new DateOnly(2026, 12, 31)));
        var changed = Assert.Single(ChangedLimits.OfLaw(product, last, eu, new DateOnly(2027, 1, 1)));
        Assert.Contains("Triphenyl Phosphate", changed.Told, StringComparison.Ordinal);
        Assert.Contains("The law has changed since lot 26R25-02C of 2026-11-25", changed.Told, StringComparison.Ordinal);
    }
}
