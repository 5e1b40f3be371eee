using System.Collections.Immutable;
using LabelForge.Checks;
using LabelForge.Checks.Reading;
using LabelForge.Ingredients;
using LabelForge.Markets;
using LabelForge.Recipes;
using LabelForge.Tests.Recipes;

namespace LabelForge.Tests.Checks.FreshRecipes;

/// <summary>
/// Workshops of recipes, right ones and ones with a known defect, each written before anything was tried on it: what is told of
/// each in each market, and the same of its label as words where words can show it.
/// </summary>
public sealed class FreshRecipeTests(ITestOutputHelper output)
{
    private static readonly DateOnly On = new(2026, 11, 25);

    /// <summary>The rules by which a set is measured: those of composition, of what words claim and of warnings.</summary>
    private static readonly ImmutableHashSet<string> Compared =
        ["substance.prohibited", "substance.over-limit", "substance.condition", "colour.not-permitted", "fragrance.over-limit",
            "fragrance.limit-unknown", "allergen.undeclared", "claim.drug", "claim.contradicted", "claim.soap-with-detergent",
            "claim.makes-soap-a-cosmetic", "lye.excess", "preservative.missing", "warning.missing", "product.other"];

    /// <summary>What a label's words cannot show: shares and certificates.</summary>
    private static readonly ImmutableHashSet<string> OfTheRecipeAlone =
        ["substance.over-limit", "substance.condition", "fragrance.over-limit", "fragrance.limit-unknown", "lye.excess"];

    [Theory]
    [InlineData("first")]
    [InlineData("second")]
    public void Each_defect_of_a_recipe_is_told_in_its_markets_and_a_right_one_gets_none(string set) =>
        Compare(set, facts => RecipeCheck.Run(facts), Compared);

    [Theory]
    [InlineData("first")]
    [InlineData("second")]
    public void Each_defect_that_words_can_show_is_told_of_the_label_read_as_words(string set) =>
        Compare(set, LabelReport, Compared.Except(OfTheRecipeAlone));

    /// <summary>Whole reports of a set: of each recipe in each market, and of its label read as words.</summary>
    internal static IReadOnlyList<(string Of, CheckReport Report)> Reports(string set)
    {
        using var folder = new BenchFolder();
        var recipes = FreshRecipe.Write(set, folder);
        var workshop = Workshop.Open(folder.Path);
        return
        [
            .. recipes.SelectMany(_ => Market.All, (recipe, market) => (recipe.Id, CheckedRecipe.FactsOf(workshop, recipe.Id, market, On)))
                .SelectMany<(string Id, RecipeFacts Facts), (string, CheckReport)>(r =>
                    [(r.Id, RecipeCheck.Run(r.Facts)), ($"{r.Id}, its label", LabelReport(r.Facts))]),
        ];
    }

    private static CheckReport LabelReport(RecipeFacts facts) =>
        LabelCheck.Run(LabelJudgement.Of(Reading(facts), null, facts.Batch.Recipe.SoldAs, null, On), facts.Declaration.Market);

    private void Compare(string set, Func<RecipeFacts, CheckReport> judge, ImmutableHashSet<string> compared)
    {
        using var folder = new BenchFolder();
        var wanted = FreshRecipe.Write(set, folder);
        var workshop = Workshop.Open(folder.Path);
        var wrong = new List<string>();
        foreach (var recipe in wanted)
            foreach (var market in Market.All)
            {
                var told = judge(CheckedRecipe.FactsOf(workshop, recipe.Id, market, On)).Findings
                    .Where(f => f.Severity != Severity.Note && compared.Contains(f.Rule)).ToArray();
                var here = recipe.Wanted.Where(w => w.Market == market.Id).ToArray();
                wrong.AddRange(here.Where(w => !w.Optional && w.Rules.Any(compared.Contains) && !told.Any(f => w.Rules.Contains(f.Rule)))
                    .Select(w => $"MISSED {recipe.Id}, {market.Id}: {string.Join('/', w.Rules)}"));
                wrong.AddRange(told.Where(f => !here.Any(w => w.Rules.Contains(f.Rule)))
                    .Select(f => $"false {recipe.Id}, {market.Id}: {f.Rule} {f.Severity}: {f.Message}"));
            }
        output.WriteLine(string.Join("\n", wrong));
        Assert.True(wrong.Count == 0, string.Join("\n", wrong));
    }

    // The label as somebody else's: its words in the order in which labels have them.
    private static LabelStatement Reading(RecipeFacts facts)
    {
        var content = facts.Content;
        string?[] parts = [content.ProductName, content.Identity, content.Claim, content.NetQuantity, facts.Declaration.Statement,
            content.Directions, .. content.Warnings, content.Responsible, content.Contact, .. facts.Batch.Recipe.Claims];
        var text = string.Join("\n\n", parts.Where(p => !string.IsNullOrEmpty(p)));
        return LabelStatement.Read(LabelText.Of(text, "label.txt"), IngredientDictionary.Shipped);
    }
}
