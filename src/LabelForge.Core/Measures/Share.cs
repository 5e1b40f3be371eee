namespace LabelForge.Measures;

/// <summary>A part of a whole by mass, from 0 to 1. The default value is nothing of it.</summary>
public readonly record struct Share : IComparable<Share>
{
    private Share(decimal fraction) => Fraction = fraction;

    /// <summary>Nothing of the whole.</summary>
    public static Share None => default;

    /// <summary>The whole.</summary>
    public static Share Whole { get; } = new(1m);

    /// <summary>The share as a fraction from 0 to 1.</summary>
    public decimal Fraction { get; }

    /// <summary>The share in percent, from 0 to 100.</summary>
    public decimal Percent => Fraction * 100m;

    /// <summary>A share from a fraction.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Below 0 or above 1.</exception>
    public static Share FromFraction(decimal fraction)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(fraction);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(fraction, 1m);
        return new Share(fraction);
    }

    /// <summary>A share from percent, 0 to 100.</summary>
    public static Share FromPercent(decimal percent) => FromFraction(percent / 100m);

    /// <inheritdoc/>
    public int CompareTo(Share other) => Fraction.CompareTo(other.Fraction);

    /// <inheritdoc/>
    public override string ToString() => Percent.ToString("0.######", CultureInfo.InvariantCulture) + " %";
}

/// <summary>A share known to lie between two bounds, both included; low is never above high.</summary>
public readonly record struct ShareRange
{
    /// <summary>A range of shares.</summary>
    /// <exception cref="ArgumentException">The low bound is above the high one.</exception>
    public ShareRange(Share low, Share high)
    {
        if (low.Fraction > high.Fraction)
            throw new ArgumentException($"A range runs from low to high, not from {low} to {high}.", nameof(low));
        Low = low;
        High = high;
    }

    /// <summary>No knowledge: anything from none to all.</summary>
    public static ShareRange Unknown { get; } = new(Share.None, Share.Whole);

    /// <summary>The least it can be.</summary>
    public Share Low { get; }

    /// <summary>The most it can be.</summary>
    public Share High { get; }

    /// <summary>Whether the two bounds are the same.</summary>
    public bool IsExact => Low == High;

    /// <inheritdoc/>
    public override string ToString() => IsExact ? Low.ToString() : $"{Low} to {High}";
}
