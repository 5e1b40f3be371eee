using System.Text.Json;
using LabelForge.Markets;
using LabelForge.Measures;
using LabelForge.ProductPapers;
using LabelForge.Recipes;
using LabelForge.Records.Books;

namespace LabelForge.Cli.Tests.ProductPapers;

/// <summary>Papers that go with a product: their figures are those of the other verbs, and what is missing is said.</summary>
public sealed class PapersTests : IDisposable
{
    private const string Day = "2026-11-26";

    private readonly ExampleWorkshop _example = new();

    private string Folder => _example.Opened.Folder;

    public void Dispose() => _example.Dispose();

    private JsonElement Json(params string[] words) => CommandRun.Json([.. words, "--workshop", Folder, "--on", Day]);

    [Theory]
    [InlineData("eu", "product-file", "composition", "bramble-bar")]
    [InlineData("uk", "product-file", "composition", "meadow-bar/Moss Lane")]
    [InlineData("eu", "notification", "formulation", "lip-balm")]
    [InlineData("ca", "notification", "ingredients", "sugar-scrub")]
    public void The_composition_on_a_paper_has_the_bounds_of_the_declaration(string market, string paper, string part, string product)
    {
        var declared = Json("declare", product, "--market", market).GetProperty("ingredients").EnumerateArray()
            .ToDictionary(i => i.GetProperty("name").GetString()!, i => i.GetProperty("percent"));
        var rows = Json("papers", paper, product, "--market", market).GetProperty("parts").GetProperty(part).GetProperty("rows")
            .EnumerateArray().ToArray();
        Assert.Equal(declared.Keys, rows.Select(r => r.GetProperty("name").GetString()));
        Assert.All(rows, r =>
        {
            var percent = declared[r.GetProperty("name").GetString()!];
            Assert.Equal(percent.GetProperty("low").GetDecimal(), r.GetProperty("low").GetDecimal());
            Assert.Equal(percent.GetProperty("high").GetDecimal(), r.GetProperty("high").GetDecimal());
        });
    }

