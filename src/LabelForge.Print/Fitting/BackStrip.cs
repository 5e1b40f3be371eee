using LabelForge.Print.Arrangements;
using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Lettering;
using LabelForge.Print.Ornaments;

namespace LabelForge.Print.Fitting;

/// <summary>
/// A strip of the look's ornament at the right of a back, over the lot's barcode and as wide as it: it ties the back to the front
/// and fills what the corner beside the barcode would leave empty. Where the words want that room, there is none.
/// </summary>
internal static class BackStrip
{
    private const double PointsPerMillimetre = 72 / 25.4;
    private const double LeastWidth = 8.3 * PointsPerMillimetre;
    private const double Gutter = 3 * PointsPerMillimetre;
    private const double LeastHeight = 11 * PointsPerMillimetre;
    private const double WidestStrip = 0.3;
    private const double NarrowestText = 38 * PointsPerMillimetre;

    // Words are not pressed to their least for the strip's sake.
    internal const double LeastStep = 0.3;

    /// <summary>The back with its strip, or null where it has no room for one.</summary>
    public static (Arrangement Words, PlacedDrawing Plate, PlacedDrawing Ornament)? Try(DesignPanel panel, LabelDesign design,
        IReadOnlyList<PanelItem> items, double clearHeights)
    {
        if (RoomFor(panel, design, items, clearHeights) is not { } room || design.Look is not { Ornament: { } ornament } look)
            return null;
        var held = look.Backs.GetValueOrDefault(panel.Id);
        if (held is { Strip: false } || room.Arranger.Step(room.Words, held?.Step) is not { } step || step < LeastStep)
            return null;
        var found = room.Arranger.Arrange(room.Words, step);
        var (codes, strip, tall) = (room.Codes, room.Strip, room.Tall);
        var padding = Points.Of(panel.Padding);
        var (width, height) = (Points.Of(panel.Width) - 2 * padding, Points.Of(panel.Height) - 2 * padding);
        var placed = found.Items.ToList();
        var foot = height;
        foreach (var code in Enumerable.Reverse(codes))
        {
            placed.Add(new ArrangedItem(code, null, width - strip, strip, foot - code.FixedHeight, code.FixedHeight));
            foot -= code.FixedHeight + Gutter / 2;
        }
        var (x, y) = (Points.Of(panel.X) + padding + width - strip, Points.Of(panel.Y) + padding);
        var outline = Outlines.Rectangle(0, 0, strip / PointsPerMillimetre, tall / PointsPerMillimetre, 0.8);
        var palette = look.Palette;
        var drawn = ornament.Family.Draw(strip / PointsPerMillimetre, tall / PointsPerMillimetre, ornament.Seed + "/back",
            ornament.Density, ornament.Weight);
        ImmutableArray<DrawnPath> paths =
        [
            .. drawn.Paths
                .Select(p => (p,
                    Ink: p.Ink switch
                    {
                        OrnamentInk.First => palette.PlateFirst,
                        OrnamentInk.Second => palette.PlateSecond,
                        _ => palette.Plate,
                    }))
                .Select(t => t.p.Stroke > 0 ? new DrawnPath(t.p.Data, null, t.Ink, t.p.Stroke) : new DrawnPath(t.p.Data, t.Ink, null, 0)),
        ];
        PlacedDrawing At(ImmutableArray<DrawnPath> what, bool ground) =>
        new(what, outline, x, y, PointsPerMillimetre) { Box = (x, y, strip, tall), IsGround = ground };
        return (new Arrangement(placed, 0, null, 0), At([new DrawnPath(outline, palette.Plate, null, 0)], true), At(paths, false));
    }

    /// <summary>The room that a strip leaves a back's words; null where the panel is too small for one.</summary>
    internal static Room? RoomFor(DesignPanel panel, LabelDesign design, IReadOnlyList<PanelItem> items, double clearHeights)
    {
        if (design.Look?.Ornament is null || design.Round)
            return null;
        var padding = Points.Of(panel.Padding);
        var (width, height) = (Points.Of(panel.Width) - 2 * padding, Points.Of(panel.Height) - 2 * padding);
        // A code wider than a strip stays with the words, as a picture does; the strip is then as high as the panel.
        var codes = items.Where(i => i.Block is not null && i.Caption is null && i.FixedWidth <= width * WidestStrip).ToList();
        var strip = codes.Select(c => c.FixedWidth).Append(LeastWidth).Max();
        var text = width - strip - Gutter;
        var tall = height - codes.Sum(c => c.FixedHeight + Gutter / 2);
        if (text < NarrowestText || strip > width * WidestStrip || tall < LeastHeight)
            return null;
        var arranger = new PanelArranger(text, height, clearHeights);
        IReadOnlyList<PanelItem> words = [.. items.Except(codes)];
        return new Room(arranger, words, codes, strip, tall);
    }

    /// <summary>What a back has room for beside a strip; widths and heights in points.</summary>
    internal sealed record Room(PanelArranger Arranger, IReadOnlyList<PanelItem> Words, IReadOnlyList<PanelItem> Codes, double Strip,
        double Tall);
}
