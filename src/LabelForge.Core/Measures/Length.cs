namespace LabelForge.Measures;

/// <summary>A length, exact, never negative. The default value is no length.</summary>
/// <remarks>1 in = 25.4 mm exactly (NIST Handbook 44, Appendix C); 1 point = 1/72 in, as PDF counts (ISO 32000-1, 8.3.2.3).</remarks>
public readonly record struct Length : IComparable<Length>
{
    /// <summary>Millimetres in an inch, exact (NIST Handbook 44, Appendix C).</summary>
    public const decimal MillimetresPerInch = 25.4m;

    private Length(decimal millimetres) => Millimetres = millimetres;

    /// <summary>The length in millimetres.</summary>
    public decimal Millimetres { get; }

    /// <summary>The length in inches.</summary>
    public decimal Inches => Millimetres / MillimetresPerInch;

    /// <summary>The length in points of 1/72 in.</summary>
    public decimal Points => Millimetres * 72m / MillimetresPerInch;

    /// <summary>A length from millimetres.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Less than zero.</exception>
    public static Length FromMillimetres(decimal millimetres)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(millimetres);
        return new Length(millimetres);
    }

    /// <summary>A length from inches.</summary>
    public static Length FromInches(decimal inches) => FromMillimetres(inches * MillimetresPerInch);

    /// <inheritdoc/>
    public int CompareTo(Length other) => Millimetres.CompareTo(other.Millimetres);

    /// <inheritdoc/>
    public override string ToString() => Invariant($"{Millimetres:0.####} mm");
}
