using LabelForge.Declarations;
using LabelForge.Ingredients;
using LabelForge.Markets;

namespace LabelForge.Checks;

/// <summary>Whether a label that names scent names any of the fragrance allergens that the market wants named.</summary>
/// <remarks>A label does not show shares, so this is a risk and no breach: common practice. Which list binds on a day is data.</remarks>
public static class LabelAllergenCheck
{
    /// <summary>The findings; at most one.</summary>
    public static IEnumerable<Finding> Find(LabelFacts facts, Market market)
    {
        if (facts.Kind is not { } kind || AllergenRule.For(market, kind, facts.On) is not { List: not AllergenList.None } rule)
            yield break;
        var scents = facts.Reading.Names.Where(n => n.Known is { Roles: [IngredientRole.Fragrance or IngredientRole.EssentialOil, ..] } && !IsListed(n.Name, n.Known, rule)).Select(n => n.Name).ToArray();
        if (scents.Length == 0 || facts.Reading.Names.Any(n => IsListed(n.Name, n.Known, rule)))
            yield break;
        yield return RuleBook.For(market)["allergen.undeclared"].Find("ingredients", string.Join(", ", scents), scents.Length == 1 ? "is" : "are", FormattableString.Invariant($"{rule.ThresholdPercent:0.###} %"), rule.Source);
    }

    private static bool IsListed(string name, Ingredient? known, AllergenRule rule) =>
        (FragranceAllergens.Shipped.Find(name) ?? (known is null ? null : FragranceAllergens.Shipped.Find(known))) is { } allergen && rule.Lists(allergen);
}
