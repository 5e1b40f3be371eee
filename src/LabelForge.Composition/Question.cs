namespace LabelForge.Composition;

/// <summary>Finds the one figure that would do most to settle the order of two ingredients.</summary>
internal static class Question
{
    /// <summary>
    /// What to ask for two ingredients of which <paramref name="first"/> stands first: the constituent whose share of the
    /// product is known least, among those whose figure could turn the estimated order.
    /// </summary>
    public static Ask About(ProductModel product, ProductIngredient first, ProductIngredient second)
    {
        var (ofFirst, ofSecond) = (Held(product, first), Held(product, second));
        var candidates = ofFirst.Select(h => Turning(h, first, ofFirst, second, ofSecond))
            .Concat(ofSecond.Select(h => Turning(h, second, ofSecond, first, ofFirst)))
            .OrderByDescending(c => c.TurnsAt is not null).ThenByDescending(c => c.Width);
        var best = candidates.First();
        return new Ask(best.Material, best.Asked.Name, best.TurnsAt, best.Other.Name, best.ElseExact);
    }

    // What each material holds of an ingredient, by its list or besides.
    private static Holding[] Held(ProductModel product, ProductIngredient ingredient) =>
    [
        .. ingredient.Sources.Select(s => (product.Materials[s.Material], s.Constituent)).Select(s => new Holding(
            s.Item1.Part.Material, s.Item1.Part.ShareOfProduct, s.Item1.Low[s.Constituent], s.Item1.High[s.Constituent],
            s.Item1.Estimate[s.Constituent])),
        .. ingredient.Besides.Select(b => new Holding(b.Material, b.ShareOfProduct, b.Low, b.High, (b.Low + b.High) / 2)),
    ];

    private static Candidate Turning(Holding holding, ProductIngredient asked, Holding[] ofAsked, ProductIngredient other,
        Holding[] ofOther)
    {
        var others = ofAsked.Where(h => !ReferenceEquals(h, holding)).ToArray();
        var rest = others.Sum(h => h.Share * h.Estimate) - asked.Lost;
        var against = ofOther.Sum(h => h.Share * h.Estimate) - other.Lost;
        var turns = (against - rest) / holding.Share;
        var unknown = others.Concat(ofOther).Sum(h => h.High - h.Low);
        return new Candidate(holding.Material, asked, other, turns > holding.Low && turns < holding.High ? turns : null,
            holding.Share * (holding.High - holding.Low), unknown <= CompositionLimits.Tolerance);
    }

    // Three figures that count: enough for a supplier, and no more than an estimate deserves.
    internal static string Percent(decimal fraction)
    {
        var percent = fraction * 100;
        var decimals = 2;
        for (var size = percent; size is > 0 and < 1 && decimals < 10; size *= 10)
            decimals++;
        return Math.Round(percent, percent >= 10 ? 1 : decimals).ToString("0.##########", CultureInfo.InvariantCulture) + " %";
    }

    // One material's part in an ingredient, as fractions: its share of the batch, and how much of it the ingredient is.
    private sealed record Holding(string Material, decimal Share, decimal Low, decimal High, decimal Estimate);

    private sealed record Candidate(string Material, ProductIngredient Asked, ProductIngredient Other, decimal? TurnsAt, decimal Width,
        bool ElseExact);
}
