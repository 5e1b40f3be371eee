namespace LabelForge.Records.Weighing;

/// <summary>How many packages an inspection weighs of a lot, and how many of those may fall short by more than the table allows.</summary>
/// <param name="LotSize">The lot, in packages.</param>
/// <param name="Sample">How many are weighed.</param>
/// <param name="MayBeShort">How many may fall short by more than is allowed.</param>
/// <param name="Source">The table.</param>
/// <param name="Then">How many are weighed in a second sample, where the first has more short
/// pieces than may be but is not yet refused; 0 where there is none.</param>
/// <param name="MayBeShortOfBoth">How many of both samples together may be short.</param>
public sealed record SamplePlan(int LotSize, int Sample, int MayBeShort, string Source, int Then = 0, int MayBeShortOfBoth = 0)
{
    /// <summary>
    /// The plan for a lot: NIST Handbook 133, Table 2-1, Category A; Directive 76/211/EEC, Annex II, 2.2.1 (double plan); SI 2006/659,
    /// Schedule 2, 3.3 (single plan); C.R.C., c. 417, Schedule II.
    /// </summary>
    public static SamplePlan For(Market market, int lotSize)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(lotSize, 1);
        var row = Table(market).First(r => r["lot up to"].Length == 0 || lotSize <= Whole(r["lot up to"]));
        var sample = SampleOf(row["sample"], lotSize);
        return row["then"].Length == 0
            ? new SamplePlan(lotSize, sample, Short(row["may be short"], sample), row["source"])
            : new SamplePlan(lotSize, sample, Short(row["may be short"], sample), row["source"], Whole(row["then"]),
                Whole(row["may be short of both"]));
    }

    /// <summary>
    /// The plan for packages that are opened to be weighed: 20, of which 1 may be short, of a lot of 100 or more (Directive
    /// 76/211/EEC, Annex II, 2.2.2; SI 2006/659, Schedule 2, 4.6); null where the market sets none.
    /// </summary>
    public static SamplePlan? Destructive(Market market, int lotSize) =>
        lotSize >= 100 && NetContentTest.WayOf(market).Samples is "eu-samples" or "uk-samples"
            ? new SamplePlan(lotSize, 20, 1, "Directive 76/211/EEC, Annex II, 2.2.2; SI 2006/659, Schedule 2, 4.6")
            : null;

    /// <summary>How many of a sample of any size may be short: the figure of the largest plan that the sample fills.</summary>
    /// <remarks>Never more lenient than the plan above it: a sample between two plans is judged by the smaller one.</remarks>
    public static int MayBeShortOf(Market market, int sample)
    {
        var rows = Table(market);
        if (rows[0]["may be short"] == BySample)
            return Short(BySample, sample);
        var filled = rows.LastOrDefault(r => r["sample"] != "all" && Whole(r["sample"]) <= sample);
        return filled is null ? 0 : Short(filled["may be short"], sample);
    }

    private const string BySample = "by sample";

    // A quarter of a Canadian lot is rounded up, and is at least 10 (C.R.C., c. 417, Schedule II, Part I).
    private static int SampleOf(string text, int lotSize) =>
        text == "all" ? lotSize : text.EndsWith('%') ? Math.Max(10, (int)Math.Ceiling(lotSize * Percent(text) / 100m)) : Whole(text);

    private static IReadOnlyList<DataLine> Table(Market market) => DataLine.Embedded(NetContentTest.WayOf(market).Samples + ".csv");

    private static int Short(string text, int sample) =>
        text == BySample
        ? Whole(DataLine.Embedded("ca-accept.csv") is var steps
            && steps.FirstOrDefault(s => sample <= Whole(s["sample up to"])) is { } step
            ? step["may be short"]
            : steps[^1]["may be short"])
        : text.EndsWith('%') ? (int)Math.Floor(Percent(text) * sample / 100m)
        : Whole(text);

    private static decimal Percent(string text) => decimal.Parse(text.TrimEnd('%'), CultureInfo.InvariantCulture);

    private static int Whole(string text) => int.Parse(text, NumberStyles.None, CultureInfo.InvariantCulture);
}
