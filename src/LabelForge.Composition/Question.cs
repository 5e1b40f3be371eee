using System.Globalization;

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
        var candidates = first.Sources.Select(s => Turning(product, s, first, second))
            .Concat(second.Sources.Select(s => Turning(product, s, second, first)))
            .OrderByDescending(c => c.TurnsAt is not null).ThenByDescending(c => c.Width);
        var best = candidates.First();
        var (material, name) = (product.Materials[best.Source.Material].Part.Material, best.Asked.Name);
        return new Ask(material, name, best.TurnsAt, best.Other.Name, best.ElseExact);
    }

    private static Candidate Turning(ProductModel product, Source source, ProductIngredient asked, ProductIngredient other)
    {
        var material = product.Materials[source.Material];
        var part = material.Part.ShareOfProduct;
        var (low, high) = (material.Low[source.Constituent], material.High[source.Constituent]);
        var rest = Others(asked, s => product.Materials[s.Material].Estimate[s.Constituent]) - asked.Lost;
        var against = Others(other, s => product.Materials[s.Material].Estimate[s.Constituent]) - other.Lost;
        var turns = (against - rest) / part;
        var unknown = Others(asked, Width) + Others(other, Width);
        return new Candidate(source, asked, other, turns > low && turns < high ? turns : null, part * (high - low), unknown <= CompositionLimits.Tolerance);

        decimal Others(ProductIngredient of, Func<Source, decimal> share) =>
            of.Sources.Where(s => s != source).Sum(s => product.Materials[s.Material].Part.ShareOfProduct * share(s));

        decimal Width(Source s) => product.Materials[s.Material].High[s.Constituent] - product.Materials[s.Material].Low[s.Constituent];
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

    private sealed record Candidate(Source Source, ProductIngredient Asked, ProductIngredient Other, decimal? TurnsAt, decimal Width, bool ElseExact);
}
