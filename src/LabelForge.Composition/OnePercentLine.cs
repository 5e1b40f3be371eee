namespace LabelForge.Composition;

/// <summary>Which side of the label's one-percent line the greatest share of an ingredient is on,
/// without rounding where the figures are known without.</summary>
/// <remarks>
/// Decimals decide wherever the share is farther from the line than <see cref="CompositionLimits.Tolerance"/>. Within it the
/// share is worked out again in fractions from what was weighed; where a figure is itself a rounded quotient, as those of
/// formed soap are, the tolerance stays, for exactness from there on would only weigh the rounding.
/// </remarks>
internal static class OnePercentLine
{
    /// <summary>Whether there can be more of it than the line in the finished product.</summary>
    public static bool IsExceeded(ProductModel product, ProductIngredient by)
    {
        var (high, line) = (product.High(by), product.Lines.Label);
        if (Math.Abs(high - line) > CompositionLimits.Tolerance)
            return high > line;
        var isExact = by.Besides.IsEmpty && product.Losses.All(l => l.ExactShare is not null)
            && by.Sources.All(s => product.Materials[s.Material].Part.ExactShare is not null);
        return isExact && Most(product, by) > Fraction.Of(line) * Left(product);
    }

    private static Fraction Left(ProductModel product) =>
        product.Losses.Aggregate(Fraction.Of(1), (left, loss) => left - loss.ExactShare!.Value);

    // In the charged batch, what left it taken off.
    private static Fraction Most(ProductModel product, ProductIngredient of)
    {
        var charged = of.Sources.Aggregate(default(Fraction), (sum, source) =>
        {
            var material = product.Materials[source.Material];
            return sum
                + material.Part.ExactShare!.Value * material.Pieces.Select(p => Greatest(p, material.Groups[source.Constituent])).Max();
        });
        return product.Losses.Where(l => l.Ingredient == of.Name).Aggregate(charged, (left, loss) => left - loss.ExactShare!.Value);
    }

    // As Polytope.Most does: from all the least shares up, by what gains most for its mass.
    private static Fraction Greatest(Polytope set, int[] group)
    {
        var chained = set.Chain.ToHashSet();
        var reached = group.Aggregate(default(Fraction), (sum, c) => sum + Fraction.Of(set.LeastShares[c]));
        var room = set.LeastShares.Aggregate(Fraction.Of(1), (left, share) => left - Fraction.Of(share));
        var steps = group.Where(c => !chained.Contains(c)).Select(c => new Step(1, 1, Height(set.LeastShares[c], set.GreatestShares[c])))
            .Concat(ChainSteps(set, [.. group]))
            .OrderByDescending(s => (decimal)s.Gain / s.Length);
        foreach (var step in steps)
        {
            var length = Fraction.Of(step.Length);
            var taken = length * step.Height;
            if (taken > room)
                taken = room;
            if (taken <= default(Fraction))
                continue;
            reached += Fraction.Of(step.Gain) * taken / length;
            room -= taken;
        }
        return reached;
    }

    private static IEnumerable<Step> ChainSteps(Polytope set, HashSet<int> group)
    {
        var chain = set.Chain;
        var gained = new int[chain.Count + 1];
        for (var at = 0; at < chain.Count; at++)
            gained[at + 1] = gained[at] + (group.Contains(chain[at]) ? 1 : 0);
        decimal[] heights = [.. chain.SelectMany(c => new[] { set.LeastShares[c], set.GreatestShares[c] }).Distinct().Order()];
        for (var level = 1; level < heights.Length; level++)
        {
            var must = chain.TakeWhile(c => set.LeastShares[c] >= heights[level]).Count();
            var may = chain.TakeWhile(c => set.GreatestShares[c] >= heights[level]).Count();
            for (var from = must; from < may;)
            {
                var to = from + 1;
                for (var other = to + 1; other <= may; other++)
                {
                    if ((gained[other] - gained[from]) * (to - from) >= (gained[to] - gained[from]) * (other - from))
                        to = other;
                }
                yield return new Step(gained[to] - gained[from], to - from, Height(heights[level - 1], heights[level]));
                from = to;
            }
        }
    }

    private static Fraction Height(decimal from, decimal to) => Fraction.Of(to) - Fraction.Of(from);

    // So many constituents raised together by so much each, and how many of them count.
    private readonly record struct Step(int Gain, int Length, Fraction Height);
}
