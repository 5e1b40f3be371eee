namespace LabelForge.Composition;

/// <summary>The two figures the proof rests on.</summary>
public static class CompositionLimits
{
    /// <summary>
    /// The share at or under which ingredients may follow in any order: 1 %
    /// (21 CFR 701.3(f)(2); Regulation (EC) No 1223/2009 Art. 19(1)(g)).
    /// </summary>
    /// <remarks>Both laws count "1 percent or less" and "less than 1 %"; the proof uses "not more than 1 %".</remarks>
    public const decimal OnePercent = 0.01m;

    /// <summary>
    /// A difference no greater than this, as a fraction of the product, counts as none. Decimal division is good to
    /// about 1e-28, and no balance tells a billionth of a milligram in a kilogram, so it covers rounding and nothing else.
    /// </summary>
    public const decimal Tolerance = 1e-15m;
}
