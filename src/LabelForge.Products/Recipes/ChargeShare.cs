namespace LabelForge.Recipes;

/// <summary>
/// A part of all that was weighed in, by mass. What part of the finished product that is depends on what left the batch:
/// only <c>FinishedProduct</c> tells.
/// </summary>
/// <param name="Fraction">From 0 to 1.</param>
public readonly record struct ChargeShare(decimal Fraction) : IComparable<ChargeShare>
{
    /// <summary>All of it.</summary>
    public static ChargeShare Whole { get; } = new(1);

    /// <summary>In percent, from 0 to 100.</summary>
    public decimal Percent => Fraction * 100;

    /// <summary>The two together.</summary>
    public static ChargeShare operator +(ChargeShare one, ChargeShare other) => new(one.Fraction + other.Fraction);

    /// <summary>A part of it.</summary>
    public static ChargeShare operator *(ChargeShare whole, decimal part) => new(whole.Fraction * part);

    /// <inheritdoc/>
    public int CompareTo(ChargeShare other) => Fraction.CompareTo(other.Fraction);
}
