using LabelForge.Checks;
using LabelForge.Composition;
using LabelForge.Fragrances;

namespace LabelForge.Declarations;

/// <summary>What the workshop's scale leaves open: amounts that it cannot weigh, and orders,
/// limits and thresholds that turn within its error.</summary>
internal static class ScaleCheck
{
    /// <summary>Nothing where the workshop does not say what its scale shows.</summary>
    public static IEnumerable<Finding> Find(
        FinishedProduct product, ProductKind kind, BatchComposition composition, ImmutableArray<AllergenTotal> named, AllergenRule? rule)
    {
        if (ScaleError.Of(product) is not { } error)
            yield break;
        var rules = product.Workshop.Markets.Every.Rules;
        var step = Grams(error.Step.Grams);
        var tolerance = ScaleReading.ToleranceOf(product.Batch);
        foreach (var reading in ScaleReading.Of(product.Batch, error.Step).Where(r => !r.IsWeighable(tolerance)))
        {
            yield return rules["scale.too-coarse"].Find("materials",
                Grams(reading.Line.Mass.Grams), reading.Line.Material.Name, step, Percent(Math.Min(9.99m, reading.AsMuchAs)),
                Percent(tolerance), reading.WayRound(product.Batch, tolerance));
        }
        foreach (var (first, second) in Turning(error, composition))
            yield return rules["scale.order-open"].Find("ingredients", first, second, step);
        foreach (var oil in FragranceLimits.Of(product, kind).Oils.Where(o => o.Limit is { } limit && o.Share.Fraction <= limit.Fraction))
        {
            var most = oil.Share.Fraction + error.OfProduct(oil.Material.Name);
            if (most > oil.Limit!.Value.Fraction)
                yield return rules["scale.limit-open"]
                    .Find("materials", oil.Material.Name, Percent(oil.Share.Fraction), Percent(most), Percent(oil.Limit.Value.Fraction),
                        step);
        }
        if (rule is null)
            yield break;
        foreach (var total in product.Allergens.Where(a => a.Entry is { } entry && rule.Lists(entry) && named.All(n => n.Name != a.Name)))
        {
            var most = total.High * (1 + error.OfItself(total.Sources.Select(s => s.Material)));
            if (most > rule.Threshold.Percent)
                yield return rules["scale.allergen-open"]
                    .Find("ingredients", total.Name, Percent(total.High / 100), Percent(most / 100), Percent(rule.Threshold.Percent / 100),
                        step);
        }
    }

    // Neighbours whose order their figures alone prove: by less than the weighings may be off.
    private static IEnumerable<(string First, string Second)> Turning(ScaleError error, BatchComposition composition)
    {
        var main = composition.Proof.Ingredients.Where(i => i.Part == Part.Main).ToArray();
        for (var i = 0; i + 1 < main.Length; i++)
        {
            var (first, second) = (main[i], main[i + 1]);
            // What weighs exactly the same may stand either way.
            var slack = first.Low - second.High;
            if (slack >= 0
                && first.High > second.Low
                && error.Turns(slack, composition.Accounts[first.Name], composition.Accounts[second.Name]))
                yield return (first.Name, second.Name);
        }
    }

    private static string Grams(decimal grams) => grams.ToString("0.####", CultureInfo.InvariantCulture) + " g";

    private static string Percent(decimal fraction) =>
        (fraction * 100).ToString(fraction < 0.0001m ? "0.######" : "0.###", CultureInfo.InvariantCulture) + " %";
}
