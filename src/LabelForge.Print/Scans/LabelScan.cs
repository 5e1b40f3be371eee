using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Lettering;
using ZXing;
using ZXing.Common;

namespace LabelForge.Print.Scans;

/// <summary>An element of text as a scan shows it printed.</summary>
/// <param name="Role">What it says.</param>
/// <param name="Text">Its text.</param>
/// <param name="DrawnMm">The height of its letters as drawn, in millimetres.</param>
/// <param name="PrintedMm">Their height on the paper.</param>
/// <param name="FloorMm">What the rule asks for.</param>
/// <param name="Source">Where the rule stands.</param>
/// <param name="Contrast">Ink against ground by WCAG 2.2's formula, as the scanner sees both.</param>
public sealed record ScannedText(Role Role, string Text, double DrawnMm, double PrintedMm, double FloorMm, string Source, double Contrast)
{
    /// <summary>Whether the letters on the paper are as high as the rule asks, what a scan may err by allowed.</summary>
    public bool IsHighEnough => PrintedMm * (1 + LabelScan.HeightError) >= FloorMm;
}

/// <summary>A label's barcode as a scan shows it printed.</summary>
/// <param name="Says">What it is read as; null where it cannot be read.</param>
/// <param name="ModuleMm">The width of its modules as drawn.</param>
/// <param name="PrintedModuleMm">Their width on the paper.</param>
/// <param name="GrowthMm">By how much ink has spread beyond each edge; below zero where it falls short.</param>
public sealed record ScannedSymbol(string? Says, double ModuleMm, double PrintedModuleMm, double GrowthMm);

/// <summary>A printed label as a scan shows it.</summary>
/// <param name="WidePercent">How wide it came out, 100 as drawn.</param>
/// <param name="HighPercent">How high it came out.</param>
/// <param name="Texts">Its texts.</param>
/// <param name="Symbol">Its barcode; null where it has none.</param>
public sealed record LabelReading(double WidePercent, double HighPercent, ImmutableArray<ScannedText> Texts, ScannedSymbol? Symbol);

/// <summary>Finds a label on a scan of its print and measures it against what was asked.</summary>
public static class LabelScan
{
    /// <summary>Heights are found within this share of themselves on the pictures of the tests;
    /// docs/printing.md says which those are.</summary>
    public const double HeightError = 0.03;

    private const double Fine = 12;

    private const int SymbolBars = 20;

    /// <summary>Reads a scan.</summary>
    /// <param name="picture">The scan, its dots to the inch known.</param>
    /// <param name="label">The label that was printed.</param>
    public static Parsed<LabelReading> Read(ScannedPicture picture, LabelLayout label)
    {
        if (picture.DotsPerInch is not { } inch)
            return Parsed<LabelReading>.Refused("scan.no-resolution");
        var dots = inch / 25.4;
        var (width, height) = ((double)label.Design.Width.Millimetres, (double)label.Design.Height.Millimetres);
        if (LabelFinder.Find(picture, dots, per => GreyField.Of(label, per), width, height) is not { } pose)
            return Parsed<LabelReading>.Refused("scan.no-such-label");
        var per = Math.Min(Fine, dots);
        var (scan, drawn) = (GreyField.Of(picture, per, dots), GreyField.Of(label, per));
        return Parsed<LabelReading>.Of(new LabelReading(100 * pose.WideX, 100 * pose.HighY,
            [.. label.Texts.Where(t => IsStraight(label, t)).Select(t => Text(scan, drawn, pose, t))], Symbol(scan, drawn, pose, label)));
    }

    // What runs upwards or round a circle is not measured letter by letter.
    private static bool IsStraight(LabelLayout label, PlacedText text) =>
        label.Lines.Where(l => l.Role == text.Role).All(l => l is { Upright: false, Radius: 0 });

    private static ScannedText Text(GreyField scan, GreyField drawn, LabelPose pose, PlacedText text)
    {
        const double Around = 0.35;
        var (left, top) = ((double)text.X.Millimetres - Around, (double)text.Y.Millimetres - Around);
        var part = (left, top, left + (double)text.Width.Millimetres + 2 * Around, top + (double)text.Height.Millimetres + 2 * Around);
        var own = LabelFinder.Refined(scan, drawn, pose, part, wholePlane: false);
        // Where its letters say another thing than the label as a whole, they were not what was followed.
        own = Math.Abs(own.HighY / pose.HighY - 1) > 0.08 ? pose : own;
        var height = (double)text.LetterHeight.Millimetres;
        return new ScannedText(text.Role, text.Text, height, height * own.HighY, (double)text.RequiredFloor.Millimetres, text.Source,
            Contrast(scan, drawn, own, part));
    }

