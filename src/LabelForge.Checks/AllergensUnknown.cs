using LabelForge.Declarations;
using LabelForge.Ingredients;
using LabelForge.Markets;
using LabelForge.Recipes;

namespace LabelForge.Checks;

/// <summary>Scents whose papers name no allergen, so that the declaration cannot name what the market wants named.</summary>
public static class AllergensUnknown
{
    /// <summary>The findings, one for each such material.</summary>
    public static IEnumerable<Finding> Find(RecipeFacts facts, Market market)
    {
        if (AllergenRule.For(market, facts.Kind, facts.On) is not { List: not AllergenList.None } rule)
            yield break;
        foreach (var flat in facts.Finished.Materials.Where(f => f.Material.Kind == MaterialKind.Fragrance && f.Material.Allergens.IsEmpty && f.Share.Percent > rule.ThresholdPercent))
        {
            if (flat.Material.Contains.Any(c => IngredientDictionary.Shipped.Find(c.Name) is { } entry && FragranceAllergens.Shipped.Find(entry) is { } allergen && rule.Lists(allergen)))
                continue;
            yield return RuleBook.Declaration["allergen.undeclared"].Find(flat.Material.File, flat.Material.Name, FormattableString.Invariant($"{rule.ThresholdPercent:0.###} %"), flat.Material.Id, rule.Source);
        }
    }
}
