using LabelForge.Ingredients;

namespace LabelForge.Declarations;

/// <summary>The names that ingredients carry on a label.</summary>
/// <param name="dictionary">The names known.</param>
/// <param name="market">The market.</param>
/// <param name="style">The market's own names, or both sides' for a label sold in several markets.</param>
/// <param name="marksNano">Whether the market asks for the mark of a nanomaterial.</param>
/// <param name="named">
/// The allergens that have to be named: an ingredient that is one of them carries the name that Annex III sets, so
/// lavender oil stands as <c>Lavandula Oil/Extract</c>.
/// </param>
public sealed class LabelNames(IngredientDictionary dictionary, Market market, NameStyle style, bool marksNano,
    ImmutableHashSet<FragranceAllergen> named)
{
    /// <summary>The name on the label of an ingredient by its dictionary key; what the dictionary
    /// does not know stands as written.</summary>
    public string Of(string key)
    {
        var bare = NanoName.Bare(key);
        if (dictionary.Find(bare) is not { } entry)
            return dictionary.Allergens.Find(bare) is { } unknown && named.Contains(unknown) ? unknown.Name : key;
        var european = Allergen(entry) ?? (style == NameStyle.Dual ? entry.Eu : entry.NameIn(market));
        var nano = NanoName.IsMarked(key) || entry.Flags.HasFlag(IngredientFlags.Nano) ? NanoName.Mark : "";
        if (style == NameStyle.Dual)
            return Both(european + nano, entry.Us);
        return marksNano ? european + nano : european;
    }

    // A European botanical name inside the US one is said already: Cocos Nucifera (Coconut) Oil.
    private static string Both(string european, string us)
    {
        if (NameText.Plain(us) == NameText.Plain(european) || NameText.WithoutParentheses(us) == NameText.Plain(european))
            return us;
        return us.Contains('(', StringComparison.Ordinal) ? $"{european} / {us}" : $"{european} ({us})";
    }

    private string? Allergen(Ingredient entry) =>
        !named.IsEmpty && dictionary.Allergens.Find(entry) is { } allergen && named.Contains(allergen) ? allergen.Name : null;
}