    // The middle of strokes against the ground beside them; of each, the half that blur has changed least.
    private static double Contrast(GreyField scan, GreyField drawn, LabelPose pose,
        (double Left, double Top, double Right, double Bottom) part)
    {
        var seen = Grid(drawn, part).Select(p => (p.Drawn, Seen: Seen(scan, pose, p.X, p.Y))).Where(p => p.Seen is not null)
            .Select(p => (p.Drawn, Seen: p.Seen!.Value)).ToList();
        if (seen.Count < 50)
            return 0;
        var (low, high) = (seen.Min(p => p.Drawn), seen.Max(p => p.Drawn));
        var dark = seen.Where(p => p.Drawn <= low + 0.1 * (high - low)).Select(p => p.Seen).Order().ToList();
        var light = seen.Where(p => p.Drawn >= high - 0.05 * (high - low)).Select(p => p.Seen).Order().ToList();
        // Letters are the fewer of the two.
        var lettersAreDark = dark.Count < light.Count;
        var (ink, ground) = lettersAreDark
            ? (dark[dark.Count / 4], light[light.Count / 2])
            : (light[3 * light.Count / 4], dark[dark.Count / 2]);
        return Colour.Contrast(Grey(ink), Grey(ground));
    }

    private static Colour Grey(double value) => (byte)Math.Clamp(Math.Round(value), 0, 255) is var g ? new Colour(g, g, g) : default;

    private static ScannedSymbol? Symbol(GreyField scan, GreyField drawn, LabelPose pose, LabelLayout label)
    {
        var bars = SymbolOf(label);
        if (bars.Count < SymbolBars)
            return null;
        var k = 1 / Points.OfMillimetres(1m);
        var (left, top, right, bottom) = (k * bars.Min(b => b.X), k * bars.Min(b => b.Y), k * bars.Max(b => b.X + b.Width),
            k * bars.Max(b => b.Y + b.Height));
        var module = k * bars.Min(b => Math.Min(b.Width, b.Height));
        var part = (left - 2 * module, top - 2 * module, right + 2 * module, bottom + 2 * module);
        var own = LabelFinder.Refined(scan, drawn, pose, part, wholePlane: false);
        own = Math.Abs(own.WideX / pose.WideX - 1) > 0.08 ? pose : own;
        return new ScannedSymbol(Says(scan, own, part, module), module, module * own.WideX, Growth(scan, drawn, own, part));
    }

    // Of the bars that stand near one another, the most: rules stand alone.
    private static IReadOnlyList<PlacedBar> SymbolOf(LabelLayout label)
    {
        var left = label.Bars.Where(b => b.Ink is null || b.Ink.Value.Luminance < 0.3).ToList();
        IReadOnlyList<PlacedBar> most = [];
        var near = Points.OfMillimetres(2m);
        while (left.Count > most.Count)
        {
            var group = new List<PlacedBar> { left[^1] };
            left.RemoveAt(left.Count - 1);
            for (var i = 0; i < group.Count; i++)
            {
                var from = group[i];
                bool IsNear(PlacedBar b) =>
                b.X < from.X + from.Width + near
                    && from.X < b.X + b.Width + near
                    && b.Y < from.Y + from.Height + near
                    && from.Y < b.Y + b.Height + near;
                group.AddRange(left.Where(IsNear));
                left.RemoveAll(IsNear);
            }
            most = group.Count > most.Count ? group : most;
        }
        return most;
    }

