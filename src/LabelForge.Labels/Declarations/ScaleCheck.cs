using System.Globalization;
using LabelForge.Checks;
using LabelForge.Composition;
using LabelForge.Fragrances;
using LabelForge.Markets;
using LabelForge.Recipes;

namespace LabelForge.Declarations;

/// <summary>What the workshop's scale leaves open: amounts that it cannot weigh, and orders and limits that turn within its error.</summary>
internal static class ScaleCheck
{
    /// <summary>Nothing where the workshop does not say what its scale shows.</summary>
    public static IEnumerable<Finding> Find(FinishedProduct product, ProductKind kind, CompositionProof proof)
    {
        var (workshop, batch) = (product.Workshop, product.Batch);
        if (workshop.Business.Scale is not { } step)
            yield break;
        var rules = EveryMarket.Rules;
        var tolerance = ScaleReading.ToleranceOf(batch);
        foreach (var reading in ScaleReading.Of(batch, step).Where(r => !r.IsWeighable(tolerance)))
        {
            yield return rules["scale.too-coarse"].Find("materials",
                Grams(reading.Line.Mass.Grams), reading.Line.Material.Name, Grams(step.Grams), Percent(Math.Min(9.99m, reading.AsMuchAs)), Percent(tolerance), reading.WayRound(batch, tolerance));
        }
        foreach (var (first, second) in Turning(step.Grams / 2 / batch.Yield.Grams, proof))
            yield return rules["scale.order-open"].Find("ingredients", first, second, Grams(step.Grams));
        foreach (var oil in FragranceLimits.Of(product, kind).Oils.Where(o => o.Limit is { } limit && o.Share.Fraction <= limit.Fraction))
        {
            var most = oil.Share.Fraction + step.Grams / 2 / batch.Yield.Grams;
            if (most > oil.Limit!.Value.Fraction)
                yield return rules["scale.limit-open"].Find("materials", oil.Material.Name, Percent(oil.Share.Fraction), Percent(most), Percent(oil.Limit.Value.Fraction), Grams(step.Grams));
        }
    }

    // Two that come each from one material alone, whose weighed amounts overlap by the scale's error.
    private static IEnumerable<(string First, string Second)> Turning(decimal half, CompositionProof proof)
    {
        var exact = proof.Ingredients.Where(i => i.Part == Part.Main && i.Low == i.High).ToArray();
        for (var i = 0; i + 1 < exact.Length; i++)
        {
            if (exact[i].Low - exact[i + 1].Low < 2 * half && exact[i].Low != exact[i + 1].Low)
                yield return (exact[i].Name, exact[i + 1].Name);
        }
    }

    private static string Grams(decimal grams) => grams.ToString("0.####", CultureInfo.InvariantCulture) + " g";

    private static string Percent(decimal fraction) => (fraction * 100).ToString("0.##", CultureInfo.InvariantCulture) + " %";
}
