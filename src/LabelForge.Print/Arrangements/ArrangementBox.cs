using LabelForge.Print.Designs;

namespace LabelForge.Print.Arrangements;

/// <summary>What a box of an arrangement holds.</summary>
internal enum BoxKind
{
    /// <summary>Boxes one under the other.</summary>
    Rows,

    /// <summary>Boxes side by side.</summary>
    Columns,

    /// <summary>Two lines of text at the ends of one row, or one under the other where the row is too short for both.</summary>
    Pair,

    /// <summary>Words.</summary>
    Say,

    /// <summary>A window with the ornament.</summary>
    Ornament,

    /// <summary>The maker's logo or picture.</summary>
    Picture,

    /// <summary>Air.</summary>
    Space,

    /// <summary>A thin line.</summary>
    Rule,
}

/// <summary>What a box stands on.</summary>
internal enum BoxGround
{
    /// <summary>What its surroundings stand on.</summary>
    None,

    /// <summary>The stock.</summary>
    Paper,

    /// <summary>A light ground.</summary>
    Tint,

    /// <summary>A solid ground.</summary>
    Plate,
}

/// <summary>The outline of a box's ground or of a window.</summary>
internal enum BoxShape
{
    /// <summary>A rectangle, its corners perhaps rounded.</summary>
    Box,

    /// <summary>A rectangle with a half circle on top.</summary>
    Arch,

    /// <summary>A circle, as large as its box holds.</summary>
    Disc,

    /// <summary>An ellipse as wide and as high as its box.</summary>
    Oval,

    /// <summary>The upper half of an ellipse as wide as its box.</summary>
    Dome,

    /// <summary>The part of the round label that lies in its box.</summary>
    Round,
}

/// <summary>Which way words run.</summary>
internal enum Run
{
    /// <summary>Across.</summary>
    Across,

    /// <summary>Upwards.</summary>
    Up,

    /// <summary>Round the top of the disc that they stand in.</summary>
    Arc,
}

/// <summary>One box of an arrangement. Lengths in points.</summary>
internal sealed record ArrangementBox(BoxKind Kind)
{
    /// <summary>What it holds.</summary>
    public ImmutableArray<ArrangementBox> Inside { get; init; } = [];

    /// <summary>The words.</summary>
    public DesignElement? Element { get; init; }

    /// <summary>How lines stand.</summary>
    public Side Side { get; init; }

    /// <summary>Which way words run.</summary>
    public Run Run { get; init; }

    /// <summary>The space before it.</summary>
    public double Gap { get; init; }

    /// <summary>Kept clear inside: left, top, right, bottom.</summary>
    public (double Left, double Top, double Right, double Bottom) Padding { get; init; }

    /// <summary>Its height in rows, its width in columns; null for what its content takes.</summary>
    public double? Size { get; init; }

    /// <summary>Its share of what is left over; 0 for none.</summary>
    public double Share { get; init; }

    /// <summary>The width of a window; null for all there is.</summary>
    public double? Width { get; init; }

    /// <summary>A window lower than this looks like a fault, and is left out.</summary>
    public double Least { get; init; }

    /// <summary>The height that a window is given before letters grow.</summary>
    public double Want { get; init; }

    /// <summary>A window is not made higher than this.</summary>
    public double Most { get; init; } = double.PositiveInfinity;

    /// <summary>What it stands on.</summary>
    public BoxGround Ground { get; init; }

    /// <summary>The outline of its ground.</summary>
    public BoxShape Shape { get; init; }

    /// <summary>The radius of its corners.</summary>
    public double Corner { get; init; }

    /// <summary>Whether the ornament is drawn on its ground, behind what it holds.</summary>
    public bool Behind { get; init; }

    /// <summary>A thin ring or line inside its outline, so far in; 0 for none.</summary>
    public double Ring { get; init; }

    /// <summary>All boxes of the tree.</summary>
    public IEnumerable<ArrangementBox> All => Inside.SelectMany(b => b.All).Prepend(this);
}

/// <summary>How lines stand between the sides of their box.</summary>
internal enum Side
{
    /// <summary>Flush left.</summary>
    Left,

    /// <summary>Centred.</summary>
    Centre,

    /// <summary>Flush right.</summary>
    Right,
}
