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
    public static IEnumerable<Finding> Find(Workshop workshop, BatchFormula batch, ProductKind kind, CompositionProof proof)
    {
        if (workshop.Business.Scale is not { } step)
            yield break;
        var rules = RuleBook.Declaration;
        var tolerance = batch.Recipe.Tolerance ?? ScaleReading.UsualTolerance;
        var readings = ScaleReading.Of(batch, step);
        foreach (var reading in readings.Where(r => !r.IsWeighable(tolerance)))
        {
            yield return rules["scale.too-coarse"].Find("materials",
                Grams(reading.Line.Mass.Grams), reading.Line.Material.Name, Grams(step.Grams), Percent(Math.Min(9.99m, reading.AsMuchAs)), Percent(tolerance), reading.WayRound(batch, tolerance));
        }
        foreach (var (first, second) in Turning(readings, proof, batch))
            yield return rules["scale.order-open"].Find("ingredients", first, second, Grams(step.Grams));
        foreach (var oil in FragranceLimits.Of(workshop, batch, kind).Oils.Where(o => o.Limit is { } limit && o.Share <= limit.Fraction))
        {
            var most = oil.Share + step.Grams / 2 / batch.Yield.Grams;
            if (most > oil.Limit!.Value.Fraction)
                yield return rules["scale.limit-open"].Find("materials", oil.Material.Name, Percent(oil.Share), Percent(most), Percent(oil.Limit.Value.Fraction), Grams(step.Grams));
        }
    }

    // Two that come each from one material alone, whose weighed amounts overlap by the scale's error.
    private static IEnumerable<(string First, string Second)> Turning(IReadOnlyList<ScaleReading> readings, CompositionProof proof, BatchFormula batch)
    {
        var half = readings.Count == 0 ? 0 : readings[0].Step.Grams / 2 / batch.Yield.Grams;
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
