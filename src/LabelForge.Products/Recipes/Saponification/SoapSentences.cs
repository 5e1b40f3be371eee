using LabelForge.Papers;

namespace LabelForge.Recipes.Saponification;

/// <summary>What the arithmetic of soap says, in plain words.</summary>
public static class SoapSentences
{
    /// <summary>What the sums rest on, one sentence each.</summary>
    public static IReadOnlyList<string> Assumptions { get; } =
    [
        "An oil counts as pure triglyceride: a third of a mole of glycerin to each mole of alkali, and no water. Acids give water instead "
            + "and take the lye first, citric, lactic and acetic acid before the fatty ones and without a superfat; waxes give neither, "
            + "and their alcohols stay with their soap.",
        "What finds no lye is shared over the oils in proportion to their weight.",
        "What of the lye is not alkali counts as water.",
        "Spare lye is judged by the low end of each oil's saponification value, the least that it may take up.",
    ];

    /// <summary>The superfat with its range.</summary>
    public static string Superfat(Superfat superfat, PaperWords? words = null) => superfat.Least == superfat.Most
        ? (words ?? PaperWords.English)["superfat", Percent(superfat.Middle)]
        : (words ?? PaperWords.English)["superfat-range", Percent(superfat.Middle), Percent(superfat.Least), Percent(superfat.Most)];

    private static string Percent(decimal fraction) => (fraction * 100).ToString("0.0", CultureInfo.InvariantCulture) + " %";
}
