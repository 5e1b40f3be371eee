using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Lettering;

namespace LabelForge.Print.Fitting;

/// <summary>Something that takes room in a panel: text, a rule, or a barcode with its caption. Lengths in points.</summary>
internal sealed record PanelItem(DesignElement Element, ElementText? Text, InkBlock? Block, ArtBlock? Art = null)
{
    /// <summary>Between a barcode and its caption.</summary>
    public const double CaptionGap = 1.5;

    /// <summary>The caption as a line, or null.</summary>
    public MeasuredText? Caption { get; } = string.IsNullOrWhiteSpace(Block?.Caption) || !Element.Caption
        ? null
        : MeasuredText.WithLetterHeight(Element.Face, Block.Caption, Element.Least);

    /// <summary>The width it cannot go below; 0 for text, which wraps.</summary>
    public double FixedWidth =>
        Art is not null
            ? Points.Of(Element.RuleLength)
            : Block is null
            ? Points.Of(Element.RuleLength)
            : Math.Max(Points.Of(Block.Width), Caption?.Width ?? 0);

    /// <summary>The height of a rule or a barcode.</summary>
    public double FixedHeight => Art is not null ? FixedWidth * Art.UnitsHigh / Art.UnitsWide : Block is null
        ? Points.Of(Element.RuleThickness)
        : Points.Of(Block.Height) + (Caption is { } c ? CaptionGap + (c.Shape.Top + c.Shape.Bottom) * c.Size : 0);

    /// <summary>A code without words of its own, turned by a quarter.</summary>
    public PanelItem Turned() => this with { Block = Block!.Turned() };

    /// <summary>The name of its role.</summary>
    public string RoleName => Roles.NameOf(Element.Role);

    /// <summary>Whether it is what is read in the hand: such words of one panel grow to one height, the lowest first.</summary>
    public bool IsReading =>
        Text is not null && IsRead(Element.Role);

    /// <summary>Whether a part of a label is read in the hand.</summary>
    public static bool IsRead(Role role) => role is Role.Ingredients or Role.Directions or Role.Warnings or Role.Responsible
        or Role.Contact or Role.Origin or Role.BestBefore or Role.Lot;

    /// <summary>The letter height where words of a panel are to stand at one: as near to it as its own floor and most allow.</summary>
    public Length LetterHeightNear(decimal millimetres) =>
        Length.FromMillimetres(Math.Clamp(millimetres, Text!.Floor.Millimetres, Text.Most.Millimetres));

    /// <summary>The letter height at a step between its floor (0) and its most (1).</summary>
    public Length LetterHeightAt(double step) => Length.FromMillimetres(
        Text!.Floor.Millimetres + (Text.Most.Millimetres - Text.Floor.Millimetres) * (decimal)step);
}

/// <summary>An item at its place in a panel; points from the panel's inner top left corner.</summary>
internal sealed record ArrangedItem(PanelItem Item, SetText? Set, double X, double Width, double Top, double Height);

/// <summary>A panel's items at one step of enlargement.</summary>
/// <param name="Items">The items at their places.</param>
/// <param name="TooHigh">By how many points they are too high together; 0 or less where they fit.</param>
/// <param name="TooWide">The item that is too wide, or null.</param>
/// <param name="TooWideBy">By how many points.</param>
internal sealed record Arrangement(IReadOnlyList<ArrangedItem> Items, double TooHigh, PanelItem? TooWide, double TooWideBy)
{
    /// <summary>The ink of its words and what they stand on; null for the label's own.</summary>
    public (Colour Ink, Colour Ground)? On { get; init; }

    /// <summary>What is left empty over the foot when all gaps are as wide as looks well; points from the panel's inner top.</summary>
    public (double Top, double Height) Hole { get; init; }

    public bool Fits => TooWide is null && TooHigh <= 1e-6;
}
