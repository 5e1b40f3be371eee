namespace LabelForge.Measures;

/// <summary>A volume, exact, never negative. The default value is no volume at all.</summary>
/// <remarks>
/// 1 US fl oz = 29.5735295625 mL exactly (NIST Handbook 44, Appendix C); a tablespoon is half of it and
/// a teaspoon a third of a tablespoon (same table).
/// </remarks>
public readonly record struct Volume : IComparable<Volume>
{
    /// <summary>Millilitres in a US fluid ounce, exact (NIST Handbook 44, Appendix C).</summary>
    public const decimal MillilitresPerFluidOunce = 29.5735295625m;

    /// <summary>US fluid ounces in a US gallon, of four quarts or eight pints (NIST Handbook 44, Appendix C).</summary>
    public const decimal FluidOuncesPerGallon = 128m;

    /// <summary>Millilitres in a US tablespoon: half a fluid ounce (NIST Handbook 44, Appendix C).</summary>
    public const decimal MillilitresPerTablespoon = 14.78676478125m;

    /// <summary>Millilitres in a US teaspoon: a third of a tablespoon (NIST Handbook 44, Appendix C).</summary>
    public const decimal MillilitresPerTeaspoon = 4.92892159375m;

    /// <summary>Drops to the millilitre where a material does not say otherwise: common practice.</summary>
    public const decimal DropsPerMillilitre = 20m;

    private Volume(decimal millilitres) => Millilitres = millilitres;

    /// <summary>The volume in millilitres.</summary>
    public decimal Millilitres { get; }

    /// <summary>The volume in US fluid ounces.</summary>
    public decimal FluidOunces => Millilitres / MillilitresPerFluidOunce;

    /// <summary>A volume from millilitres.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Less than zero.</exception>
    public static Volume FromMillilitres(decimal millilitres)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(millilitres);
        return new Volume(millilitres);
    }

    /// <summary>A volume from US fluid ounces.</summary>
    public static Volume FromFluidOunces(decimal fluidOunces) => FromMillilitres(fluidOunces * MillilitresPerFluidOunce);

    /// <inheritdoc/>
    public int CompareTo(Volume other) => Millilitres.CompareTo(other.Millilitres);

    /// <inheritdoc/>
    public override string ToString() => Invariant($"{Millilitres:0.####} mL");
}
