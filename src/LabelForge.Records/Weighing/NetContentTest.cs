using LabelForge.Quantities;

namespace LabelForge.Records.Weighing;

/// <summary>Whether weighed pieces meet a declared net mass, by a market's own inspection test.</summary>
/// <param name="Market">The market.</param>
/// <param name="Declared">The declared mass.</param>
/// <param name="Sample">The pieces.</param>
/// <param name="Allowed">How far one piece may fall short.</param>
/// <param name="AverageLimit">The lowest average that passes, in grams.</param>
/// <param name="MayBeShort">How many pieces may fall short by more than is allowed.</param>
/// <param name="Short">The pieces that do.</param>
/// <param name="FarShort">Pieces short by more than twice what is allowed; the directive's third rule. Empty in the US.</param>
/// <param name="Source">The provisions, in short.</param>
public sealed record NetContentTest(
    Market Market, NetAmount Declared, WeighedSample Sample, AllowedShortfall Allowed, decimal AverageLimit, int MayBeShort,
    ImmutableArray<WeighedPiece> Short, ImmutableArray<WeighedPiece> FarShort, string Source)
{
    /// <summary>Whether the average passes.</summary>
    public bool AveragePasses => Sample.Mean >= AverageLimit;

    /// <summary>Whether few enough pieces are short, and none far short.</summary>
    public bool IndividualPasses => Short.Length <= MayBeShort && FarShort.Length <= MayBeFarShort;

    /// <summary>How many may be short by more than twice what is allowed: none in the Union and
    /// Great Britain, one in Canada (C.R.C., c. 417, s. 39(4)(c)).</summary>
    public int MayBeFarShort { get; init; }

    /// <summary>A second sample that decides, where the first alone does not: more are short than
    /// may be, fewer than refuse the lot; null where none does.</summary>
    public SamplePlan? SecondSample { get; init; }

    /// <summary>Whether the average passes only because a sample is given the benefit of the doubt.</summary>
    public bool PassesByChance => AveragePasses && Sample.Mean < Declared.Metric;

    /// <summary>Tests a sample.</summary>
    /// <param name="market">us (NIST Handbook 133, Category A), eu (Directive 76/211/EEC), uk (SI
    /// 2006/659) or ca (C.R.C., c. 417).</param>
    /// <param name="declared">The declared net quantity, a mass.</param>
    /// <param name="sample">The weighed pieces.</param>
    /// <param name="lotSize">How many pieces the lot has; null where it is not said: then the sample is judged as it is.</param>
    /// <exception cref="InputException">A volume is declared, the lot is smaller than the sample,
    /// or the market has no test here.</exception>
    public static NetContentTest Of(Market market, NetAmount declared, WeighedSample sample, int? lotSize = null)
    {
        if (declared.Mass is not { } mass)
            throw new InputException("weighing.declared-volume");
        if (lotSize < sample.Count)
            throw new InputException("weighing.more-than-lot", ("count", sample.Count), ("lot-size", lotSize));
        var allowed = AllowedShortfall.At(market, mass, declared.System);
        var way = WayOf(market);
        var us = way.Test == SamplingFactor;
        // The whole lot weighed leaves nothing to chance in the EU (Annex II, 1.3); the US table gives a factor for small lots too.
        var whole = lotSize == sample.Count && !us;
        var chance = sample.Sd is not { } sd || whole ? 0m : SampleFactor.Of(sample.Count, us ? SampleFactor.Us : SampleFactor.Eu) * sd;
        // One package alone has no average: Handbook 133 applies the variation allowed to it.
        var limit = us && sample.Count == 1 ? mass.Grams - allowed.Grams : mass.Grams - chance;
        var planned = lotSize is { } lot ? SamplePlan.For(market, lot) : null;
        var both = planned is { Then: > 0 } && sample.Count >= planned.Sample + planned.Then;
        var mayBeShort = planned is not null && planned.Sample <= sample.Count
            ? both ? planned.MayBeShortOfBoth : planned.MayBeShort
            : SamplePlan.MayBeShortOf(market, sample.Count);
        var tooShort = ShortBy(sample, mass.Grams - allowed.Grams);
        return new NetContentTest(market, declared, sample, allowed, limit, mayBeShort,
            tooShort,
            us ? [] : ShortBy(sample, mass.Grams - 2 * allowed.Grams),
            way.By)
        {
            MayBeFarShort = way.MayBeFarShort,
            SecondSample = planned is { Then: > 0 } && !both && sample.Count >= planned.Sample
                && tooShort.Length > planned.MayBeShort && tooShort.Length <= planned.MayBeShortOfBoth ? planned : null,
        };
    }

    // The way of NIST Handbook 133: no package may be far short by a rule of its own, and one alone has no average.
    private const string SamplingFactor = "sampling-factor";

    /// <summary>How a market tests net contents.</summary>
    /// <exception cref="InputException">That is not known here.</exception>
    internal static WeighingWay WayOf(Market market) => market.Ways.Weighing
        ?? throw new InputException("market.not-weighed", ("market", market.Name),
            ("list", string.Join(" or ", market.Book.All.Where(m => m.Ways.Weighing is not null).Select(m => m.Id))));

    private static ImmutableArray<WeighedPiece> ShortBy(WeighedSample sample, decimal limit) =>
        [.. sample.Pieces.Where(p => p.Net.Grams < limit)];
}
