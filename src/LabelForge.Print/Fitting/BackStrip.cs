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
    private const double BandGap = 2.6 * PointsPerMillimetre;
    private const double LeastBand = 8 * PointsPerMillimetre;
    private const double HighestBand = 0.6;
    private const double WidestStrip = 0.3;
    private const double NarrowestText = 38 * PointsPerMillimetre;

    // Words are not pressed to their least for the strip's sake.
    internal const double LeastStep = 0.3;

    /// <summary>The back with its strip, or null where it has no room for one, or is not to have one.</summary>
    public static (Arrangement Words, IEnumerable<PlacedDrawing> Drawings)? Try(DesignPanel panel, LabelDesign design,
        IReadOnlyList<PanelItem> items, double clearHeights, BackSetting? held)
    {
        if (held is not { Strip: true } || RoomFor(panel, design, items, clearHeights, held.Turned) is not { } room
            || design.Look is not { Ornament: { } ornament } look
            || room.Arranger.Step(room.Words, held.Step) is not { } step)
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
        if (tall < LeastHeight)
            return (new Arrangement(placed, 0, null, 0), []);
        var (x, y) = (Points.Of(panel.X) + padding + width - strip, Points.Of(panel.Y) + padding);
        var (plate, drawn) = Drawn(look, ornament, x, y, strip, tall);
        return (new Arrangement(placed, 0, null, 0), [plate, drawn]);
    }

    /// <summary>How high a band of the ornament stands in the room that words leave on a back; 0 where it is too low.</summary>
    internal static double BandHeight(DesignPanel panel, LabelDesign design, Arrangement words)
    {
        var tall = words.Hole.Height - GapOver(words) - GapUnder(panel, words);
        return design.Look?.Ornament is null || design.Round || tall < LeastBand ? 0
            : Math.Min(tall, HighestBand * (Points.Of(panel.Width) - 2 * Points.Of(panel.Padding)));
    }

    // Next to words there is air; at the head or the foot of the panel it ends where words would.
    private static double GapOver(Arrangement words) => words.Hole.Top > 0.01 ? BandGap : 0;

    private static double GapUnder(DesignPanel panel, Arrangement words) =>
        words.Hole.Top + words.Hole.Height < Points.Of(panel.Height) - 2 * Points.Of(panel.Padding) - 0.01 ? BandGap : 0;

    /// <summary>A band of the ornament in the room that words leave on a back without a strip; null for none.</summary>
    /// <param name="panel">The back.</param>
    /// <param name="design">The design, in its look.</param>
    /// <param name="words">The words as they are set.</param>
    /// <param name="most">The most that the range has room for; null where the label stands alone.</param>
    internal static (PlacedDrawing Plate, PlacedDrawing Ornament)? Band(DesignPanel panel, LabelDesign design, Arrangement words,
        double? most)
    {
        if (Math.Min(BandHeight(panel, design, words), most ?? double.PositiveInfinity) is not (> 0 and var tall)
            || design.Look is not { Ornament: { } ornament } look)
            return null;
        var padding = Points.Of(panel.Padding);
        var (over, under, left) = (GapOver(words), GapUnder(panel, words), words.Hole.Height - tall);
        var down = over == 0 ? 0 : under == 0 ? left : left / 2;
        return Drawn(look, ornament, Points.Of(panel.X) + padding, Points.Of(panel.Y) + padding + words.Hole.Top + down,
            Points.Of(panel.Width) - 2 * padding, tall);
    }

    // The ornament on a plate of its own.
    internal static (PlacedDrawing Plate, PlacedDrawing Ornament) Drawn(Look look, OrnamentChoice ornament, double x, double y,
        double wide, double tall)
    {
        var (w, h) = (wide / PointsPerMillimetre, tall / PointsPerMillimetre);
        var outline = Outlines.Rectangle(0, 0, w, h, 0.8);
        var palette = look.Palette;
        ImmutableArray<DrawnPath> paths =
        [
            .. ornament.Family.Draw(w, h, ornament.Seed + "/back", ornament.Density, ornament.Weight).Paths
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
        new(what, outline, x, y, PointsPerMillimetre) { Box = (x, y, wide, tall), IsGround = ground };
        return (At([new DrawnPath(outline, palette.Plate, null, 0)], true), At(paths, false));
    }

    /// <summary>The room that a strip leaves a back's words; null where the panel is too small for one.</summary>
    /// <param name="panel">The back.</param>
    /// <param name="design">The design, in its look.</param>
    /// <param name="items">What stands on it.</param>
    /// <param name="clearHeights">Clear space of a net quantity, in heights of its capitals.</param>
    /// <param name="turned">Whether codes too wide for the strip are turned into it; else they stay with the words.</param>
    internal static Room? RoomFor(DesignPanel panel, LabelDesign design, IReadOnlyList<PanelItem> items, double clearHeights,
        bool turned = false)
    {
        if (design.Look?.Ornament is null || design.Round)
            return null;
        var padding = Points.Of(panel.Padding);
        var (width, height) = (Points.Of(panel.Width) - 2 * padding, Points.Of(panel.Height) - 2 * padding);
        var widest = width * WidestStrip;
        var symbols = items.Where(i => i is { Block: not null, Caption: null }).ToList();
        var wide = symbols.Where(s => s.FixedWidth > widest).ToList();
        if (turned && (wide.Count == 0 || wide.Any(s => s.FixedHeight > widest || s.FixedWidth > height)))
            return null;
        List<PanelItem> codes = [.. symbols.Where(s => turned || !wide.Contains(s)).Select(s => wide.Contains(s) ? s.Turned() : s)];
        var strip = codes.Select(c => c.FixedWidth).Append(LeastWidth).Max();
        var text = width - strip - Gutter;
        var tall = height - codes.Sum(c => c.FixedHeight + Gutter / 2);
        if (text < NarrowestText || strip > widest || tall < (turned ? -Gutter / 2 : LeastHeight))
            return null;
        IReadOnlyList<PanelItem> words = [.. items.Where(i => !symbols.Contains(i) || (!turned && wide.Contains(i)))];
        return new Room(new PanelArranger(panel, text, height, clearHeights), words, codes, strip, tall);
    }

    /// <summary>What a back has room for beside a strip; widths and heights in points.</summary>
    internal sealed record Room(PanelArranger Arranger, IReadOnlyList<PanelItem> Words, IReadOnlyList<PanelItem> Codes, double Strip,
        double Tall);
}
