using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Lettering;
using LabelForge.Print.Ornaments;
using LabelForge.Print.Palettes;
using SkiaSharp;

namespace LabelForge.Print.Arrangements;

/// <summary>The plates, windows, rings and frames of a front, with their colours.</summary>
internal sealed class FrontDrawings(FrontFace face)
{
    private const double PointsPerMillimetre = 72 / 25.4;

    private readonly ImmutableArray<Func<PlacedDrawing>>.Builder _all = ImmutableArray.CreateBuilder<Func<PlacedDrawing>>();

    /// <summary>What draws them, in painting order.</summary>
    public ImmutableArray<Func<PlacedDrawing>> All => _all.ToImmutable();

    /// <summary>How much of each side the frame takes, in points.</summary>
    public double FrameDepth =>
        face.Look.Frame is { } frame
            ? FrontFace.Rim * 0.75 + (frame.Depth + 0.5) * PointsPerMillimetre - (face.Round ? 0 : FrontFace.Rim * 0.6)
            : 0;

    private Palette Palette => face.Look.Palette;

    public void Clear() => _all.Clear();

    /// <summary>The ink of words on a ground.</summary>
    public Colour InkOn(BoxGround ground, Role role) =>
        ground == BoxGround.Plate ? Palette.OnPlate : role == Role.Name ? Palette.Deep : Palette.Ink;

    /// <summary>A line of words in the ink of its ground.</summary>
    public PlacedLine Line(MeasuredText text, double x, double baseline, BoxGround ground, Role role) =>
        new(text, x, baseline, role) { Ink = InkOn(ground, role), Ground = ColourOf(ground) };

    /// <summary>The ground of a box, with the ornament on it where the arrangement wants it there.</summary>
    public void Ground(ArrangementBox box, double x, double y, double width, double height, BoxGround ground, bool behind)
    {
        if (box.Ground != BoxGround.None)
            _all.Add(() => Drawing(x, y, width, height, box,
                [new DrawnPath(Outline(box, width, height), ColourOf(ground), null, 0)]) with
            { IsGround = true });
        if (behind)
            Ornament(box, x, y, width, height, ground);
    }

    /// <summary>The ornament round what is set into a box's ground.</summary>
    public void Surrounding(ArrangementBox box, double x, double y, double width, double height,
        (double X, double Y, double Width, double Height) inner, bool disc, BoxGround ground)
    {
        if (face.Look.Ornament is not { } ornament)
            return;
        const double K = PointsPerMillimetre;
        _all.Add(() => Drawing(x, y, width, height, box,
            Coloured(Surround.Draw(ornament.Family, width / K, height / K,
            ((inner.X - x) / K, (inner.Y - y) / K, inner.Width / K, inner.Height / K), disc,
            (ornament.Seed, ornament.Density, ornament.Weight)), ground)));
    }

    /// <summary>The ink of a drawing in a window on a ground.</summary>
    public Colour InkOf(BoxGround ground) => ColourOf(OrnamentInk.First, ground);

    /// <summary>The outline of a window, which cuts off what is larger.</summary>
    public PictureClip Clip(ArrangementBox box, double x, double y, double width, double height) =>
        new(Outline(Shape(box, width, height), width, height, x, y), x, y, PointsPerMillimetre);

    /// <summary>A window with the ornament.</summary>
    public void Window(ArrangementBox box, double x, double y, double width, double height, BoxGround ground)
    {
        // A band without a ground runs over the cut, but not into a panel beside it.
        if (ground != BoxGround.Plate && box.Ground == BoxGround.None && x + width >= face.Left + face.Width - 0.5 && !face.EndsAtCut)
            width -= FrontFace.Rim;
        if (ground != BoxGround.Plate && box.Ground == BoxGround.None && x <= face.Left + 0.5 && !face.BeginsAtCut)
            (x, width) = (x + FrontFace.Rim, width - FrontFace.Rim);
        Ground(Shape(box, width, height), x, y, width, height, ground, behind: true);
    }

    // An arch lower than its own bow is a box.
    private static ArrangementBox Shape(ArrangementBox box, double width, double height) =>
        box.Shape == BoxShape.Arch && height < width / 2 + 2 * PointsPerMillimetre ? box with { Shape = BoxShape.Box } : box;

    /// <summary>A thin line inside a box's outline.</summary>
    public void Ring(ArrangementBox box, double x, double y, double width, double height, BoxGround ground)
    {
        var r = box.Ring;
        _all.Add(() => Drawing(x + r, y + r, width - 2 * r, height - 2 * r, box,
            [new DrawnPath(Outline(box, width - 2 * r, height - 2 * r), null, ground == BoxGround.Plate ? Palette.OnPlate : Palette.Deep,
                0.22)]) with
        { Clip = null });
    }

