namespace LabelForge.Ingredients;

/// <summary>
/// How much potassium hydroxide saponifies a fat: mg KOH per g of fat, as a range. A single figure is a range of no width.
/// Ranges follow Codex Alimentarius CXS 210, 211 and 33 where the ingredient's source says so.
/// </summary>
/// <param name="Low">The least, mg KOH/g; above 0.</param>
/// <param name="High">The most, mg KOH/g; not below the least.</param>
public sealed record SaponificationValue(decimal Low, decimal High)
{
    /// <summary>The middle of the range, mg KOH/g.</summary>
    public decimal Middle => (Low + High) / 2m;

    /// <summary>Reads <c>248-265</c> or <c>197.2</c>.</summary>
    public static Parsed<SaponificationValue> Parse(string written)
    {
        var ends = written.Split('-').Select(Number).ToArray();
        return ends switch
        {
            [{ } only] => Parsed<SaponificationValue>.Of(new(only, only)),
            [{ } low, { } high] when low <= high => Parsed<SaponificationValue>.Of(new(low, high)),
            _ => Parsed<SaponificationValue>.Refused("substances.not-a-saponification-value", ("written", written)),
        };
    }

    private static decimal? Number(string text) =>
        PlainFigure.Read(text.Trim()) is > 0 and var value
            ? value
            : null;
}
