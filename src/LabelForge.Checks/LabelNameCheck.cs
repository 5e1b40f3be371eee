using LabelForge.Checks.Reading;
using LabelForge.Ingredients;
using LabelForge.Markets;

namespace LabelForge.Checks;

/// <summary>Checks that a label's ingredients stand by the names that the European Union, the United Kingdom or Canada want.</summary>
public static class LabelNameCheck
{
    // Where so many names are unknown, the list was misread or is none.
    private const int MostUnknown = 30;

    /// <summary>The findings; none where there is no list.</summary>
    public static IEnumerable<Finding> Find(LabelFacts facts, Market market)
    {
        if (facts.Reading.Ingredients is not { } list)
            yield break;
        var rules = RuleBook.For(market);
        var unknown = rules[market == RuleBook.MarketCa ? "ingredients.name-unknown" : "ingredients.name-unknown/label"];
        foreach (var item in list.Items.Where(i => i.Known is null).Take(MostUnknown))
            yield return unknown.Find(item.Name, item.Name, Nearest(item.Name, market));
        foreach (var finding in market == RuleBook.MarketCa ? Canadian(list, rules) : European(list, rules))
            yield return finding;
    }

    private static IEnumerable<Finding> European(IngredientListRead list, RuleBook rules)
    {
        foreach (var scent in list.Items.Where(i => i.Known is { Us: "Fragrance" } && !Holds(i.Name, "parfum") && !Holds(i.Name, "aroma")))
            yield return rules["ingredients.name-foreign/parfum"].Find(scent.Name, scent.Name);
        foreach (var colour in list.Items.Where(i => i.Known is { IsColourant: true, ColourIndex.Length: > 0 } known && !Holds(i.Name, "ci ") && !Holds(i.Name, "ci7") && !known.ColourIndex.Any(c => Holds(i.Name, Digits(c)))))
        {
            var certified = ColourAdditives.Shipped.Find(colour.Known!) is { Certified: true };
            yield return rules[certified ? "ingredients.colour-name" : "ingredients.colour-name/mineral"].Find(colour.Name, colour.Name, string.Join(" or ", colour.Known!.ColourIndex));
        }
        var foreign = list.Items.Where(i => i.Known is { IsColourant: false, Us: not "Fragrance" } known && !IsNamed(i.Name, known, known.Eu)).ToArray();
        if (foreign.Length > 0)
            yield return rules["ingredients.name-foreign"].Find("ingredients", string.Join(", ", foreign.Select(i => i.Name)), string.Join(", ", foreign.Select(i => i.Known!.Eu).Distinct()));
    }

    // Of the schedule's things the EU name will do, or English and French together: Aqua, or Water/Eau.
    private static IEnumerable<Finding> Canadian(IngredientListRead list, RuleBook rules)
    {
        var foreign = list.Items.Where(i => i.Known is { IsColourant: false } known && (i.IsKitchenName || known.Everyday.Any(e => Same(e, i.Name)) || known.Canada is not null)
            && !IsNamed(i.Name, known, known.NameIn(RuleBook.MarketCa)) && !Same(i.Name, known.Eu) && !i.Name.Contains('/')).ToArray();
        if (foreign.Length > 0)
            yield return rules["ingredients.name-foreign"].Find("ingredients", string.Join(", ", foreign.Select(i => i.Name)), string.Join(", ", foreign.Select(i => i.Known!.NameIn(RuleBook.MarketCa)).Distinct()));
    }

    // The botanical name may carry the common one in parentheses, and another language's name may stand beside it.
    private static bool IsNamed(string name, Ingredient known, string wanted) =>
        Same(name, wanted) || Holds(name, wanted) || Same(name, known.Inci ?? wanted) || (known.Us.Contains('(') && Same(name, known.Us)) || (!known.Everyday.Any(e => Same(e, name)) && known.Us == known.Eu && Same(name, known.Us));

    private static string Nearest(string name, Market market) =>
        IngredientDictionary.Shipped.Suggest(name, 1) is [var near] ? $"Perhaps {near.NameIn(market)} is meant. If not, ask the supplier for the INCI name." : "Check its spelling, or ask the supplier for the INCI name.";

    private static string Digits(ColourIndexNumber number) => string.Concat(number.ToString().Where(char.IsDigit));

    private static bool Same(string a, string b) => string.Equals(a.Trim(), b, StringComparison.OrdinalIgnoreCase);

    private static bool Holds(string name, string part) => name.Contains(part, StringComparison.OrdinalIgnoreCase);
}
