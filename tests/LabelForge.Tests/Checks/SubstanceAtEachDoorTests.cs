using LabelForge.Checks;
using LabelForge.Checks.Reading;
using LabelForge.Ingredients;
using LabelForge.Markets;

namespace LabelForge.Tests.Checks;

/// <summary>
/// What the lists forbid in a kind of product is found in its recipe and in the words of its label alike: every colour and every
/// substance of the tables, whether the dictionary knows it or not, in kinds for which the lists differ.
/// </summary>
public sealed class SubstanceAtEachDoorTests
{
    // Rules that speak of a name alone, and need no share.
    private static readonly string[] Forbidding = ["substance.prohibited", "colour.not-permitted"];

    public static TheoryData<string, string> Cases() => [.. from market in (string[])["us", "eu", "ca"]
        from kind in (string[])["soap-bar", "lip-balm", "eye-shadow", "shampoo", "conditioner"]
        select (market, kind)];

    [Theory]
    [MemberData(nameof(Cases))]
    public void What_is_forbidden_in_a_recipe_is_forbidden_on_its_label_as_text(string id, string kind)
    {
        var market = Market.Named(id);
        var names = Names(market).Distinct(StringComparer.OrdinalIgnoreCase).ToArray();
        var told = 0;
        // No list has more names than a label could hold, so they go by so many at a time.
        foreach (var some in names.Chunk(MostNames))
        {
            using var recipe = new CheckedRecipe { Kind = kind };
            recipe.Add(1000, "Glycerin");
            foreach (var (name, ofColour) in some.Select(n => (n, IngredientDictionary.Shipped.Colours.Find(n) is not null)))
                recipe.Add(1, name, ofColour ? "colourant" : "additive");
            var (judged, read) = Both(recipe, market);
            var (ofRecipe, ofLabel) = (Told(judged), Told(read));
            Assert.True(ofRecipe.SetEquals(ofLabel),
                $"recipe alone: {string.Join(", ", ofRecipe.Except(ofLabel))}\nlabel alone: {string.Join(", ", ofLabel.Except(ofRecipe))}");
            told += ofRecipe.Count;
        }
        Assert.True(told > 0);
    }

    private const int MostNames = 200;

    // 21 CFR 73.2120 names it, so that its name is a lawful one, though the dictionary has none of it.
    [Fact]
    public void The_name_of_a_listed_colour_is_no_unknown_name_at_either_door()
    {
        using var recipe = new CheckedRecipe { Kind = "shampoo" }.Add(1000, "Aqua").Add(1, "Disodium EDTA-Copper", "colourant");
        var (judged, read) = Both(recipe, Market.Us);
        Assert.DoesNotContain(judged.Findings.Concat(read.Findings), f => f.Rule == "ingredients.name-unknown");
    }

    private static (CheckReport OfRecipe, CheckReport OfLabel) Both(CheckedRecipe recipe, Market market)
    {
        var facts = recipe.Facts(market);
        var text = LabelStatement.Read(LabelText.Of($"{facts.Batch.Recipe.Identity}\n\n{facts.Declaration.Statement}", "label.txt"),
            IngredientDictionary.Shipped);
        return (RecipeCheck.Run(facts),
            LabelCheck.Run(LabelJudgement.Of(text, facts.Kind, facts.Batch.Recipe.SoldAs, null, recipe.On), market));
    }

    private static IEnumerable<string> Names(Market market) =>
        (IngredientDictionary.Shipped.SubstancesIn(market)?.All.SelectMany(r => r.Ingredients.Concat(r.Names)) ?? [])
        .Select(n => n.Trim('*')).Concat(IngredientDictionary.Shipped.Colours.All.Select(c => c.Name));

    private static HashSet<string> Told(CheckReport report) =>
        [.. report.Findings.Where(f => f.Severity == Severity.Must && Forbidding.Contains(f.Rule)).Select(f => $"{f.Rule} {f.Source}")];
}
