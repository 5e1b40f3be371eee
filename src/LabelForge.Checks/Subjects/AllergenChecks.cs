using LabelForge.Declarations;
using LabelForge.Ingredients;
using LabelForge.Recipes;

namespace LabelForge.Checks.Subjects;

/// <summary>
/// Whether the fragrance allergens that the market wants named can have been named: of a composition, whether each scent's
/// papers tell them; of names alone, whether a label that names scent names any.
/// </summary>
/// <remarks>A label does not show shares, so there it is a risk and no breach: common practice. Which list binds on a day is data.</remarks>
internal static class AllergenChecks
{
    public static void Check(CheckCase label)
    {
        if (label.Kind is not { } kind || AllergenRule.For(label.Market, kind, label.Rules.Day) is not { List: not AllergenList.None } rule)
            return;
        var threshold = FormattableString.Invariant($"{rule.ThresholdPercent:0.###} %");
        if (label.Product is { } product)
        {
            foreach (var flat in product.Finished.Materials.Where(f => f.Material.Kind == MaterialKind.Fragrance && f.Material.Allergens.IsEmpty && f.Share.Percent > rule.ThresholdPercent))
            {
                if (!flat.Material.Contains.Any(c => IsListed(c.Name, IngredientDictionary.Shipped.Find(c.Name), rule)))
                    label.Tell("allergen.undeclared/no-papers", flat.Material.File, flat.Material.Name, threshold, flat.Material.Id, rule.Source);
            }
            return;
        }
        var scents = label.Names.Where(n => n.Known is { Roles: [IngredientRole.Fragrance or IngredientRole.EssentialOil, ..] } && !IsListed(n.Name, n.Known, rule)).Select(n => n.Name).ToArray();
        if (scents.Length > 0 && !label.Names.Any(n => IsListed(n.Name, n.Known, rule)))
            label.Tell("allergen.undeclared", "ingredients", string.Join(", ", scents), scents.Length == 1 ? "is" : "are", threshold, rule.Source);
    }

    private static bool IsListed(string name, Ingredient? known, AllergenRule rule) =>
        (FragranceAllergens.Shipped.Find(name) ?? (known is null ? null : FragranceAllergens.Shipped.Find(known))) is { } allergen && rule.Lists(allergen);
}
