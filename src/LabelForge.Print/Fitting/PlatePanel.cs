using LabelForge.Print.Arrangements;
using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Lettering;

namespace LabelForge.Print.Fitting;

/// <summary>
/// A panel that a look fills: an edge of a band with the ornament, or with a plate that bears words reversed out, and symbols on the
/// stock: below the plate, or, where they are wider than the panel, turned by a quarter at its side. Where the words have no room so,
/// the panel stays plain.
/// </summary>
internal static class PlatePanel
{
    private const double Inside = 1.6 * 72 / 25.4;
    private const double BelowPlate = 1.6 * 72 / 25.4;
    private const double LowestPlate = 8 * 72 / 25.4;

    /// <summary>The panel filled, or null where it is not to be, or has no room for its words so.</summary>
    public static (Arrangement Words, IEnumerable<PlacedDrawing> Drawings)? Try(DesignPanel panel, LabelDesign design,
        IReadOnlyList<PanelItem> items, double clearHeights, double? held)
    {
        if (RoomFor(panel, design, items, clearHeights) is not { } room || design.Look is not { Ornament: { } ornament } look
            || (room.Words.Count > 0 && panel.Fill == PanelFill.Ornament))
            return null;
        var padding = Points.Of(panel.Padding);
        var placed = new List<ArrangedItem>();
        if (room.Words.Count > 0)
        {
            if (room.Arranger.Step(room.Words, held) is not { } step)
                return null;
            var to = FrontFace.Rim + Inside - padding;
            placed.AddRange(room.Arranger.Arrange(room.Words, step).Items.Select(i => i with { X = i.X + to, Top = i.Top + to }));
        }
        var (width, foot) = (Points.Of(panel.Width), Points.Of(panel.Height) - FrontFace.Rim);
        var right = width - FrontFace.Rim;
        foreach (var symbol in room.Beside)
        {
            right -= symbol.FixedWidth;
            placed.Add(new ArrangedItem(symbol, null, right - padding, symbol.FixedWidth,
                (Points.Of(panel.Height) - symbol.FixedHeight) / 2 - padding, symbol.FixedHeight));
            right -= BelowPlate;
        }
        foreach (var symbol in Enumerable.Reverse(room.Below))
        {
            foot -= symbol.FixedHeight;
            placed.Add(new ArrangedItem(symbol, null, FrontFace.Rim + (room.Width - symbol.FixedWidth) / 2 - padding,
                symbol.FixedWidth, foot - padding, symbol.FixedHeight));
            foot -= BelowPlate;
        }
        var (plate, drawn) = BackStrip.Drawn(look, ornament, Points.Of(panel.X) + FrontFace.Rim, Points.Of(panel.Y) + FrontFace.Rim,
            room.Width, room.Plate);
        return (new Arrangement(placed, 0, null, 0) { On = (look.Palette.OnPlate, look.Palette.Plate) },
            room.Words.Count > 0 ? [plate] : [plate, drawn]);
    }

    /// <summary>The room that the plate has; null where the panel has no fill, or is too small for it.</summary>
    internal static Room? RoomFor(DesignPanel panel, LabelDesign design, IReadOnlyList<PanelItem> items, double clearHeights)
    {
        if (panel.Fill == PanelFill.None || design.Round || design.Look?.Ornament is null)
            return null;
        var symbols = items.Where(i => i.Text is null).ToList();
        List<PanelItem> beside = [.. symbols.Where(s => s is { Block: not null, Caption: null } && s.FixedWidth > Points.Of(panel.Width))
            .Select(s => s.Turned())];
        List<PanelItem> below = [.. symbols.Where(s => s.FixedWidth <= Points.Of(panel.Width))];
        var (width, height) = (Points.Of(panel.Width) - 2 * FrontFace.Rim - beside.Sum(s => s.FixedWidth + BelowPlate),
            Points.Of(panel.Height) - 2 * FrontFace.Rim - below.Sum(s => s.FixedHeight + BelowPlate));
        return height < LowestPlate || width < LowestPlate || beside.Count + below.Count < symbols.Count
            || beside.Any(s => s.FixedHeight > Points.Of(panel.Height) - 2 * FrontFace.Rim) || below.Any(s => s.FixedWidth > width)
            ? null
            : new Room(new PanelArranger(panel, width - 2 * Inside, height - 2 * Inside, clearHeights),
                [.. items.Where(i => i.Text is not null)], below, beside, width, height);
    }

    /// <summary>What a plate has room for; its width and height in points.</summary>
    /// <param name="Arranger">Sets the words.</param>
    /// <param name="Words">The words on it.</param>
    /// <param name="Below">Symbols below it.</param>
    /// <param name="Beside">Symbols at its right, turned.</param>
    /// <param name="Width">Its width.</param>
    /// <param name="Plate">Its height.</param>
    internal sealed record Room(PanelArranger Arranger, IReadOnlyList<PanelItem> Words, IReadOnlyList<PanelItem> Below,
        IReadOnlyList<PanelItem> Beside, double Width, double Plate);
}
