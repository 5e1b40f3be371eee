using LabelForge.Checks;
using LabelForge.Checks.Reading;
using LabelForge.Declarations;
using LabelForge.Ingredients;
using LabelForge.Markets;
using LabelForge.Recipes;
using LabelForge.Tests.Recipes;

namespace LabelForge.Tests.Checks;

/// <summary>What an essential oil may bring is asked for, whatever the material that it comes in is called.</summary>
public sealed class EssentialOilTests
{
    private static readonly DateOnly Day = new(2026, 11, 26);

    private const string Lavender = "Lavandula Angustifolia Oil";

    [Theory]
    [InlineData("fragrance")]
    [InlineData("oil")]
    [InlineData("additive")]
    public void Without_an_analysis_the_allergens_that_such_an_oil_is_known_to_hold_are_named_and_asked_for(string kind)
    {
        using var recipe = new CheckedRecipe();
        var found = Possible(recipe.Add(99, "Glycerin").Add(1, Lavender, kind));
        Assert.Equal(Severity.Should, found.Severity);
        // European Pharmacopoeia and ISO 3515: linalool 20 to 45 %, so up to 0.45 % of a product with 1 %.
        Assert.Contains("Linalool (20 to 45 %; here up to 0.45 %)", found.Message, StringComparison.Ordinal);
        Assert.Contains("Camphor (up to 1.5 %", found.Message, StringComparison.Ordinal);
        Assert.Equal(Basis.Secondary, found.Basis);
        Assert.Contains("material-2.yaml", found.Fix, StringComparison.Ordinal);
    }

    [Fact]
    public void A_certificate_settles_what_its_oil_holds()
    {
        using var recipe = new CheckedRecipe();
        recipe.Add(99, "Glycerin").Add(1, Lavender, "fragrance", "allergens: { Linalool: 30 %, Linalyl Acetate: 35 % }\n");
        Assert.DoesNotContain(recipe.In(Market.Eu).Findings, f => f.Rule is "allergen.undeclared" or "allergen.outside-range");
    }

    [Theory]
    [InlineData("Linalool: 2 %, Linalyl Acetate: 35 %", "says Linalool 2 %")]
    [InlineData("Linalyl Acetate: 35 %", "does not name Linalool")]
    [InlineData("Linalool: 80 %, Linalyl Acetate: 15 %", "says Linalool 80 %")]
    [InlineData("Linalool: 15 %, Linalyl Acetate: 20 %", null)]
    public void A_certificate_far_from_what_such_oils_hold_is_told_and_believed(string certificate, string? says)
    {
        using var recipe = new CheckedRecipe();
        var found = recipe.Add(99, "Glycerin").Add(1, Lavender, "fragrance", $"allergens: {{ {certificate} }}\n").In(Market.Eu).Findings
            .Where(f => f.Rule == "allergen.outside-range").ToArray();
        Assert.Equal(says is null ? 0 : 1, found.Length);
        Assert.All(found, f => Assert.Contains(says!, f.Message, StringComparison.Ordinal));
    }

    // 0.01 % of a product that is washed off. Limonene in lavender is at most 1 %: 1 % of the oil brings 0.01 %, no more.
    [Theory]
    [InlineData(1.0, false)]
    [InlineData(1.1, true)]
    public void What_can_stay_at_the_threshold_is_not_asked_about(double grams, bool asked)
    {
        using var recipe = new CheckedRecipe { Kind = "soap-bar" };
        recipe.Add(100 - (decimal)grams, "Glycerin").Add((decimal)grams, Lavender);
        Assert.Equal(asked, Possible(recipe).Message.Contains("Limonene", StringComparison.Ordinal));
    }

    [Fact]
    public void A_certificate_and_an_oil_without_one_are_summed()
    {
        using var recipe = new CheckedRecipe { Kind = "soap-bar" };
        // 0.9 % of 1 % is 0.009 % certain, 0.4 g of an oil with up to 1 % may bring 0.004 % more.
        recipe.Add(98.6m, "Glycerin").Add(1, "Parfum", "fragrance", "allergens: { Limonene: 0.9 % }\n").Add(0.4m, Lavender);
        Assert.Contains("Limonene (up to 1 %; here up to 0.004 %, with what else brings it 0.013 %)", Possible(recipe).Message,
            StringComparison.Ordinal);
    }

