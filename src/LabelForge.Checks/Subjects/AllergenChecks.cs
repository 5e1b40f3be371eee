using LabelForge.Declarations;
using LabelForge.Ingredients;

namespace LabelForge.Checks.Subjects;

/// <summary>
/// Whether the fragrance allergens that the market wants named can have been named: of a composition, whether each scent's
/// papers tell them; of names alone, whether a label that names scent names any.
/// </summary>
/// <remarks>A label does not show shares, so there it is a risk and no breach: common practice.
/// Which list binds on a day is data.</remarks>
internal static class AllergenChecks
{
    public static void Check(CheckCase label)
    {
        if (label.Kind is not { } kind
            || AllergenRule.For(label.Market, kind, label.Rules.Day) is not { List: not AllergenList.None } rule)
            return;
        var threshold = FormattableString.Invariant($"{rule.Threshold.Percent:0.###} %");
        if (label.Product is { } product)
            Unpapered(label, product, rule, threshold);
        else
            Named(label, rule, threshold);
    }

    // What oils of a kind are known to hold is told with the declaration; here what nothing is known of.
    private static void Unpapered(CheckCase label, RecipeFacts product, AllergenRule rule, string threshold)
    {
        // The same material may lie in two pots: what counts is how much of it there is in the product.
        foreach (var same in product.Finished.Materials.Where(f => f.Material.Allergens.IsEmpty).GroupBy(f => f.Material.Name))
        {
            var (material, percent) = (same.First().Material, same.Sum(f => f.Share.Percent));
            var oils = PossibleAllergens.In(material, product.Workshop).ToArray();
            var isScent = oils.Any(o => o.Holds.IsEmpty
                && o.High * percent > rule.Threshold.Percent
                && !NamesAllergens(material, rule, o.Oil, label.Dictionary))
                || (material.Kind == MaterialKind.Fragrance
                    && oils.Length == 0
                    && !NamesAllergens(material, rule, null, label.Dictionary));
            if (isScent && percent > rule.Threshold.Percent)
                label.Tell("allergen.undeclared/no-papers", material.File, material.Name, threshold, material.Id, rule.Source);
        }
    }

    // An oil that is itself an entry of the list says nothing of what is in it.
    private static bool NamesAllergens(Material material, AllergenRule rule, Ingredient? but, IngredientDictionary dictionary) =>
        material.Contains.Select(c => (c.Name, Known: dictionary.Find(c.Name)))
            .Any(c => (but is null || c.Known?.Key != but.Key) && IsListed(c.Name, c.Known, rule, dictionary));

    private static void Named(CheckCase label, AllergenRule rule, string threshold)
    {
        var dictionary = label.Dictionary;
        var named = label.Names.Select(n => Allergen(n.Name, n.Known, dictionary)).OfType<FragranceAllergen>().ToHashSet();
        var oils = label.Names.Where(n => n.Known is not null).Select(n => (n.Name, Missing: Missing(n.Known!, rule, named, dictionary)))
            .Where(o => o.Missing.Length > 0).ToArray();
        foreach (var oil in oils)
            label.Tell("allergen.undeclared/oil", "ingredients", oil.Name,
                string.Join(", ", oil.Missing.Select(m => $"{m.Allergen.Name} ({m.Amount})")), threshold, rule.Source);
        var scents = label.Names
            .Where(n => oils.All(o => o.Name != n.Name)
                && n.Known is { Roles: [IngredientRole.Fragrance or IngredientRole.EssentialOil, ..] }
                && !IsListed(n.Name, n.Known, rule, dictionary)).Select(n => n.Name).ToArray();
        if (scents.Length > 0 && !label.Names.Any(n => IsListed(n.Name, n.Known, rule, dictionary)))
            label.Tell("allergen.undeclared", "ingredients", string.Join(", ", scents), scents.Length == 1 ? "is" : "are", threshold,
                rule.Source);
    }

    // A label shows no shares: what is always a hundredth of the oil or more exceeds the threshold of a rinse-off product
    // as soon as the oil is a hundredth of it, and that of a leave-on product at a thousandth. Common practice.
    private static OilAllergen[] Missing(Ingredient oil, AllergenRule rule, HashSet<FragranceAllergen> named,
        IngredientDictionary dictionary) =>
        [.. dictionary.OilAllergens.Of(oil)
            .Where(a => a is { Figure: not OilFigure.Occurs, Low: >= 1 } && rule.Lists(a.Allergen) && !named.Contains(a.Allergen))];

    private static bool IsListed(string name, Ingredient? known, AllergenRule rule, IngredientDictionary dictionary) =>
        Allergen(name, known, dictionary) is { } allergen && rule.Lists(allergen);

    private static FragranceAllergen? Allergen(string name, Ingredient? known, IngredientDictionary dictionary) =>
        dictionary.Allergens.Find(name) ?? (known is null ? null : dictionary.Allergens.Find(known));
}
