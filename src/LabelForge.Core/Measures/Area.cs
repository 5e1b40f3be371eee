namespace LabelForge.Measures;

/// <summary>An area, never negative. The default value is no area.</summary>
public readonly record struct Area : IComparable<Area>
{
    private Area(decimal squareMillimetres) => SquareMillimetres = squareMillimetres;

    /// <summary>The area in square millimetres.</summary>
    public decimal SquareMillimetres { get; }

    /// <summary>The area in square centimetres.</summary>
    public decimal SquareCentimetres => SquareMillimetres / 100m;

    /// <summary>The area in square inches.</summary>
    public decimal SquareInches => SquareMillimetres / (Length.MillimetresPerInch * Length.MillimetresPerInch);

    /// <summary>An area from square millimetres.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Less than zero.</exception>
    public static Area FromSquareMillimetres(decimal value)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(value);
        return new Area(value);
    }

    /// <summary>A rectangle's area.</summary>
    public static Area OfRectangle(Length width, Length height) => FromSquareMillimetres(width.Millimetres * height.Millimetres);

    /// <inheritdoc/>
    public int CompareTo(Area other) => SquareMillimetres.CompareTo(other.SquareMillimetres);
}
