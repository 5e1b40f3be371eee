using LabelForge.Print.Arrangements;
using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Lettering;

namespace LabelForge.Print.Fitting;

/// <summary>
/// A panel that a look fills: an edge of a band with the ornament, or with a plate that bears words reversed out, and symbols below it
/// on the stock. Where the words have no room so, the panel stays plain.
/// </summary>
internal static class PlatePanel
{
    private const double Inside = 1.6 * 72 / 25.4;
    private const double BelowPlate = 1.6 * 72 / 25.4;
    private const double LowestPlate = 8 * 72 / 25.4;

    /// <summary>The panel filled, or null where it is not to be, or has no room for its words so.</summary>
    public static (Arrangement Words, IEnumerable<PlacedDrawing> Drawings)? Try(DesignPanel panel, LabelDesign design,
        IReadOnlyList<PanelItem> items, double clearHeights)
    {
        if (RoomFor(panel, design, items, clearHeights) is not { } room || design.Look is not { Ornament: { } ornament } look
            || (room.Words.Count > 0 && panel.Fill == PanelFill.Ornament))
            return null;
        var padding = Points.Of(panel.Padding);
        var placed = new List<ArrangedItem>();
        if (room.Words.Count > 0)
        {
            if (room.Arranger.Step(room.Words, look.Backs.GetValueOrDefault(panel.Id)?.Step) is not { } step)
                return null;
            var to = FrontFace.Rim + Inside - padding;
            placed.AddRange(room.Arranger.Arrange(room.Words, step).Items.Select(i => i with { X = i.X + to, Top = i.Top + to }));
        }
        var (width, foot) = (Points.Of(panel.Width), Points.Of(panel.Height) - FrontFace.Rim);
        foreach (var symbol in Enumerable.Reverse(room.Symbols))
        {
            foot -= symbol.FixedHeight;
            placed.Add(new ArrangedItem(symbol, null, (width - symbol.FixedWidth) / 2 - padding, symbol.FixedWidth, foot - padding,
                symbol.FixedHeight));
            foot -= BelowPlate;
        }
        var (plate, drawn) = BackStrip.Drawn(look, ornament, Points.Of(panel.X) + FrontFace.Rim, Points.Of(panel.Y) + FrontFace.Rim,
            width - 2 * FrontFace.Rim, room.Plate);
        return (new Arrangement(placed, 0, null, 0) { On = (look.Palette.OnPlate, look.Palette.Plate) },
            room.Words.Count > 0 ? [plate] : [plate, drawn]);
    }

    /// <summary>The room that the plate has; null where the panel has no fill, or is too small for it.</summary>
    internal static Room? RoomFor(DesignPanel panel, LabelDesign design, IReadOnlyList<PanelItem> items, double clearHeights)
    {
        if (panel.Fill == PanelFill.None || design.Round || design.Look?.Ornament is null)
            return null;
        IReadOnlyList<PanelItem> symbols = [.. items.Where(i => i.Text is null)];
        var (width, height) = (Points.Of(panel.Width) - 2 * FrontFace.Rim,
            Points.Of(panel.Height) - 2 * FrontFace.Rim - symbols.Sum(s => s.FixedHeight + BelowPlate));
        return height < LowestPlate || width < LowestPlate || symbols.Any(s => s.FixedWidth > Points.Of(panel.Width))
            ? null
            : new Room(new PanelArranger(panel, width - 2 * Inside, height - 2 * Inside, clearHeights),
                [.. items.Where(i => i.Text is not null)], symbols, height);
    }

    /// <summary>What a plate has room for; its height in points.</summary>
    internal sealed record Room(PanelArranger Arranger, IReadOnlyList<PanelItem> Words, IReadOnlyList<PanelItem> Symbols, double Plate);
}
