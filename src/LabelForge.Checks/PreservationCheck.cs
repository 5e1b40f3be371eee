using LabelForge.Ingredients;
using LabelForge.Recipes;

namespace LabelForge.Checks;

/// <summary>
/// Whether a product that holds water says how it is kept from spoiling. No market's law asks for a preservative; it asks for a
/// safe product (21 U.S.C. 361; Regulation (EC) No 1223/2009, Art. 3), so these are risks and no breaches.
/// </summary>
/// <remarks>
/// A bar of soap keeps by its alkalinity and by how little free water it has (ISO 29621:2017, microbiologically low-risk
/// products, from memory), so it is left out.
/// </remarks>
public static class PreservationCheck
{
    // Below this a product is not "with water": traces come with many materials. Common practice.
    private const decimal LeastPercent = 1;

    /// <summary>The findings.</summary>
    public static IEnumerable<Finding> Find(RecipeFacts facts)
    {
        var isSoapBar = facts.Kind.IsSolid && facts.Kind.Groups.Any(g => g is { Name: "soap", Sure: true });
        var known = facts.Declaration.Ingredients.Select(i => (Declared: i, Entry: IngredientDictionary.Shipped.Find(i.Name))).ToArray();
        var water = known.Where(k => IsWatery(k.Entry)).Sum(k => k.Declared.High);
        if (isSoapBar || water < LeastPercent || facts.Batch.Recipe.SoldAs == SoldAs.Soap)
            yield break;
        if (!known.Any(k => k.Entry?.Roles.Contains(IngredientRole.Preservative) == true))
            yield return RuleBook.Substances["preservative.missing"].Find(facts.Batch.Recipe.File, SubstanceCheck.Percent(Math.Round(Math.Min(100, water), 1)));
        yield return RuleBook.Substances["preservation.not-measured"].Find(facts.Batch.Recipe.File);
    }

    // Water itself, and what is nearly all water: flower waters, juices and milks.
    private static bool IsWatery(Ingredient? entry) =>
        entry is not null && (entry.Us == "Water" || entry.Us.EndsWith(" Water", StringComparison.Ordinal) || entry.Us.EndsWith(" Juice", StringComparison.Ordinal) || entry.Us is "Goat Milk" or "Milk");
}
