using LabelForge.Papers;
using LabelForge.Quantities;

namespace LabelForge.Records.Weighing;

/// <summary>The largest net quantity that weighed pieces support.</summary>
/// <param name="Grams">The largest mass, before it is cut to what a label states.</param>
/// <param name="Statement">The statement, rounded down, in the market's systems; null where the pieces support none.</param>
/// <param name="Why">Why that much and no more.</param>
public sealed record LargestDeclaration(decimal Grams, NetQuantity? Statement, string Why)
{
    /// <summary>The confidence, one-sided, that the lot's average is not less than what is declared.</summary>
    public const double Confidence = SampleFactor.Us;

    /// <summary>Finds it.</summary>
    /// <remarks>
    /// An inspection gives the packer the benefit of the doubt; a declaration must not use it up. So the declared mass is at most
    /// the lower 97.5 % confidence bound of the average, and no weighed piece is short of it by more than the table allows
    /// (in the EU and Great Britain: no more pieces than the rules allow, and none by more than twice).
    /// </remarks>
    public static LargestDeclaration Of(Market market, WeighedSample sample, DateOnly on, MeasureSystem system = MeasureSystem.Metric,
        int? lotSize = null, PaperWords? words = null)
    {
        words ??= PaperWords.English;
        var whole = lotSize == sample.Count;
        if (sample.Sd is not { } sd)
        {
            if (!whole)
                return new LargestDeclaration(0, null, words["weigh-one-says-nothing"]);
            sd = 0;
        }
        var bound = whole ? sample.Mean : sample.Mean - SampleFactor.Of(sample.Count, Confidence) * sd;
        // Below a thousandth of a gram a kitchen scale knows nothing.
        bound = Math.Floor(bound * 1000m) / 1000m;
        if (bound <= 0)
            return new LargestDeclaration(0, null, words["weigh-differ-too-much"]);
        var grams = Supported(market, sample, bound, system, lotSize);
        var why = grams < bound
            ? words["weigh-held-by-lightest", sample.Pieces.MinBy(p => p.Net.Grams)!.Name]
            : whole ? words["weigh-whole-lot"]
            : words["weigh-lower-bound", bound];
        return grams <= 0
            ? new LargestDeclaration(0, null, words["weigh-one-too-light"])
            : new LargestDeclaration(grams, NetQuantityStatement.For(market, NetAmount.Of(Mass.FromGrams(grams), system), on), why);
    }

    // What is allowed rises and falls with the declared mass in steps, so the largest mass is looked for from the top down.
    private static decimal Supported(Market market, WeighedSample sample, decimal bound, MeasureSystem system, int? lotSize)
    {
        for (var grams = bound; grams > 0; grams = Next(grams))
        {
            if (NetContentTest.Of(market, NetAmount.Of(Mass.FromGrams(grams), system), sample, lotSize).IndividualPasses)
                return grams;
        }
        return 0;
    }

    private static decimal Next(decimal grams)
    {
        var step = grams > 100m ? 0.1m : 0.01m;
        return Math.Floor((grams - step / 2) / step) * step;
    }
}
