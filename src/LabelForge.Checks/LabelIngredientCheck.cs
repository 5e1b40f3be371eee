using System.Text.RegularExpressions;
using LabelForge.Checks.Reading;
using LabelForge.Ingredients;
using LabelForge.Markets;
using LabelForge.Recipes;

namespace LabelForge.Checks;

/// <summary>Checks that an ingredient list is there, and that its names are the ones that the rule wants.</summary>
public static partial class LabelIngredientCheck
{
    // Where so many names are unknown, the list was misread or is none.
    private const int MostUnknown = 30;
    private static readonly RuleBook Rules = RuleBook.Us;

    /// <summary>The findings.</summary>
    public static IEnumerable<Finding> Find(LabelFacts facts)
    {
        if (facts.Reading.Ingredients is { } list)
            return Heading(list).Concat(list.Items.Where(i => (i.Known is null || Saponified().IsMatch(i.Name)) && LabelColourCheck.ColourOf(i) is null && !IsColourWord(i)).Take(MostUnknown).Select(Unknown)).Concat(Foreign(list)).Concat(Detergent(list, facts));
        if (facts.IsCosmetic)
            return [Rules["ingredients.missing/label"].Find(facts.Where)];
        return facts.SoldAs == SoldAs.Soap ? [] : [Rules["ingredients.missing/soap-unsaid"].Find(facts.Where)];
    }

    private static IEnumerable<Finding> Heading(IngredientListRead list)
    {
        if (list.Heading is null)
            yield return Rules["ingredients.heading"].Find("ingredients");
    }

    private static Finding Unknown(IngredientRead item)
    {
        if (OtherIngredients().IsMatch(item.Name))
            return Rules["ingredients.name-unknown/other-ingredients"].Find(item.Name, item.Name);
        var near = Saponified().IsMatch(item.Name) ? [] : IngredientDictionary.Shipped.Suggest(item.Name, 1);
        return Rules["ingredients.name-unknown/label"].Find(item.Name, item.Name, Saponified().IsMatch(item.Name)
            ? "Name each oil and the alkali, or the soap that they make: Sodium Olivate, Sodium Cocoate."
            : near.IsEmpty ? "Check its spelling, or ask the supplier for the INCI name." : $"Perhaps {near[0].NameIn(RuleBook.MarketUs)} is meant. If not, ask the supplier for the INCI name.");
    }

    // Aqua, Parfum, a Latin name alone: known, but not the name that a US label carries.
    private static IEnumerable<Finding> Foreign(IngredientListRead list)
    {
        var foreign = list.Items.Where(i => i.Known is { IsColourant: false } known && Same(i.Name, known.Eu) && !Same(i.Name, known.Us) && !known.Everyday.Any(e => Same(e, i.Name))).ToArray();
        if (foreign.Length > 0)
            yield return Rules["ingredients.name-foreign"].Find("ingredients", string.Join(", ", foreign.Select(i => i.Name)), string.Join(", ", foreign.Select(i => i.Known!.Us)));
        var everyday = list.Items.Where(i => i.Known is { IsColourant: false } known && !Saponified().IsMatch(i.Name) && (i.IsKitchenName || known.Everyday.Any(e => Same(e, i.Name))) && !Same(i.Name, known.Us)).ToArray();
        if (everyday.Length > 0)
            yield return Rules["ingredients.name-everyday"].Find("ingredients", string.Join(", ", everyday.Select(i => i.Name)), string.Join(", ", everyday.Select(i => i.Known!.Us).Distinct()));
    }

    // The exemption is for what cleans by alkali salts of fatty acids; a synthetic detergent takes it away.
    private static IEnumerable<Finding> Detergent(IngredientListRead list, LabelFacts facts)
    {
        if (facts is { SoldAs: SoldAs.Soap } && list.Items.Where(i => Synthetic().IsMatch(i.Name)).Select(i => i.Name).ToArray() is { Length: > 0 } found)
            yield return Rules["claim.soap-with-detergent"].Find("ingredients", string.Join(", ", found));
    }

    [GeneratedRegex(@"^(?:and\s+)?other\s+ingredients?$", RegexOptions.IgnoreCase)]
    private static partial Regex OtherIngredients();

    private static bool IsColourWord(IngredientRead item) => ColourWord().IsMatch(item.Name);

    private static bool Same(string a, string b) => string.Equals(a.Trim(), b, StringComparison.OrdinalIgnoreCase);

    [GeneratedRegex(@"\bsaponified\b|\bsoap base\b|\boils of\b", RegexOptions.IgnoreCase)]
    private static partial Regex Saponified();

    [GeneratedRegex(@"\b(?:colou?r(?:ant|ing)?s?|dyes?|pigments?|f?d\s?&\s?c)\b|\bc\.?i\.?\s?\d{5}", RegexOptions.IgnoreCase)]
    private static partial Regex ColourWord();

    [GeneratedRegex(@"laureth sulfate|lauryl sulfate|coco[- ]sulfate|isethionate|sulfosuccinate|olefin sulfonate|betaine|glucoside|taurate|sulfoacetate", RegexOptions.IgnoreCase)]
    private static partial Regex Synthetic();
}
