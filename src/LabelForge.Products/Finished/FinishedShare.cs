using LabelForge.Recipes;

namespace LabelForge.Declarations;

/// <summary>
/// A part of the finished product, by mass. Only <see cref="FinishedProduct"/> makes one, from what was weighed in and what
/// left: limits, thresholds and declarations are of the finished product.
/// </summary>
public readonly record struct FinishedShare : IComparable<FinishedShare>
{
    internal FinishedShare(decimal fraction) => Fraction = fraction;

    /// <summary>A fraction, from 0. A material of which much left, as water, may stand above 1: it is what was weighed in of it.</summary>
    public decimal Fraction { get; }

    /// <summary>In percent.</summary>
    public decimal Percent => Fraction * 100;

    /// <inheritdoc/>
    public int CompareTo(FinishedShare other) => Fraction.CompareTo(other.Fraction);
}

/// <summary>A bought material and what was weighed in of it, as a share of the finished product.</summary>
/// <param name="Material">The material.</param>
/// <param name="Share">What was weighed in of it, over what the finished product weighs.</param>
public sealed record FinishedMaterial(Material Material, FinishedShare Share);
