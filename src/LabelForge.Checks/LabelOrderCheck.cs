using LabelForge.Checks.Reading;
using LabelForge.Ingredients;
using LabelForge.Recipes;

namespace LabelForge.Checks;

/// <summary>Checks the order of an ingredient list as far as the names tell: what can only be a trace does not stand first.</summary>
/// <remarks>Ingredients go by descending predominance; colour additives, and what is 1 percent or less, may follow in any order (21 CFR 701.3(a), (f)).</remarks>
public static class LabelOrderCheck
{
    private const int FewestForAlphabet = 6;

    // One may be there in traces itself; of two or more at least one is not.
    private const int EnoughBulk = 2;

    /// <summary>The findings; at most one.</summary>
    /// <param name="facts">The label's facts.</param>
    /// <param name="book">The market's rules; those of the United States where null.</param>
    public static IEnumerable<Finding> Find(LabelFacts facts, RuleBook? book = null)
    {
        var rules = book ?? RuleBook.Us;
        var items = facts.Reading.Names.Where(i => !i.MayContain).ToArray();
        if (items.Length < 2)
            yield break;
        // A perfume is mostly scent (IFRA category 4 is fragrance products), and a true soap needs no list (21 CFR 701.20).
        if (facts.Kind?.IfraCategory == "4" || facts.SoldAs == SoldAs.Soap)
            yield break;
        if (Trace(items[0]) is { } what && items.FirstOrDefault(IsBulk) is { } bulk)
        {
            yield return rules["ingredients.order/first"].Find("ingredients", items[0].Name, bulk.Name, what);
        }
        else if (items.Skip(1).SkipLast(1).Select((item, at) => (item, at: at + 1)).FirstOrDefault(p => Trace(p.item) is not null && items.Skip(p.at + 1).Count(IsBulk) >= EnoughBulk) is { item: { } early, at: var at })
        {
            yield return rules["ingredients.order/early"].Find("ingredients", early.Name, items.Skip(at + 1).First(IsBulk).Name, Trace(early)!);
        }
        else if (items.Length >= FewestForAlphabet && items.Zip(items.Skip(1)).All(p => string.Compare(p.First.Name, p.Second.Name, StringComparison.OrdinalIgnoreCase) < 0))
        {
            yield return rules["ingredients.order/alphabet"].Find("ingredients");
        }
    }

    // What is there in traces: a certified dye, a preservative, a chelator, a scent, a vitamin against rancidity.
    private static string? Trace(IngredientRead item)
    {
        if (LabelColourCheck.ColourOf(item) is { Certified: true })
            return "a certified colour";
        return item.Known is not { Roles: [var main, ..] } ? null : main switch
        {
            IngredientRole.Fragrance or IngredientRole.EssentialOil => "a scent",
            IngredientRole.Preservative => "a preservative",
            IngredientRole.Chelator => "a chelator",
            _ => null,
        };
    }

    // What makes up the body of a product.
    private static bool IsBulk(IngredientRead item) => item.Known is { Roles: [var main, ..] } known
        && (known.Us == "Water" || main is IngredientRole.Base or IngredientRole.Soap or IngredientRole.Surfactant or IngredientRole.Wax
            || (main == IngredientRole.Emollient && known.Group == "oils-and-butters") || (main == IngredientRole.Humectant && known.Us == "Glycerin"));
}
