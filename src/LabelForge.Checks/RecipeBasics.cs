using System.Globalization;
using LabelForge.Checks.Words;
using LabelForge.Ingredients;
using LabelForge.Markets;
using LabelForge.Recipes;

namespace LabelForge.Checks;

/// <summary>What every market asks of a recipe's label alike, each by its own rule book.</summary>
internal static class RecipeBasics
{
    /// <summary>Whether there is an ingredient list, what its declaration found, and the pairs whose order is not settled.</summary>
    public static IEnumerable<Finding> Ingredients(RecipeFacts facts, RuleBook rules)
    {
        if (facts.Declaration.Ingredients.IsEmpty)
            yield return rules["ingredients.missing"].Find(facts.Batch.Recipe.File);
        foreach (var finding in facts.Declaration.Findings)
            yield return finding;
        foreach (var pair in facts.Declaration.Unsettled)
            yield return rules["ingredients.order"].Find("ingredients", pair.First, pair.Second, pair.Ask);
    }

    /// <summary>Whether what the product is has been written.</summary>
    public static IEnumerable<Finding> Identity(RecipeFacts facts, RuleBook rules)
    {
        if (string.IsNullOrWhiteSpace(facts.Batch.Recipe.Identity))
            yield return rules["identity.missing"].Find(facts.Batch.Recipe.File);
    }

    /// <summary>Whether the label has a lot.</summary>
    public static IEnumerable<Finding> Lot(RecipeFacts facts, RuleBook rules)
    {
        if (facts.Content.Lot is null)
            yield return rules["lot.missing"].Find("label");
    }

    /// <summary>Whether it is known what package the label is for.</summary>
    public static IEnumerable<Finding> Package(RecipeFacts facts)
    {
        if (!facts.IsPackageKnown)
            yield return EveryMarket.Rules["package.missing"].Find(facts.Batch.Recipe.File, UsualPackage.For(facts.Kind));
    }

    /// <summary>Letters that would be drawn lower than they must be.</summary>
    public static IEnumerable<Finding> Heights(IEnumerable<PrintedHeight> heights, RuleBook rules) => heights
        .Where(h => h.MeasuredMillimetres < h.LeastMillimetres)
        .Select(h => rules[h.Rule].Find(h.Element, Millimetres(h.MeasuredMillimetres), Millimetres(h.LeastMillimetres)));

    /// <summary>The maker's words, each a sentence of its own, as on a label made elsewhere.</summary>
    /// <param name="facts">The recipe's facts.</param>
    /// <param name="withWarnings">Whether the warnings are among them.</param>
    public static string Words(RecipeFacts facts, bool withWarnings)
    {
        var recipe = facts.Batch.Recipe;
        return string.Join(".\n", new[] { recipe.Name, recipe.Identity, recipe.Directions }.Concat(recipe.Claims).Concat(withWarnings ? recipe.Warnings : []).Where(t => !string.IsNullOrWhiteSpace(t)));
    }

    /// <summary>The ingredients, each with what the dictionary knows it as.</summary>
    public static IReadOnlyList<(string Name, Ingredient? Known)> Names(RecipeFacts facts) =>
        [.. facts.Declaration.Ingredients.Select(i => (i.Name, IngredientDictionary.Shipped.Find(i.Name)))];

    /// <summary>What the maker's words claim.</summary>
    public static IEnumerable<Finding> Claims(RecipeFacts facts, string words, Market market) =>
        WordCheck.Find(words, Names(facts), facts.Batch.Recipe.SoldAs, facts.Batch.Recipe.File, market);

    private static string Millimetres(decimal value) => value.ToString("0.00", CultureInfo.InvariantCulture) + " mm";
}