    // Blur takes from ink what it gives to the ground: the sum stays. What is darker than drawn,
    // over the length of all edges, is how far they moved.
    private static double Growth(GreyField scan, GreyField drawn, LabelPose pose,
        (double Left, double Top, double Right, double Bottom) part)
    {
        var points = Grid(drawn, part).Select(p => (p.Drawn, Seen: Seen(scan, pose, p.X, p.Y) ?? 255)).ToList();
        var (black, white) = (Low(points.Select(p => p.Seen)), High(points.Select(p => p.Seen)));
        // The symbol is drawn in the label's own ink on its own ground, so neither is black or white there either.
        var (drawnBlack, drawnWhite) = (Low(points.Select(p => p.Drawn)), High(points.Select(p => p.Drawn)));
        if (white - black < 20 || drawnWhite - drawnBlack < 20)
            return 0;
        var ink = points.Sum(p => 1 - Math.Clamp((p.Drawn - drawnBlack) / (drawnWhite - drawnBlack), 0, 1));
        var seen = points.Sum(p => 1 - Math.Clamp((p.Seen - black) / (white - black), 0, 1));
        var per = drawn.PerMillimetre;
        var (x0, x1, y0, y1) = ((int)(part.Left * per), (int)(part.Right * per), (int)(part.Top * per), (int)(part.Bottom * per));
        double edges = 0;
        for (var y = Math.Max(1, y0); y < Math.Min(drawn.Height, y1); y++)
        {
            for (var x = Math.Max(1, x0); x < Math.Min(drawn.Width, x1); x++)
                edges += (Math.Abs(drawn[x, y] - drawn[x - 1, y]) + Math.Abs(drawn[x, y] - drawn[x, y - 1])) / (drawnWhite - drawnBlack);
        }
        return edges < 1 ? 0 : (seen - ink) / edges / per * pose.WideX;

        static double Low(IEnumerable<double> all) => all.Order().ToList() is var sorted ? sorted[sorted.Count / 20] : 0;

        static double High(IEnumerable<double> all) => all.Order().ToList() is var sorted ? sorted[sorted.Count * 19 / 20] : 255;
    }

    private static string? Says(GreyField scan, LabelPose pose, (double Left, double Top, double Right, double Bottom) part, double module)
    {
        const double Per = 16;
        var around = 8 * module;
        // Bars that lie are stood up: the reader looks along rows.
        var lies = part.Bottom - part.Top > part.Right - part.Left + module;
        var (across, down) = ((part.Right - part.Left + 2 * around) * Per, (part.Bottom - part.Top + 2 * around) * Per);
        var (wide, high) = lies ? ((int)down, (int)across) : ((int)across, (int)down);
        var grey = new byte[wide * high];
        for (var y = 0; y < high; y++)
        {
            for (var x = 0; x < wide; x++)
            {
                var (right, below) = lies ? (y, wide - 1 - x) : (x, y);
                var (mmX, mmY) = (part.Left - around + (right + 0.5) / Per, part.Top - around + (below + 0.5) / Per);
                // Beyond the symbol's own quiet zone stands other ink.
                var inside = mmX > part.Left && mmX < part.Right && mmY > part.Top && mmY < part.Bottom;
                grey[y * wide + x] = (byte)(inside ? Seen(scan, pose, mmX, mmY) ?? 255 : 255);
            }
        }
        var reader = new MultiFormatReader
        {
            Hints = new Dictionary<DecodeHintType, object>
            {
                [DecodeHintType.TRY_HARDER] = true,
                [DecodeHintType.POSSIBLE_FORMATS] = new[] { BarcodeFormat.DATA_MATRIX, BarcodeFormat.CODE_128, BarcodeFormat.QR_CODE,
                BarcodeFormat.EAN_13 },
            },
        };
        var source = new RGBLuminanceSource(grey, wide, high, RGBLuminanceSource.BitmapFormat.Gray8);
        return new Binarizer[] { new HybridBinarizer(source), new GlobalHistogramBinarizer(source) }
            .Select(b => reader.decode(new BinaryBitmap(b))?.Text).FirstOrDefault(t => t is not null);
    }

    private static double? Seen(GreyField scan, LabelPose pose, double x, double y)
    {
        var (atX, atY) = pose.Apply(x, y);
        return scan.At(atX * scan.PerMillimetre, atY * scan.PerMillimetre)?.Value;
    }

    private static IEnumerable<(double X, double Y, double Drawn)> Grid(GreyField drawn,
        (double Left, double Top, double Right, double Bottom) part)
    {
        var per = drawn.PerMillimetre;
        for (var y = Math.Max(0, (int)(part.Top * per)); y < Math.Min(drawn.Height, part.Bottom * per); y++)
        {
            for (var x = Math.Max(0, (int)(part.Left * per)); x < Math.Min(drawn.Width, part.Right * per); x++)
                yield return ((x + 0.5) / per, (y + 0.5) / per, drawn[x, y]);
        }
    }
}
