namespace LabelForge.Measures;

/// <summary>A mass, exact, never negative. The default value is no mass at all.</summary>
/// <remarks>
/// 1 oz avoirdupois = 28.349523125 g and 1 lb = 453.59237 g, both exact:
/// NIST Handbook 44, Appendix C, General Tables of Units of Measurement.
/// </remarks>
public readonly record struct Mass : IComparable<Mass>
{
    /// <summary>Grams in an avoirdupois ounce, exact (NIST Handbook 44, Appendix C).</summary>
    public const decimal GramsPerOunce = 28.349523125m;

    /// <summary>Grams in an avoirdupois pound, exact (NIST Handbook 44, Appendix C).</summary>
    public const decimal GramsPerPound = 453.59237m;

    private Mass(decimal grams) => Grams = grams;

    /// <summary>The mass in grams.</summary>
    public decimal Grams { get; }

    /// <summary>The mass in avoirdupois ounces.</summary>
    public decimal Ounces => Grams / GramsPerOunce;

    /// <summary>A mass from grams.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Less than zero.</exception>
    public static Mass FromGrams(decimal grams)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(grams);
        return new Mass(grams);
    }

    /// <summary>A mass from avoirdupois ounces.</summary>
    public static Mass FromOunces(decimal ounces) => FromGrams(ounces * GramsPerOunce);

    /// <summary>A mass from avoirdupois pounds.</summary>
    public static Mass FromPounds(decimal pounds) => FromGrams(pounds * GramsPerPound);

    /// <summary>The two together.</summary>
    public static Mass operator +(Mass a, Mass b) => new(a.Grams + b.Grams);

    /// <summary>So many times as much.</summary>
    public static Mass operator *(Mass a, decimal factor) => FromGrams(a.Grams * factor);

    /// <summary>Whether the first is less.</summary>
    public static bool operator <(Mass a, Mass b) => a.Grams < b.Grams;

    /// <summary>Whether the first is more.</summary>
    public static bool operator >(Mass a, Mass b) => a.Grams > b.Grams;

    /// <summary>Whether the first is no more.</summary>
    public static bool operator <=(Mass a, Mass b) => a.Grams <= b.Grams;

    /// <summary>Whether the first is no less.</summary>
    public static bool operator >=(Mass a, Mass b) => a.Grams >= b.Grams;

    /// <inheritdoc/>
    public int CompareTo(Mass other) => Grams.CompareTo(other.Grams);

    /// <inheritdoc/>
    public override string ToString() => Invariant($"{Grams:0.####} g");
}
