using LabelForge.Checks;
using LabelForge.Ingredients;

namespace LabelForge.Declarations;

/// <summary>Colours that stand on a label because some products or batches under it hold them.</summary>
internal static class MayContainColours
{
    /// <summary>The words before the colours, as the market wants them.</summary>
    public static string Words(Market market, NameStyle style) => style == NameStyle.Dual ? "+/- May contain:" : market.Ways.MayContain;

    /// <summary>The dictionary keys of the colours a recipe says that some batches hold.</summary>
    /// <exception cref="InputException">One is not a colour that the dictionary knows.</exception>
    public static ImmutableArray<string> Keys(Recipe recipe, IngredientDictionary dictionary) => [.. recipe.MayContain.Select(c =>
        dictionary.Find(c.Name) is { IsColourant: true } colour
            ? colour.Key
            : throw new InputException(recipe.File, c.Line, "declaration.may-contain-colours", ("name", c.Name)))];

    /// <summary>Whether one label may serve products of this kind that differ only in colour, in a market on a day.</summary>
    public static LawEntry ShadeRule(Market market, DateOnly on) => market.On(on).Figure("colours.may-contain");

    /// <summary>What stands against the recipe's own "may contain" in a market.</summary>
    public static IEnumerable<Finding> Findings(Recipe recipe, ProductKind kind, Market market, NameStyle style, DateOnly on)
    {
        if (recipe.MayContain.IsEmpty || kind.IsMakeup)
            yield break;
        Market[] markets = style == NameStyle.Dual ? [.. market.Book.All] : [market];
        // Where any product may say so of a colour that some batches hold to match the shade, nothing stands against it.
        foreach (var at in markets.Where(m => m.On(on).FigureIfAny("colours.may-contain-to-match") is null))
        {
            var rule = ShadeRule(at, on);
            yield return market.Book.Every.Rules["colour.may-contain-not-permitted"]
                .Find(recipe.File, at.Id, kind.Name, rule.Citation);
        }
    }
}
