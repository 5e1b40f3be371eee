using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;

namespace LabelForge.Print.Arrangements;

/// <summary>A front to be arranged. Lengths in points from the label's top left corner.</summary>
/// <param name="Left">Its left edge.</param>
/// <param name="Top">Its top edge.</param>
/// <param name="Width">Its width.</param>
/// <param name="Height">Its height.</param>
/// <param name="Round">Whether it is a circle.</param>
/// <param name="Look">How it looks.</param>
/// <param name="Style">Its pair of types.</param>
/// <param name="ClearHeights">Clear space above and below the net quantity, in heights of its capitals.</param>
/// <param name="ClearBeside">Clear space at its sides, in widths of its N.</param>
internal sealed record FrontFace(double Left, double Top, double Width, double Height, bool Round, Look Look, DesignStyle Style,
    double ClearHeights, double ClearBeside)
{
    /// <summary>The product's own picture, which stands in the window; null for the look's ornament.</summary>
    public ArtBlock? Photo { get; init; }

    /// <summary>Whether there is anything to show in a window.</summary>
    public bool HasWindow => Look.Ornament is not null || Photo is not null;

    /// <summary>Whether its left side is the label's.</summary>
    public bool BeginsAtCut { get; init; } = true;

    /// <summary>Whether the panel at its left is filled with the ornament.</summary>
    public bool FollowsOrnament { get; init; }

    /// <summary>Whether its right side is the label's.</summary>
    public bool EndsAtCut { get; init; } = true;

    /// <summary>Plates stand so far inside the cut: no slivers where it is cut a hair off, and
    /// the rim of paper makes it look made.</summary>
    public static double Rim { get; } = 1.9 * 72 / 25.4;
}

/// <summary>Words at their place on a front.</summary>
internal sealed record FrontText(ImmutableArray<PlacedLine> Lines, PlacedText Report);

/// <summary>A picture of the maker's on a front; lengths in points.</summary>
/// <param name="Art">The picture.</param>
/// <param name="X">Its left edge.</param>
/// <param name="Y">Its top edge.</param>
/// <param name="Width">Its width.</param>
internal sealed record ArrangedPicture(ArtBlock Art, double X, double Y, double Width)
{
    /// <summary>Whether it fills the window, in the place of an ornament.</summary>
    public bool InWindow { get; init; }

    /// <summary>The ink of paths that take the label's; null for the label's own.</summary>
    public Colour? Ink { get; init; }

    /// <summary>What is cut off of it; null where nothing is.</summary>
    public PictureClip? Clip { get; init; }
}

/// <summary>A front arranged.</summary>
/// <param name="Texts">Its words.</param>
/// <param name="Drawn">Draws what stands under them, in painting order; sizes are tried without drawing.</param>
/// <param name="Pictures">The maker's pictures.</param>
/// <param name="Bars">Thin lines.</param>
/// <param name="NameToNet">How many times as high the name's letters are as the net quantity's;
/// infinite where there is none of them.</param>
internal sealed record ArrangedFront(
    ImmutableArray<FrontText> Texts, ImmutableArray<Func<PlacedDrawing>> Drawn, ImmutableArray<ArrangedPicture> Pictures,
    ImmutableArray<PlacedBar> Bars, double NameToNet)
{
    /// <summary>Whether the ornament or a picture stands in a window.</summary>
    public bool HasWindow { get; init; }

    /// <summary>Whether two lines of text stand at the ends of one row; null where there are none that might.</summary>
    public bool? Paired { get; init; }

    /// <summary>How badly lines are broken that would better stay whole; 0 where none is.</summary>
    public int Broken { get; init; }

    /// <summary>How far words were moved from where the arrangement has them, in points.</summary>
    public ImmutableDictionary<Role, (double X, double Y)> Moved { get; init; } = ImmutableDictionary<Role, (double X, double Y)>.Empty;

    /// <summary>What stands under the words.</summary>
    public IEnumerable<PlacedDrawing> Drawings => Drawn.Select(d => d());
}
