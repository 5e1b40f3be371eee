namespace LabelForge.Composition;

/// <summary>The figure that the proof rests on beside what it is given.</summary>
public static class CompositionLimits
{
    /// <summary>
    /// A difference no greater than this, as a fraction of the product, counts as none. Decimal division is good to
    /// about 1e-28, and no balance tells a billionth of a milligram in a kilogram, so it covers rounding and nothing else.
    /// </summary>
    public const decimal Tolerance = 1e-15m;
}