    [Fact]
    public void A_product_file_has_every_item_of_the_law_and_says_what_only_an_assessor_can_add()
    {
        var file = Json("papers", "product-file", "bramble-bar", "--market", "eu");
        Assert.Equal(PaperDuty.Of(MarketBook.Shipped.Find("eu").OrRefuse()).Single(d => d.Id == "product-file").Items.Select(i => i.Id),
            file.GetProperty("parts").EnumerateObject().Select(p => p.Name));
        var missing = file.GetProperty("missing").EnumerateArray().Select(m => m.GetProperty("part").GetString()).ToHashSet();
        Assert.Superset(new HashSet<string?> { "stability", "challenge", "toxicology", "exposure", "assessment", "animals", "practice" },
            missing);
        Assert.DoesNotContain("description", missing);
        // Who reads it must not take it for more than it is.
        var all = file.GetRawText();
        Assert.DoesNotContain("complian", all, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("Nothing here assesses safety", all, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("uk", "bramble-bar", "Skin products > Skin cleansing products > Soap products")]
    [InlineData("us", "lip-balm", "(14) Skin care preparations > (j) Other skin care preparations > 1. Leave-on")]
    [InlineData("us", "sugar-scrub", "(14) Skin care preparations > (d) Body and hand > 2. Rinse-off")]
    public void The_office_s_category_is_proposed_by_the_kind_of_product_until_the_maker_writes_another(string market, string product,
        string category)
    {
        JsonElement Category() => Json("papers", "notification", product, "--market", market).GetProperty("parts").GetProperty("category");
        Assert.Equal(category, Category().GetProperty("category").GetString());
        File.WriteAllText(Path.Combine(Folder, "papers.yaml"), $"products: {{ {product}: {{ category: Another }} }}\n");
        Assert.Equal("Another", Category().GetProperty("category").GetString());
    }

    [Fact]
    public void A_category_that_is_not_held_is_asked_for() =>
        Assert.Contains(Json("papers", "notification", "bramble-bar", "--market", "eu").GetProperty("missing").EnumerateArray(),
            m => m.GetProperty("what").GetString() == "Official category"
                && m.GetProperty("write").GetString()!.Contains("not held here", StringComparison.Ordinal));

    // The frame "Soap - toilet" allows 20 % glycerin: a bar cast from a glycerin base may hold more.
    [Fact]
    public void A_frame_formulation_that_a_product_may_go_beyond_is_offered_with_what_goes_beyond_it()
    {
        var paper = Json("papers", "notification", "bramble-bar", "--market", "uk");
        var glycerin = paper.GetProperty("parts").GetProperty("formulation").GetProperty("rows").EnumerateArray()
            .Single(r => r.GetProperty("name").GetString() == "Glycerin");
        var said = paper.GetProperty("missing").EnumerateArray().Single(m => m.GetProperty("part").GetString() == "formulation")
            .GetProperty("write").GetString()!;
        Assert.Contains("Syndet bar", said, StringComparison.Ordinal);
        Assert.Equal(glycerin.GetProperty("high").GetDecimal() > 20, said.Contains("20 % Glycerin", StringComparison.Ordinal));
        Assert.Equal(glycerin.GetProperty("low").GetDecimal() > 20,
            said.Contains("not for more than 20 % Glycerin", StringComparison.Ordinal));
    }

    [Fact]
    public void What_an_office_calls_kinds_of_product_is_of_kinds_that_there_are_and_every_frame_bounded_is_one_that_is_offered()
    {
        foreach (var office in MarketBook.Shipped.All.Select(OfficeCategories.Of).OfType<OfficeCategories>())
        {
            Assert.All(office.ByKind.Keys, k => Assert.True(ProductKinds.Find(k).IsValue, k));
            Assert.All(office.ByKind.Values, c => Assert.True(c.Name.Split(OfficeCategories.Within).Length is 2 or 3));
        }
        var frames = OfficeCategories.Of(MarketBook.Shipped.Find("uk").OrRefuse())!.ByKind.Values.SelectMany(c => c.Frames).ToArray();
        Assert.Equal(18, frames.Where(f => !f.AtMost.IsEmpty).Select(f => f.Name).Distinct().Count());
    }

    [Fact]
    public void Nothing_says_that_a_sheet_can_be_uploaded()
    {
        foreach (var market in MarketBook.Shipped.All)
            Assert.Contains("nothing here can be uploaded", PaperDuty.Of(market).Single(d => d.Id == "notification").Notes[0],
                StringComparison.Ordinal);
    }

    [Fact]
    public void A_paper_that_a_market_does_not_ask_for_is_refused_with_those_that_there_are()
    {
        var run = CommandRun.Of("papers", "product-file", "bramble-bar", "--market", "us", "--workshop", Folder);
        Assert.Equal(2, run.ExitCode);
        Assert.Contains("notification", run.Messages, StringComparison.Ordinal);
        Assert.Contains("markets eu and uk", run.Messages, StringComparison.Ordinal);
    }

    [Fact]
    public void Several_products_make_no_one_file()
    {
        var run = CommandRun.Of("papers", "notification", "meadow-bar", "--market", "eu", "--workshop", Folder);
        Assert.Equal(2, run.ExitCode);
        Assert.Contains("meadow-bar/Moss Lane", run.Messages, StringComparison.Ordinal);
    }

    [Theory]
    // Cosmetic Regulations (Canada), table to s. 30: more than the bound below, not more than its own.
    [InlineData(0.001, 13)]
    [InlineData(0.0011, 12)]
    [InlineData(0.1, 12)]
    [InlineData(0.3, 11)]
    [InlineData(1, 10)]
    [InlineData(1.0001, 9)]
    [InlineData(3, 9)]
    [InlineData(10, 8)]
    [InlineData(20, 7)]
    [InlineData(30, 6)]
    [InlineData(40, 5)]
    [InlineData(50, 4)]
    [InlineData(65, 3)]
    [InlineData(80, 2)]
    [InlineData(80.1, 1)]
    [InlineData(100, 1)]
    public void A_share_falls_in_the_range_of_the_Canadian_table(double percent, int number) =>
        Assert.Equal(number,
            (int)((LawSteps)MarketBook.Shipped.Find("ca").OrRefuse().On(new DateOnly(2026, 11, 26)).Figure("notification.range").Value)
                .At((decimal)percent));

    [Fact]
    public void A_share_known_within_bounds_has_every_range_that_it_may_fall_in_and_the_supplier_is_asked()
    {
        var paper = Json("papers", "notification", "bramble-bar", "--market", "ca");
        var rows = paper.GetProperty("parts").GetProperty("ingredients").GetProperty("rows").EnumerateArray()
            .ToDictionary(r => r.GetProperty("name").GetString()!, r => r);
        var water = rows.Values.Single(r => r.GetProperty("inci").GetString() == "Water");
        // 14.4 to 30.4 %: 10 to 20, 20 to 30, 30 to 40.
        Assert.Equal([7, 6, 5], water.GetProperty("range").EnumerateArray().Select(n => n.GetInt32()));
        Assert.Contains(paper.GetProperty("missing").EnumerateArray(),
            m => m.GetProperty("write").GetString()!.Contains("(7 or 6 or 5)", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("{ 2023: 900000, 2024: 1000000, 2025: 1099999 }", "no", "exempt")]
    [InlineData("{ 2023: 900000, 2024: 1000000, 2025: 1100000 }", "no", "not exempt")]
    [InlineData("{ 2023: 0, 2024: 0, 2025: 8200.50 }", "no", "exempt")]
    [InlineData("{ 2023: 0, 2024: 0, 2025: 8200.50 }", "yes", "not exempt")]
    [InlineData("{ 2024: 0, 2025: 8200.50 }", "no", "open")]
    [InlineData("{ 2024: 0, 2025: 8200.50 }", "yes", "not exempt")]
    [InlineData("{ 2023: 0, 2024: 0, 2025: 8200.50 }", null, "open")]
    public void The_test_for_small_businesses_asks_for_sales_and_for_four_kinds_of_product(string sales, string? eye, string outcome)
    {
        // FD&C Act, section 612: an average under 1 000 000 dollars over three years, and no product that (b) names.
        File.WriteAllText(Path.Combine(Folder, "papers.yaml"),
            $"sales of cosmetics: {sales}\nwe make: {{ {(eye is null ? "" : $"touches the eye: {eye}, ")}is injected: no, for internal "
                + $"use: no, lasts over 24 hours: no }}\n");
        var part = Json("papers", "notification", "lip-balm", "--market", "us").GetProperty("parts").GetProperty("small-business");
        Assert.Equal(outcome, part.GetProperty("outcome").GetString());
    }

    [Theory]
    [InlineData("sales of cosmetic: { 2024: 1 }", "papers.yaml, line 1")]
    [InlineData("we make: { touches the eye: perhaps }", "neither yes nor no")]
    [InlineData("products: { bramble-bar: { case: 0 } }", "case: 12")]
    [InlineData("sales of cosmetics: { last: 3 }", "is not a year")]
    public void What_cannot_be_read_in_papers_yaml_is_named_with_what_to_write(string text, string said)
    {
        File.WriteAllText(Path.Combine(Folder, "papers.yaml"), text + "\n");
        var run = CommandRun.Of("papers", "line-sheet", "--workshop", Folder);
        Assert.Equal(2, run.ExitCode);
        Assert.Contains(said, run.Messages, StringComparison.Ordinal);
    }

    [Fact]
    public void A_wholesale_price_is_the_maker_s_or_a_share_of_the_retail_price_and_never_proposed()
    {
        var recipe = Path.Combine(Folder, "recipes/bramble-bar.yaml");
        var priceless = string.Concat(File.ReadLines(recipe).Where(l => !l.StartsWith("price:", StringComparison.Ordinal))
            .Select(l => l + "\n"));
        File.WriteAllText(recipe, priceless);
        Assert.Contains(Json("papers", "line-sheet", "bramble-bar").GetProperty("missing").EnumerateArray(),
            m => m.GetProperty("what").GetString() == "Wholesale prices");
        File.WriteAllText(recipe, priceless + "price: 7.25\n");
        File.WriteAllText(Path.Combine(Folder, "papers.yaml"),
            "wholesale: { share of price: 50 %, least order: 150, terms: \"30 days\" }\nproducts: { lip-balm: { wholesale: 2.10, case: "
                + "12, minimum: 24 } }\n");
        var rows = Json("papers", "line-sheet", "bramble-bar", "lip-balm").GetProperty("parts").GetProperty("products").GetProperty("rows")
            .EnumerateArray().ToArray();
        // Half of 7.25 is 3.625: half a cent goes up.
        Assert.Equal([3.63m, 2.10m], rows.Select(r => r.GetProperty("wholesale").GetDecimal()));
        Assert.Equal(24, rows[1].GetProperty("minimum").GetInt32());
        Assert.StartsWith("9521407", rows[0].GetProperty("code").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public void An_item_number_that_two_products_share_is_told()
    {
        JsonElement[] Missing() => [.. Json("papers", "line-sheet").GetProperty("missing").EnumerateArray()];
        Assert.DoesNotContain(Missing(), m => m.GetProperty("what").GetString() == "Item numbers (GTIN) of their own");
        var recipe = Path.Combine(Folder, "recipes/bramble-bar.yaml");
        File.WriteAllText(recipe, File.ReadAllText(recipe).Replace("item: \"3\"", "item: \"1\"", StringComparison.Ordinal));
        var told = Assert.Single(Missing(), m => m.GetProperty("what").GetString() == "Item numbers (GTIN) of their own");
        Assert.Contains("is of bramble-bar and hayloft-bar", told.GetRawText(), StringComparison.Ordinal);
    }

    // What the look puts on the front is a scent or a place, unless it says something of the product.
    [Fact]
    public void A_scent_line_is_no_claim_in_the_product_file_and_a_claim_on_the_front_is()
    {
        // The proof of each is missing, and told with what it is to prove.
        string Claims() => Json("papers", "product-file", "meadow-bar/Moss Lane", "--market", "eu").GetProperty("missing").GetRawText();
        Assert.DoesNotContain("oakmoss", Claims(), StringComparison.Ordinal);
        var recipe = Path.Combine(Folder, "recipes/meadow-bar.yaml");
        File.WriteAllText(recipe,
            File.ReadAllText(recipe).Replace("oakmoss, wet stone", "moisturises dry skin", StringComparison.Ordinal));
        Assert.Contains("moisturises dry skin", Claims(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_lot_certificate_is_by_what_was_weighed_and_names_every_bottle()
    {
        var workshop = Workshop.Open(Folder);
        var book = OpenBooks.Open(Folder);
        var product = workshop.ProductsOf("bramble-bar")[0];
        Production.Start(book, FrozenRecipe.Of(workshop, product.Batch, "us", null), "26R25-02C", new DateOnly(2026, 11, 25), "A");
        foreach (var line in product.Batch.Lines)
        {
            StockMovements.Receive(book,
                new Receipt
                {
                    On = new(2026, 11, 1),
                    By = "A",
                    Material = line.Material.Id,
                    Amount = 3000,
                    Price = 9,
                    Supplier = "Heron",
                    SupplierLot = $"L-{line.Material.Id}",
                });
            Production.Weigh(book, "26R25-02C", line.Material.Id,
                Math.Round(line.Mass.Grams * (line.Material.Id == "castor-oil" ? 1.5m : 1), 2), null, new(2026, 11, 25), "A");
        }
        var open = Json("papers", "lot-certificate", "26R25-02C");
        Assert.Contains(open.GetProperty("missing").EnumerateArray(), m => m.GetProperty("what").GetString() == "Finished");
        Production.Close(book, "26R25-02C", 6, 1, null, new(2026, 11, 26), "A");
        var parts = Json("papers", "lot-certificate", "26R25-02C").GetProperty("parts");
        var weighed = parts.GetProperty("weighed").GetProperty("rows").EnumerateArray()
            .ToDictionary(r => r.GetProperty("material").GetString()!, r => r);
        Assert.True(weighed["Castor oil"].GetProperty("off").GetBoolean());
        Assert.Equal(21m, weighed["Castor oil"].GetProperty("weighed").GetDecimal());
        Assert.All(weighed.Values, r => Assert.Matches("^M[1-4]$", r.GetProperty("from")[0].GetString()!));
        var checkedNow = CommandRun.Of("check", "bramble-bar", "--lot", "26R25-02C", "--workshop", Folder, "--on", Day, "--format",
            "json");
        var musts = JsonDocument.Parse(checkedNow.Output).RootElement.GetProperty("findings").EnumerateArray()
            .Count(f => f.GetProperty("severity").GetString() == "must");
        Assert.Equal(musts, parts.GetProperty("checked").GetProperty("rules").GetInt32());
        Assert.Contains("6 pieces made, 1 rejected",
            CommandRun.Of("papers", "lot-certificate", "26R25-02C", "--workshop", Folder, "--on", Day).Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_paper_kept_with_a_product_fills_its_item_until_it_holds_no_more()
    {
        File.WriteAllText(Path.Combine(Folder, "test.pdf"), "%PDF- as it were");
        bool Lacks() =>
        Json("papers", "product-file", "bramble-bar", "--market", "eu").GetProperty("missing").EnumerateArray()
            .Any(m => m.GetProperty("part").GetString() == "stability");
        Assert.True(Lacks());
        Assert.Equal(0,
            CommandRun.Of("attach", Path.Combine(Folder, "test.pdf"), "--to", "bramble-bar", "--kind", "stability", "--holds-until", Day,
                "--workshop", Folder).ExitCode);
        Assert.False(Lacks());
        var later = CommandRun.Json("papers", "product-file", "bramble-bar", "--market", "eu", "--workshop", Folder, "--on", "2026-11-27");
        Assert.Contains(later.GetProperty("missing").EnumerateArray(),
            m => m.GetProperty("part").GetString() == "stability"
                && m.GetProperty("write").GetString()!.Contains("holds no more", StringComparison.Ordinal));
    }

    [Fact]
    public void A_supplier_is_asked_for_what_the_file_does_not_say_and_shown_what_it_does()
    {
        var paper = Json("papers", "supplier-questions", "bramble-fragrance", "castor-oil");
        var parts = paper.GetProperty("parts");
        Assert.Equal(JsonValueKind.Null, parts.GetProperty("castor-oil").GetProperty("saponification").ValueKind);
        Assert.Contains("Citronellol", parts.GetProperty("bramble-fragrance").GetProperty("allergens").GetString(),
            StringComparison.Ordinal);
        Assert.Empty(paper.GetProperty("missing").EnumerateArray());
        Assert.NotEmpty(paper.GetProperty("questions").EnumerateArray());
    }

    [Theory]
    [InlineData("eu", "product-file")]
    [InlineData("ca", "notification")]
    [InlineData("us", "notification")]
    [InlineData("us", "shop-sheet")]
    public void Every_paper_is_a_PDF_that_says_what_the_data_say(string market, string paper)
    {
        var path = Path.Combine(Folder, "paper.pdf");
        Assert.Equal(0,
            CommandRun.Of("papers", paper, "bramble-bar", "--market", market, "--out", path, "--workshop", Folder, "--on", Day).ExitCode);
        using var document = UglyToad.PdfPig.PdfDocument.Open(path);
        var words = string.Concat(document.GetPages().Select(p => p.Text));
        foreach (var name in Json("declare", "bramble-bar", "--market", market).GetProperty("ingredients").EnumerateArray()
            .Select(i => i.GetProperty("name").GetString()!.Split(' ')[0]))
            Assert.Contains(name, words, StringComparison.Ordinal);
        Assert.Contains("page 1 of", words, StringComparison.Ordinal);
        if (paper != "shop-sheet")
            Assert.Contains("MISSING", words, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_part_that_the_markets_data_name_is_known()
    {
        foreach (var market in MarketBook.Shipped.All)
        {
            foreach (var duty in PaperDuty.Of(market).Where(d => !d.Items.IsEmpty))
                Assert.NotEmpty(MakePaper.Run(new PaperCall(duty.Id, ["lip-balm"], new DateOnly(2026, 11, 26), market), _example.Opened,
                    null).Sections);
        }
    }
}
