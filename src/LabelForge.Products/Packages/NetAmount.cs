namespace LabelForge.Quantities;

/// <summary>A system of measures.</summary>
public enum MeasureSystem
{
    /// <summary>Grams and millilitres.</summary>
    Metric,

    /// <summary>Avoirdupois ounces and US fluid ounces.</summary>
    Customary,
}

/// <summary>What a package holds: a mass or a volume, the system it was measured in, and how finely.</summary>
public sealed partial record NetAmount
{
    private NetAmount(Mass? mass, Volume? volume, MeasureSystem system, int? digits)
    {
        if (digits is { } d)
            ArgumentOutOfRangeException.ThrowIfLessThan(d, 1, nameof(digits));
        (Mass, Volume, System, Digits) = (mass, volume, system, digits);
    }

    /// <summary>The mass, where the amount is one.</summary>
    public Mass? Mass { get; }

    /// <summary>The volume, where the amount is one.</summary>
    public Volume? Volume { get; }

    /// <summary>The system in which it was measured; the figure of this system is the maker's own and not converted.</summary>
    public MeasureSystem System { get; }

    /// <summary>Significant digits of the measurement, at least 1; null where the figure is taken as exact.</summary>
    public int? Digits { get; }

    /// <summary>Grams, or millilitres.</summary>
    public decimal Metric => Mass?.Grams ?? Volume!.Value.Millilitres;

    /// <summary>Avoirdupois ounces, or US fluid ounces.</summary>
    public decimal Ounces => Mass?.Ounces ?? Volume!.Value.FluidOunces;

    /// <summary>An amount by mass.</summary>
    public static NetAmount Of(Mass mass, MeasureSystem system = MeasureSystem.Metric, int? digits = null) =>
        new(mass, null, system, digits);

    /// <summary>An amount by volume.</summary>
    public static NetAmount Of(Volume volume, MeasureSystem system = MeasureSystem.Metric, int? digits = null) =>
        new(null, volume, system, digits);

    /// <summary>
    /// Reads an amount as a maker writes it: <c>113 g</c>, <c>4 oz</c>, <c>8 fl oz</c>, <c>250 mL</c>. Every digit written
    /// counts as measured, from the first that is not zero, final zeros too; a common fraction is exact.
    /// </summary>
    public static Parsed<NetAmount> Parse(string text)
    {
        var parsed = Amount.Parse(text);
        if (!parsed.IsValue)
            return Parsed<NetAmount>.Refused(parsed.Problem);
        var amount = parsed.Value;
        int? digits = text.Contains('/') ? null : Figure().Match(text).Value.Replace(".", "").TrimStart('0').Length;
        return amount.Unit switch
        {
            AmountUnit.Gram or AmountUnit.Kilogram or AmountUnit.Milligram =>
                Parsed<NetAmount>.Of(Of(amount.AsMass(), MeasureSystem.Metric, digits)),
            AmountUnit.Ounce or AmountUnit.Pound => Parsed<NetAmount>.Of(Of(amount.AsMass(), MeasureSystem.Customary, digits)),
            AmountUnit.Millilitre or AmountUnit.Litre => Parsed<NetAmount>.Of(Of(amount.AsVolume(), MeasureSystem.Metric, digits)),
            AmountUnit.FluidOunce or AmountUnit.Pint or AmountUnit.Quart or AmountUnit.Gallon =>
                Parsed<NetAmount>.Of(Of(amount.AsVolume(), MeasureSystem.Customary, digits)),
            _ => Parsed<NetAmount>.Refused("package.not-a-measure", ("text", text.Trim())),
        };
    }

    [GeneratedRegex(@"[0-9]*\.?[0-9]+")]
    private static partial Regex Figure();
}