    /// <summary>The frame round the whole front.</summary>
    public void Frame()
    {
        var frame = face.Look.Frame!;
        var rim = FrontFace.Rim * 0.75;
        var (width, height) = (face.Width - 2 * rim, face.Height - 2 * rim);
        _all.Add(() => new PlacedDrawing(
            Coloured(frame.Draw(width / PointsPerMillimetre, height / PointsPerMillimetre, face.Round, face.Look.Ornament?.Seed ?? "", 1),
                BoxGround.Paper), null,
            face.Left + rim, face.Top + rim, PointsPerMillimetre)
        { Box = (face.Left + rim, face.Top + rim, width, height) });
    }

    private void Ornament(ArrangementBox box, double x, double y, double width, double height, BoxGround ground)
    {
        if (face.Look.Ornament is not { } ornament)
            return;
        _all.Add(() => Drawing(x, y, width, height, box,
            Coloured(ornament.Family.Draw(width / PointsPerMillimetre, height / PointsPerMillimetre, ornament.Seed, ornament.Density,
                ornament.Weight), ground)));
    }

    private PlacedDrawing Drawing(double x, double y, double width, double height, ArrangementBox box, ImmutableArray<DrawnPath> paths) =>
        new(paths, Outline(box, width, height, x, y), x, y, PointsPerMillimetre) { Box = (x, y, width, height) };

    private ImmutableArray<DrawnPath> Coloured(OrnamentDrawing drawing, BoxGround ground) =>
        [.. drawing.Paths
            .Select(p => p.Stroke > 0
                ? new DrawnPath(p.Data, null, ColourOf(p.Ink, ground), p.Stroke)
                : new DrawnPath(p.Data, ColourOf(p.Ink, ground), null, 0))];

    private Colour ColourOf(OrnamentInk ink, BoxGround ground) => ink switch
    {
        OrnamentInk.First => ground == BoxGround.Plate ? Palette.PlateFirst : Palette.Deep,
        OrnamentInk.Second => ground == BoxGround.Plate ? Palette.PlateSecond : Palette.Accent,
        _ => ColourOf(ground),
    };

    private Colour ColourOf(BoxGround ground) => ground switch
    {
        BoxGround.Plate => Palette.Plate,
        BoxGround.Tint => Palette.Tint,
        _ => Palette.Paper,
    };

    private static string Common(string one, string other)
    {
        using var first = SKPath.ParseSvgPathData(one);
        using var second = SKPath.ParseSvgPathData(other);
        using var common = first.Op(second, SKPathOp.Intersect);
        return common is null || common.IsEmpty ? Outlines.Rectangle(0, 0, 0.01, 0.01) : common.ToSvgPathData();
    }

    // In millimetres from the box's own corner. What is cut by the round label's rim takes that rim's circle from the face.
    private string Outline(ArrangementBox box, double width, double height, double x = double.NaN, double y = double.NaN)
    {
        var (w, h, c) = (width / PointsPerMillimetre, height / PointsPerMillimetre, box.Corner / PointsPerMillimetre);
        switch (box.Shape)
        {
            case BoxShape.Disc:
                return Outlines.Circle(new Spot(w / 2, h / 2), Math.Min(w, h) / 2);
            case BoxShape.Oval:
                return Outlines.Ellipse(new Spot(w / 2, h / 2), w / 2, h / 2, 0);
            case BoxShape.Arch:
                var r = w / 2;
                return $"M0 {Outlines.Number(h)}V{Outlines.Number(r)}A{Outlines.Number(r)} {Outlines.Number(r)} 0 0 1 {Outlines.Number(w)} {Outlines.Number(r)}V{Outlines.Number(h)}Z";
            case BoxShape.Dome:
                return $"M0 {Outlines.Number(h)}A{Outlines.Number(w / 2)} {Outlines.Number(h)} 0 0 1 {Outlines.Number(w)} {Outlines.Number(h)}Z";
            case BoxShape.Round when !double.IsNaN(x):
                var inset = FrameDepth > 0 ? FrameDepth + 2 : FrontFace.Rim;
                var middle = new Spot((face.Left + face.Width / 2 - x) / PointsPerMillimetre,
                    (face.Top + face.Height / 2 - y) / PointsPerMillimetre);
                return Common(Outlines.Ellipse(middle, (face.Width / 2 - inset) / PointsPerMillimetre,
                    (face.Height / 2 - inset) / PointsPerMillimetre, 0), Outlines.Rectangle(0, 0, w, h));
            default:
                return Outlines.Rectangle(0, 0, w, h, Math.Min(c, Math.Min(w, h) / 2));
        }
    }
}
