using LabelForge.Measures;
using LabelForge.Recipes;
using LabelForge.UseCases;
using LabelForge.Web.Editing;
using LabelForge.Web.Serving;
using LabelForge.Web.Workbench;

namespace LabelForge.Web.Tests.Editing;

/// <summary>The picture of a label comes first; what is said of the other scents of its recipe comes after.</summary>
public sealed class LabelViewsTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("labelforge-views-").FullName;
    private readonly ServeOptions _options;
    private readonly OpenDocuments _documents;
    private readonly BooksCache _books;

    public LabelViewsTests()
    {
        Browsing.Window.WriteExample(_folder);
        _options = new ServeOptions(_folder, 0) { Today = () => new DateOnly(2026, 11, 25) };
        _documents = new OpenDocuments(_options);
        _books = new BooksCache(_documents);
    }

    public void Dispose()
    {
        _books.Dispose();
        _documents.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    [Fact]
    public async Task The_label_that_is_typed_on_does_not_wait_for_the_other_scents()
    {
        var views = Views(new WorkshopCache(_documents));
        var text = Recipe("meadow-bar");
        var early = new List<LabelView>();
        var whole = await views.OfAsync("meadow-bar", text, new LabelWish(), CancellationToken.None, early.Add);
        var first = Assert.Single(early);
        Assert.False(first.IsWhole);
        Assert.Single(first.Pictures);
        Assert.NotNull(first.Report);
        Assert.Empty(first.Others);
        Assert.True(whole.IsWhole);
        Assert.Equal(["Peach Morning", "Beeswing", "Moss Lane", "Rainy Day", "Winter Smoke"], whole.Others.Select(o => o.Name));
        // What was made is known until its text is another.
        Assert.Same(whole.Job, views.Known("meadow-bar", text, new LabelWish())?.Job);
        Assert.Null(views.Known("meadow-bar", text + " ", new LabelWish()));
        Assert.Null(views.Known("meadow-bar", text, new LabelWish(Variant: "Rainy Day")));
        // One that is asked for by itself is whole at once.
        Assert.True((await views.OfAsync("meadow-bar", text, new LabelWish(Variant: "Rainy Day"), CancellationToken.None, early.Add))
            .IsWhole);
        Assert.Single(early);
    }

    [Fact]
    public async Task What_many_windows_ask_at_once_is_worked_out_once()
    {
        var views = Views(new WorkshopCache(_documents));
        var text = Recipe("meadow-bar");
        var all = await Task.WhenAll(Enumerable.Range(0, 12).Select(_ =>
            Task.Run(() => views.OfAsync("meadow-bar", text, new LabelWish(), CancellationToken.None))));
        Assert.All(all, v => Assert.True(ReferenceEquals(v.Job, all[0].Job)));
        Assert.All(all, v => Assert.True(v.Others == all[0].Others));
        Assert.All(all, v => Assert.True(v.IsWhole));
    }

    // A market that no code knows: its folder lies in the workshop, and workshop.yaml names it.
    [Fact]
    public async Task A_market_of_the_workshops_own_is_drawn_and_judged_on_the_page()
    {
        var cache = OfTestovia();
        Assert.Equal("Testovia", cache.Read().Workshop!.Market.Name);
        var view = await Views(cache).OfAsync("bramble-bar", Recipe("bramble-bar"), new LabelWish(), CancellationToken.None, _ => { });
        Assert.Equal("tv", view.Report!.Market);
        Assert.Equal("Contents of the thing:", view.Job!.Content.IngredientHeading.Trim());
        Assert.NotEmpty(view.Pictures);
    }

    // A label made elsewhere: what the page was given, judged as the page judges it.
    [Theory]
    [InlineData("", "tv", true)]
    [InlineData("tv", "tv", true)]
    [InlineData("eu", "eu", false)]
    public void A_label_made_elsewhere_is_held_on_the_page_to_the_rules_of_the_workshops_market(string chosen, string market, bool isOwn)
    {
        var workshop = OfTestovia().Read().Workshop;
        var question = new LabelQuestion(_options.Today(), GivenLabel.MarketOf(workshop, chosen));
        var report = Assert.Single(new GivenLabel("Tideline\nIngredients: Aqua, Glycerin\n", [], question).Judged()).Report!;
        Assert.Equal(market, report.Market);
        Assert.Equal(isOwn, report.Findings.Any(f => f.Source.StartsWith("Testovian Labels Act", StringComparison.Ordinal)));
    }

    [Fact]
    public void A_label_given_to_the_page_before_there_is_a_workshop_is_held_to_the_usual_market() =>
        Assert.Same(Shipped.Markets.Usual, GivenLabel.MarketOf(null, ""));

    [Fact]
    public void What_cannot_be_judged_is_told_and_nothing_given_is_nothing_found()
    {
        var question = new LabelQuestion(_options.Today(), Shipped.Markets.Usual, Panel: "wide");
        Assert.Empty(new GivenLabel(" ", [], question).Judged());
        Assert.NotNull(Assert.Single(new GivenLabel("Tideline", [], question).Judged()).Problem);
        Assert.NotNull(Assert.Single(new GivenLabel("", [new("label.pdf", [1, 2, 3])], question).Judged()).Problem);
    }

    // One that cannot be read stops no other, as in a folder that the command checks.
    [Fact]
    public void Several_labels_are_judged_each_by_itself_in_their_order()
    {
        var question = new LabelQuestion(_options.Today(), Shipped.Markets.Usual);
        var told = new GivenLabel("Words of before",
            [
                new("one.txt", "Bar soap\nIngredients: Water, Glycerin"u8.ToArray()),
                new("two.pdf", "%PDF-1.7 and nothing more"u8.ToArray()),
                new("three.txt", [], new Problem("form.upload-broken")),
                new("four.txt", "Lip balm\nNet Wt 0.15 oz (4.2 g)"u8.ToArray()),
            ], question).Judged();
        Assert.Equal(["one.txt", "two.pdf", "three.txt", "four.txt"], told.Select(t => t.Product));
        Assert.Equal([true, false, false, true], told.Select(t => t.Report is not null));
        Assert.Equal("Bar soap", told[0].Report!.Found.Identity);
        Assert.Equal("Lip balm", told[3].Report!.Found.Identity);
    }

    private WorkshopCache OfTestovia()
    {
        Directory.CreateDirectory(Path.Combine(_folder, "markets", "tv"));
        foreach (var file in Directory.EnumerateFiles(Path.Combine(AppContext.BaseDirectory, "tv")))
            File.Copy(file, Path.Combine(_folder, "markets", "tv", Path.GetFileName(file)));
        var own = Path.Combine(_folder, "workshop.yaml");
        File.WriteAllText(own, File.ReadAllText(own).Replace("market: us", "market: tv", StringComparison.Ordinal));
        Assert.Null(_documents.Open(OpenDocuments.Top, OpenDocuments.Business)!.Problem);
        return new WorkshopCache(_documents);
    }

    private LabelViews Views(WorkshopCache cache) => new(cache, _books, new TemporaryDownloads(), _options);

    private string Recipe(string id) => File.ReadAllText(Path.Combine(_folder, "recipes", id + ".yaml"));
}
