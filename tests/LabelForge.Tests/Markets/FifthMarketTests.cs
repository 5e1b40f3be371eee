using LabelForge.Checks;
using LabelForge.Checks.Reading;
using LabelForge.Composition;
using LabelForge.Declarations;
using LabelForge.Ingredients;
using LabelForge.Markets;
using LabelForge.Measures;
using LabelForge.Quantities;
using LabelForge.Tests.Checks;

namespace LabelForge.Tests.Markets;

/// <summary>A market that no code knows goes the whole way from a folder alone: declare, label, check, quantity.</summary>
public sealed class FifthMarketTests
{
    private static readonly DateOnly Day = new(2026, 11, 26);

    private static Market Testovia => MarketBook.Shipped.At(Path.Combine(Repository.Folder, "tests", "LabelForge.Tests", "Markets", "tv"));

    [Fact]
    public void It_states_a_quantity_as_its_folder_says()
    {
        var stated = NetQuantityStatement.For(Testovia, NetAmount.Of(Volume.FromMillilitres(250)), Day, Panel.Parse("5x10cm").Value);
        Assert.Equal(("250 ml", 2m), (stated.Statement, stated.LetterHeight!.Mm));
    }

    [Fact]
    public void It_declares_and_checks_a_recipe_by_its_own_rules_on_their_own_days()
    {
        using var recipe = new CheckedRecipe { More = "" }.Add(900, "Aqua").Add(100, "Glycerin");
        var report = recipe.In(Testovia);
        Assert.Equal("tv", report.Market);
        Assert.Equal("lot.missing", Assert.Single(report.Findings, f => f.Severity == Severity.Must).Rule);
        Assert.Equal(["Aqua", "Glycerin"], report.Found.Ingredients);
    }

    [Fact]
    public void Its_order_is_free_below_its_own_line_of_the_day()
    {
        Part Of(DateOnly day)
        {
            using var recipe = new CheckedRecipe { On = day }.Add(900, "Aqua").Add(60, "Sorbitol").Add(40, "Glycerin");
            return recipe.Facts(Testovia).Declaration.Composition!.Proof.Ingredients.Single(i => i.Name == "Glycerin").Part;
        }
        Assert.Equal((Part.Minor, Part.Main), (Of(new(2026, 12, 31)), Of(new(2027, 1, 1))));
    }

    [Fact]
    public void The_line_of_suppliers_lists_is_no_narrower_than_any_market_s() =>
        Assert.All(MarketBook.Shipped.All,
            m => Assert.InRange(FreeOrder.OfLists(m.Book), m.On(Day).Figure("ingredients.one-percent-line").Figure / 100, 1));

    [Fact]
    public void It_judges_a_label_made_elsewhere_and_a_rule_of_2030_does_not_bind_before()
    {
        var facts = LabelJudgement.Of(LabelStatement.Read(LabelText.Of("Tideline\nIngredients: Aqua, Glycerin", "x"),
            IngredientDictionary.Shipped), null, null, null, Day);
        Assert.Equal(["lot.missing", "net-quantity.missing"],
            LabelCheck.Run(facts, Testovia).Findings.Where(f => f.Severity == Severity.Must).Select(f => f.Rule).Order());
        Assert.DoesNotContain(LabelCheck.Run(facts, Testovia).Findings, f => f.Rule == "identity.missing");
        Assert.Contains(LabelCheck.Run(facts with { On = new(2030, 6, 1) }, Testovia).Findings, f => f.Rule == "identity.missing");
    }
}