    [Fact]
    public void An_allergen_that_the_list_names_itself_is_not_asked_about_again()
    {
        using var recipe = new CheckedRecipe();
        recipe.Add(99, "Glycerin").Add(1, $"{Lavender}: 60 %, Linalool: 40 %", "fragrance");
        Assert.DoesNotContain("Linalool (", Possible(recipe).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Pogostemon Cablin Oil", "fragrance")]
    [InlineData("Pogostemon Cablin Oil", "oil")]
    [InlineData("Chamomilla Recutita Flower Oil", "additive")]
    public void Of_an_oil_that_nothing_is_known_of_the_certificate_is_asked_for(string oil, string kind)
    {
        using var recipe = new CheckedRecipe();
        Assert.Contains(recipe.Add(99, "Glycerin").Add(1, oil, kind).In(Market.Eu).Findings,
            f => f.Rule == "allergen.undeclared" && f.Message.Contains("name no fragrance allergens", StringComparison.Ordinal));
    }

    [Fact]
    public void The_united_states_want_no_allergens_named()
    {
        using var recipe = new CheckedRecipe();
        Assert.DoesNotContain(recipe.Add(99, "Glycerin").Add(1, Lavender).In(Market.Us).Findings, f => f.Rule == "allergen.undeclared");
    }

    // The extended list binds new products of the Union since 1 August 2026.
    [Theory]
    [InlineData("eu", "Aqua, Glycerin, Lavandula Angustifolia Oil.", "2026-11-26", "Linalool|Linalyl Acetate")]
    [InlineData("eu", "Aqua, Glycerin, Lavandula Angustifolia Oil, Linalool.", "2026-11-26", "Linalyl Acetate")]
    [InlineData("eu", "Aqua, Glycerin, Lavandula Angustifolia Oil, Linalool.", "2026-07-31", "")]
    [InlineData("eu", "Aqua, Glycerin, Lavandula Angustifolia Oil, Linalool, Linalyl Acetate.", "2026-11-26", "")]
    [InlineData("ca", "Aqua, Glycerin, Citrus Aurantium Dulcis Peel Oil.", "2026-11-26", "Limonene")]
    [InlineData("ca", "Aqua, Glycerin, Citrus Aurantium Dulcis Peel Oil.", "2026-04-11", "")]
    [InlineData("us", "Water, Glycerin, Lavandula Angustifolia (Lavender) Oil.", "2026-11-26", "")]
    public void A_label_that_names_an_oil_and_not_what_it_always_holds_is_told(string market, string list, string on, string missing)
    {
        var reading = LabelStatement.Read(LabelText.Of($"Body lotion\n200 ml\nIngredients: {list}\n", "label.txt"),
            IngredientDictionary.Shipped);
        var facts = LabelJudgement.Of(reading, ProductKinds.Find("body-lotion").Value!, null, null,
            DateOnly.Parse(on, System.Globalization.CultureInfo.InvariantCulture));
        var found = LabelCheck.Run(facts, MarketBook.Shipped.Find(market).OrRefuse()).Findings
            .Where(f => f.Rule == "allergen.undeclared" && f.Message.Contains("are known to hold", StringComparison.Ordinal)).ToArray();
        Assert.Equal(missing.Length == 0 ? 0 : 1, found.Length);
        Assert.All(missing.Split('|', StringSplitOptions.RemoveEmptyEntries),
            m => Assert.Contains($"{m} (", found[0].Message, StringComparison.Ordinal));
    }

    [Fact]
    public void A_supplier_is_asked_for_the_certificate_where_the_market_wants_allergens_named()
    {
        using var folder = new BenchFolder();
        folder.Write("materials/base.yaml", "name: Base\nkind: base\ncontains: Glycerin\n");
        folder.Write("materials/lavender.yaml", $"name: Lavender oil\nkind: oil\nsupplier: Example Oils\ncontains: {Lavender}\n");
        folder.Write("recipes/soap.yaml",
            "name: Soap\nproduct: soap-bar\npieces: 1\nnet: 100 g\nmaterials:\n  - { use: base, amount: 99 g }\n  - { use: lavender, "
                + "amount: 1 g }\n");
        var workshop = Workshop.Open(folder.Path);
        Assert.Empty(SupplierQuestions.ForAll(workshop, Day, Market.Us).Letters);
        var letter = Assert.Single(SupplierQuestions.ForAll(workshop, Day, Market.Eu).Letters);
        Assert.Equal("Example Oils", letter.Addressed);
        Assert.Contains("Such oils are known to hold Linalyl Acetate, Linalool, Terpineol, Camphor, Limonene.", letter.Text,
            StringComparison.Ordinal);
        Assert.Contains("allergens:", letter.Questions[0].Answer, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_oil_of_the_table_is_an_ingredient_and_says_where_its_figures_are_from()
    {
        var oils = IngredientDictionary.Shipped.OilAllergens.Oils.Select(o => IngredientDictionary.Shipped.Find(o)!).ToArray();
        Assert.InRange(oils.Length, 70, 200);
        Assert.All(oils.SelectMany(o => IngredientDictionary.Shipped.OilAllergens.Of(o)),
            a => Assert.True(a.Source.Length > 5 && a.Basis != Basis.Memory));
    }

    private static Finding Possible(CheckedRecipe recipe) =>
        recipe.In(Market.Eu).Findings
            .Single(f => f.Rule == "allergen.undeclared" && f.Message.Contains("no analysis", StringComparison.Ordinal));
}
