using System.Globalization;
using LabelForge.Markets;

namespace LabelForge.Records.Weighing;

/// <summary>How many packages an inspection weighs of a lot, and how many of those may fall short by more than the table allows.</summary>
/// <param name="LotSize">The lot, in packages.</param>
/// <param name="Sample">How many are weighed.</param>
/// <param name="MayBeShort">How many may fall short by more than is allowed.</param>
/// <param name="Source">The table.</param>
public sealed record SamplePlan(int LotSize, int Sample, int MayBeShort, string Source)
{
    /// <summary>The plan for a lot (NIST Handbook 133, Table 2-1, Category A; Directive 76/211/EEC, Annex II, 2.2.1).</summary>
    public static SamplePlan For(Market market, int lotSize)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(lotSize, 1);
        var row = Table(market).First(r => r["lot up to"].Length == 0 || lotSize <= Whole(r["lot up to"]));
        var sample = row["sample"] == "all" ? lotSize : Whole(row["sample"]);
        return new SamplePlan(lotSize, sample, Short(row["may be short"], sample), row["source"]);
    }

    /// <summary>How many of a sample of any size may be short: the figure of the largest plan that the sample fills.</summary>
    /// <remarks>Never more lenient than the plan above it: a sample between two plans is judged by the smaller one.</remarks>
    public static int MayBeShortOf(Market market, int sample)
    {
        var filled = Table(market).LastOrDefault(r => r["sample"] != "all" && Whole(r["sample"]) <= sample);
        return filled is null ? 0 : Short(filled["may be short"], sample);
    }

    private static IReadOnlyList<DataLine> Table(Market market) => DataLine.Shipped(NetContentTest.WayOf(market).Samples + ".csv");

    private static int Short(string text, int sample) => text.EndsWith('%')
        ? (int)Math.Floor(decimal.Parse(text.TrimEnd('%'), CultureInfo.InvariantCulture) * sample / 100m)
        : Whole(text);

    private static int Whole(string text) => int.Parse(text, NumberStyles.None, CultureInfo.InvariantCulture);
}
