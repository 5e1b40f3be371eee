using LabelForge.Ingredients;

namespace LabelForge.Checks.Reading;

/// <summary>
/// Finds what an ingredient is where it stands as the kitchen calls it: <c>organic cold-pressed olive oil</c>, <c>lavender
/// EO</c>, <c>calendula infused olive oil</c>, or <c>coconut</c> in "saponified oils of olive and coconut".
/// </summary>
/// <remarks>It tells what was meant, so that a list is seen as one; whether the name will do on a label is judged apart.</remarks>
public static partial class KitchenNames
{
    /// <summary>The ingredient, or null where nothing fits.</summary>
    /// <param name="name">The name as it stands.</param>
    /// <param name="dictionary">The dictionary.</param>
    /// <param name="ofOils">Whether it stands in a list of oils, in which the word oil is left out.</param>
    public static Ingredient? Find(string name, IngredientDictionary dictionary, bool ofOils)
    {
        if (ScentOil().IsMatch(name))
            return dictionary.Find("Fragrance");
        var bare = Adjectives().Replace(Adjectives().Replace(Note().Replace(name, ""), ""), "").Trim();
        var oil = EssentialOil().Replace(bare, " oil").Trim();
        foreach (var candidate in new[] { bare, oil, Infused().Replace(bare, "").Trim(), bare.TrimEnd('s') }.Distinct())
        {
            if (candidate.Length > 1 && dictionary.Find(candidate) is { } known)
                return known;
        }
        return ofOils ? dictionary.Find(bare + " oil") ?? dictionary.Find(bare + " butter") ?? dictionary.Find(bare + " seed oil") : null;
    }

    /// <summary>Whether the words name oils that follow without the word oil.</summary>
    public static bool BeginsOils(string name) => OilsOf().IsMatch(name);

    /// <summary>The name without "saponified oils of".</summary>
    public static string AfterOils(string name) => OilsOf().Replace(name, "");

    [GeneratedRegex(@"^(?:saponified\s+)?(?:organic\s+)?(?:oils?|fats?)\s+of\s+|^saponified\s+(?:oils?\s*(?:\(|:)\s*)?(?:organic\s+)?",
        RegexOptions.IgnoreCase)]
    private static partial Regex OilsOf();

    [GeneratedRegex(@"\b(?:fragrance|perfume|scent)(?:\s+(?:oils?|blend))+$|^(?:[\p{L}’'& -]{2,30}\s)?(?:fragrance|parfum)$",
        RegexOptions.IgnoreCase)]
    private static partial Regex ScentOil();

    [GeneratedRegex(@"^(?:(?:certified|100\s?%|organic|raw|local|unrefined|refined|extra|virgin|pure|natural|fresh|filtered|purified|cold[- ]pressed|expeller[- ]pressed|fractionated|hydrogenated|wild[- ]?(?:crafted|harvested)|fair[- ]trade|sustainable|sustainably sourced|rspo|non[- ]gmo|food[- ]grade|cosmetic[- ]grade|usp|steam[- ]distilled|finely|ground|powdered|dried|whole|fine|coarse|our|real|vegan|grass[- ]fed|kosher|colloidal|infused)[\s-]+)+", RegexOptions.IgnoreCase)]
    private static partial Regex Adjectives();

    [GeneratedRegex(@"\s*\b(?:pure\s+)?(?:essential\s+oils?|e\.?\s?o\.?)$", RegexOptions.IgnoreCase)]
    private static partial Regex EssentialOil();

    [GeneratedRegex(@"^[\p{L}-]+(?:\s+and\s+[\p{L}-]+)?[\s-]+infused[\s-]+(?:in\s+)?|[\s-]+infused\s+with\s.*$", RegexOptions.IgnoreCase)]
    private static partial Regex Infused();

    [GeneratedRegex(@"\s*[(\[][^)\]]*[)\]]?")]
    private static partial Regex Note();
}
