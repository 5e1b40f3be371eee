using System.Text.RegularExpressions;
using LabelForge.Checks.Reading;
using LabelForge.Ingredients;
using LabelForge.Markets;
using LabelForge.Recipes;

namespace LabelForge.Checks;

/// <summary>Checks the colours that an ingredient list names: by their listed names, and listed for where the product goes.</summary>
public static partial class LabelColourCheck
{
    private static readonly RuleBook Rules = RuleBook.Us;

    /// <summary>The findings. True soap is no cosmetic (21 CFR 701.20), so the listings do not bind it.</summary>
    public static IEnumerable<Finding> Find(LabelFacts facts) => facts.SoldAs == SoldAs.Soap ? [] : facts.Reading.Names.SelectMany(item => Of(item, facts.Kind));

    private static IEnumerable<Finding> Of(IngredientRead item, ProductKind? kind)
    {
        if (Vague().IsMatch(item.Name))
        {
            yield return Rules["ingredients.colour-name"].Find(item.Name, item.Name, "Name each colour additive as it is listed, for example Red 40, Iron Oxides or Mica.");
            yield break;
        }
        var colour = ColourOf(item);
        if (colour is null && item.Known?.IsColourant != true)
        {
            // A number that nothing here knows is no name either way.
            if (NumberAlone().IsMatch(item.Name))
                yield return Rules["ingredients.colour-name"].Find(item.Name, item.Name, "No colour additive listed in the United States is known here by this number: ask its maker for the listed name, or use another.");
            yield break;
        }
        if (NumberAlone().IsMatch(item.Name))
        {
            yield return Rules["ingredients.colour-name"].Find(item.Name, item.Name, colour is null
                ? "The United States list no colour additive of this number: use another, and name it as listed."
                : $"Write {colour.Name}; the number may follow it: {colour.Name} ({item.Name.ToUpperInvariant()})");
        }
        else if (Odd().Match(item.Name) is { Success: true } && colour is not null)
        {
            yield return Rules["ingredients.colour-name/form"].Find(item.Name, item.Name, colour.Name);
        }
        if (colour is null)
            yield return Rules["colour.not-permitted/unlisted"].Find(item.Name, item.Name, "Listed are among others iron oxides, mica, titanium dioxide, ultramarines (not for lips) and the certified colours.");
        else if (kind is not null && colour.Permits(kind) != Applies.Yes)
            yield return Rules["colour.not-permitted/area"].Find(item.Name, colour.Name, AreaName(kind.Area), colour.Limit.Length > 0 ? colour.Limit : $"not listed for it in {colour.Citation}", colour.Citation).By(colour.Basis);
    }

    /// <summary>The listed colour that a name means, or null.</summary>
    public static ColourAdditive? ColourOf(IngredientRead item)
    {
        var bare = Abbreviated().Replace(Parenthesis().Replace(item.Name, ""), "").Trim();
        var listed = ColourAdditives.Shipped;
        return listed.Find(item.Name) ?? listed.Find(bare) ?? listed.Find(Lake().Replace(bare, ""))
            ?? (item.Known is { IsColourant: true } known ? listed.Find(known) ?? known.ColourIndex.Select(c => listed.Find(c.ToString())).FirstOrDefault(c => c is not null) : null);
    }

    private static string AreaName(AreaOfUse area) => area switch
    {
        AreaOfUse.Lips => "on the lips",
        AreaOfUse.Eye => "in the area of the eye",
        _ => "on the body",
    };

    [GeneratedRegex(@"^(?:\W*)(?:(?:natural|artificial|cosmetic|soap|food|mineral|mica|skin[- ]safe|vegan|synthetic|added|approved|fda[- ]approved)\s+)*(?:colou?rs?|colou?rants?|colou?rings?|dyes?|pigments?|colou?r added|food colou?ring|fd\s?&\s?c(?: colou?rs?| dyes?)?|d\s?&\s?c(?: colou?rs?| dyes?)?|tints?)(?:\s+(?:added|blend|powder|dispersion))?\W*$", RegexOptions.IgnoreCase)]
    private static partial Regex Vague();

    [GeneratedRegex(@"^\W*c\.?\s?i\.?\s?#?\s?\d{5}(?::\d)?\W*$", RegexOptions.IgnoreCase)]
    private static partial Regex NumberAlone();

    [GeneratedRegex(@"#|\bdye\b|\bcolou?r\b|\bE\d{3}\b", RegexOptions.IgnoreCase)]
    private static partial Regex Odd();

    [GeneratedRegex(@"\(?\bext\.?\s*(?=d)|\b(?:F\s?)?D\s?&\s?C\b|\bNo\.?(?=\s*\d)|#", RegexOptions.IgnoreCase)]
    private static partial Regex Abbreviated();

    [GeneratedRegex(@"\s*[(\[][^)\]]*[)\]]")]
    private static partial Regex Parenthesis();

    [GeneratedRegex(@"\s+(?:aluminum\s+|calcium\s+|barium\s+)?lake$", RegexOptions.IgnoreCase)]
    private static partial Regex Lake();
}
