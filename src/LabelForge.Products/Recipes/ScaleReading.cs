namespace LabelForge.Recipes;

/// <summary>A line of a batch as the workshop's scale shows it.</summary>
/// <param name="Line">What is weighed.</param>
/// <param name="Shown">The nearest mark of the scale.</param>
/// <param name="Step">What the scale's marks are apart.</param>
/// <param name="AsMuchAs">How far what is weighed may be off, as a fraction of it, when the scale shows its nearest mark.</param>
public sealed record ScaleReading(BatchLine Line, Mass Shown, Mass Step, decimal AsMuchAs)
{
    /// <summary>How far a weighed amount may be off before it is flagged where the recipe does
    /// not say: 2 % of it; common practice.</summary>
    public const decimal UsualTolerance = 0.02m;

    /// <summary>The least that it can be when the scale shows <see cref="Shown"/>.</summary>
    public Mass Low => Mass.FromGrams(Math.Max(0, Shown.Grams - Step.Grams / 2));

    /// <summary>The most.</summary>
    public Mass High => Mass.FromGrams(Shown.Grams + Step.Grams / 2);

    /// <summary>Whether the scale can weigh it to within a tolerance, a fraction of it.</summary>
    public bool IsWeighable(decimal tolerance) => AsMuchAs <= tolerance;

    /// <summary>How far a batch's weighed amounts may be off, a fraction of each.</summary>
    public static decimal ToleranceOf(BatchFormula batch) => batch.Recipe.Tolerance ?? UsualTolerance;

    /// <summary>Reads the lines of a batch on a scale.</summary>
    /// <param name="step">What the scale's marks are apart; above 0.</param>
    public static ImmutableArray<ScaleReading> Of(BatchFormula batch, Mass step) => [.. batch.Lines.Select(l => Of(l, step))];

    private static ScaleReading Of(BatchLine line, Mass step)
    {
        // Exact: halves go up, as a scale's display does.
        var marks = Math.Floor(line.Mass.Grams / step.Grams + 0.5m);
        var shown = marks * step.Grams;
        var off = Math.Max(Math.Abs(shown + step.Grams / 2 - line.Mass.Grams),
            Math.Abs(line.Mass.Grams - Math.Max(0, shown - step.Grams / 2)));
        return new ScaleReading(line, Mass.FromGrams(shown), step, line.Mass.Grams == 0 ? 0 : off / line.Mass.Grams);
    }

    /// <summary>Ways to get the amount in all the same: a larger batch, a premix, the spoon, another scale.</summary>
    /// <param name="tolerance">How far it may be off, a fraction of it.</param>
    public string WayRound(BatchFormula batch, decimal tolerance)
    {
        var grams = Line.Mass.Grams;
        // The least that the scale weighs to within the tolerance, whatever its marks do: half a step is that part of it, twice over.
        var least = Step.Grams / tolerance;
        var ways = new List<string>();
        if (least / grams <= MostTimes)
            ways.Add($"make {Number(Math.Ceiling(least / grams))} batches at once");
        // A premix in the largest oil: what of it goes in is itself weighed, and leaves the oil as it was.
        if (batch.Lines.Where(l => l.Material.Kind == MaterialKind.Oil && l != Line).MaxBy(l => l.Mass) is { } oil
            && oil.Mass.Grams + grams >= least && Math.Ceiling(least) * oil.Mass.Grams / grams <= MostPremix)
        {
            var powder = Math.Ceiling(least);
            ways.Add(
                $"stir {Number(powder)} g of it into {Number(Math.Round(powder * oil.Mass.Grams / grams))} g of {oil.Material.Name} and take {Number(oil.Mass.Grams + grams)} g of that in place of both");
        }
        if (Line.Written.IsVolume)
            ways.Add($"measure it with the spoon as the recipe says ({Line.Written}), with its own weighed density");
        else if (Line.Material.GramsPerMillilitre is { } density && density > 0)
            ways.Add(
                $"measure {Number(Math.Round(grams / density / TeaspoonMillilitres, 2))} level teaspoons, by the density in its file");
        else
            ways.Add("weigh a heap of level teaspoons of it together, divide, and measure it with the spoon");
        ways.Add($"use a scale that shows {Number(Finer(grams, tolerance))} g");
        return $"{string.Join("; or ", ways)}.";
    }

    private const decimal MostTimes = 12;
    private const decimal MostPremix = 1000;
    private const decimal TeaspoonMillilitres = 4.92892159375m;

    // The coarsest of the usual steps that is fine enough.
    private static decimal Finer(decimal grams, decimal tolerance) =>
        new[] { 1m, 0.1m, 0.01m, 0.001m }.FirstOrDefault(s => s / grams <= tolerance, 0.001m);

    private static string Number(decimal figure) => figure.ToString("0.###", CultureInfo.InvariantCulture);
}
