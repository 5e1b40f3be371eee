using LabelForge.Ingredients;

namespace LabelForge.Checks.Subjects;

/// <summary>
/// Whether a product that holds water says how it is kept from spoiling. No market's law asks for a preservative; it asks for a
/// safe product (21 U.S.C. 361; Regulation (EC) No 1223/2009, Art. 3), so these are risks and no breaches.
/// </summary>
/// <remarks>
/// A bar of soap keeps by its alkalinity and by how little free water it has (ISO 29621:2017, microbiologically low-risk
/// products, from memory), so it is left out.
/// </remarks>
internal static class PreservationChecks
{
    // Below this a product is not "with water": traces come with many materials. Common practice.
    private const decimal LeastPercent = 1;

    public static void Check(CheckCase label)
    {
        if (label.Product is not { } facts)
        {
            Named(label);
            return;
        }
        var isSoapBar = facts.Kind.IsSolid && facts.Kind.Groups.Any(g => g is { Name: "soap", Sure: true });
        var known = facts.Declaration.Ingredients.Select(i => (Declared: i, Entry: label.Dictionary.Find(i.Name))).ToArray();
        var water = known.Where(k => IsWatery(k.Entry)).Sum(k => k.Declared.High);
        if (isSoapBar || water < LeastPercent || facts.Batch.Recipe.SoldAs == SoldAs.Soap)
            return;
        if (!known.Any(k => k.Entry?.Roles.Contains(IngredientRole.Preservative) == true))
            label.Tell("preservative.missing", facts.Batch.Recipe.File, SubstanceChecks.Percent(Math.Round(Math.Min(100, water), 1)));
        label.Tell("preservation.not-measured", facts.Batch.Recipe.File);
    }

    // A list shows no shares, but what stands among the first names is much of the product, and a liquid of it is no bar.
    // Soap itself and alcohol keep it, and a name that nobody knows may be what does. Common practice.
    private const int MuchOfIt = 3;

    private static void Named(CheckCase label)
    {
        var names = label.Names;
        if (label.Kind is not { IsSolid: false } || label.SoldAs == SoldAs.Soap
            || !names.Take(MuchOfIt).Any(n => IsWatery(n.Known)) || names.Any(n => n.Known is null || Keeps(n.Known)))
            return;
        label.Tell("preservative.missing", "ingredients", names.First(n => IsWatery(n.Known)).Name);
    }

    private static bool Keeps(Ingredient known) =>
        known.Roles.Contains(IngredientRole.Preservative) || known.Roles[0] == IngredientRole.Soap
        || known.Us.StartsWith("Alcohol", StringComparison.Ordinal) || known.Us.StartsWith("SD Alcohol", StringComparison.Ordinal);

    // Water itself, and what is nearly all water: flower waters, juices and milks.
    private static bool IsWatery(Ingredient? entry) =>
        entry is not null
            && (entry.Us == "Water"
                || entry.Us.EndsWith(" Water", StringComparison.Ordinal)
                || entry.Us.EndsWith(" Juice", StringComparison.Ordinal) || entry.Us is "Goat Milk" or "Milk");
}
