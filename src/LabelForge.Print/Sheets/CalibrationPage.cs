using LabelForge.Print.Drawing;
using LabelForge.Print.Lettering;
using LabelForge.Print.Output;

namespace LabelForge.Print.Sheets;

/// <summary>A test page for a printer and a stock: rulers, the labels' outlines, crosshairs, and scales at the sheet's edges.</summary>
public static class CalibrationPage
{
    private const double Millimetre = 72 / 25.4;
    private const double Thin = 0.35;

    // Below this a page has no room for words and edge scales: it is a roll's, which has no edge out of reach. In millimetres.
    private const decimal RoomForWords = 140m;

    /// <summary>How long the rulers are: the whole centimetres that four fifths of the sheet's side hold, 10 mm at least.</summary>
    public static (Length Across, Length Down) Rulers(LabelStock stock) => (Ruler(stock.PageWidth), Ruler(stock.PageHeight));

    /// <summary>
    /// The stretch to use, from how long the rulers came out on paper when printed with a stretch in use: a ruler too
    /// short by a hundredth asks for a hundredth more.
    /// </summary>
    /// <param name="stock">The stock whose page was printed.</param>
    /// <param name="used">What the page was printed with.</param>
    /// <param name="acrossMm">How long the ruler across measures, in millimetres.</param>
    /// <param name="downMm">How long the ruler down measures.</param>
    /// <returns>Percent, rounded to a hundredth, or why the measures cannot be.</returns>
    public static Parsed<(decimal X, decimal Y)> StretchFor(LabelStock stock, Registration used, decimal acrossMm, decimal downMm)
    {
        var (across, down) = Rulers(stock);
        if (Away(acrossMm, across) || Away(downMm, down))
            return Parsed<(decimal, decimal)>.Refused("printer.rulers-differ", ("stock", stock.Id), ("across", across), ("down", down),
                ("across-mm", acrossMm), ("down-mm", downMm), ("most-stretch-percent", Registration.MostStretchPercent));
        return Parsed<(decimal, decimal)>.Of((Needed(used.StretchXPercent, across, acrossMm), Needed(used.StretchYPercent, down, downMm)));
    }

    /// <summary>Writes the page as a PDF, moved and stretched as the printer asks.</summary>
    /// <exception cref="InputException">The file cannot be written.</exception>
    public static void WritePdf(string path, LabelStock stock, Printer printer)
    {
        var info = new DocumentInfo($"Test page for {stock.Id}", DateTimeOffset.UnixEpoch);
        AtomicFile.Write(path, stream => PictureFile.WritePdf(stream, Of(stock, printer), info, printer.Registration));
    }

    /// <summary>The page as a picture, before it is moved and stretched.</summary>
    public static Picture Of(LabelStock stock, Printer printer)
    {
        var (width, height) = (Points.Of(stock.PageWidth), Points.Of(stock.PageHeight));
        var (across, down) = Rulers(stock);
        var strokes = ImmutableArray.CreateBuilder<Stroke>();
        var lines = ImmutableArray.CreateBuilder<PictureLine>();
        var (left, top) = ((width - Points.Of(across)) / 2, (height - Points.Of(down)) / 2);
        AddRuler(strokes, lines, across, at => (left + at, height / 2),
            (x, y, long_) => new Stroke(x, y - long_, x, y + long_, Thin, Tint.Black));
        AddRuler(strokes, lines, down, at => (width / 2, top + at),
            (x, y, long_) => new Stroke(x - long_, y, x + long_, y, Thin, Tint.Black));
        var roomy = Math.Min(stock.PageWidth.Millimetres, stock.PageHeight.Millimetres) >= RoomForWords;
        if (roomy)
        {
            AddEdgeScales(strokes, width, height);
            strokes.AddRange(CalibrationCode.Of(stock, printer.Registration).SelectMany(c => c.Ink(stock)));
        }
        foreach (var position in new[] { 1, stock.Columns, stock.PerSheet - stock.Columns + 1, stock.PerSheet }.Distinct())
            AddCrosshair(strokes, stock, position);
        if (roomy)
            AddWords(lines, Words(stock, printer, across, down), width / 2 + 8 * Millimetre, height / 2 + 8 * Millimetre);
        return new Picture(stock.PageWidth, stock.PageHeight)
        {
            Outlines = [.. StockDrawing.Outlines(stock, Thin, Tint.Grey)],
            Strokes = strokes.ToImmutable(),
            Lines = lines.ToImmutable(),
        };
    }

    private static bool Away(decimal measured, Length ruler) =>
        Math.Abs(measured / ruler.Millimetres - 1m) > Registration.MostStretchPercent / 100m;

    private static decimal Needed(decimal usedPercent, Length ruler, decimal measured) =>
        Math.Round(((1m + usedPercent / 100m) * ruler.Millimetres / measured - 1m) * 100m, 2);

    private static Length Ruler(Length side) => Length.FromMillimetres(Math.Max(10m, Math.Floor(side.Millimetres * 0.8m / 10m) * 10m));

    private static void AddRuler(ImmutableArray<Stroke>.Builder strokes, ImmutableArray<PictureLine>.Builder lines, Length length,
        Func<double, (double X, double Y)> place, Func<double, double, double, Stroke> tick)
    {
        var whole = (int)length.Millimetres;
        var (from, to) = (place(0), place(whole * Millimetre));
        strokes.Add(new Stroke(from.X, from.Y, to.X, to.Y, Thin, Tint.Black));
        for (var mm = 0; mm <= whole; mm++)
        {
            var (x, y) = place(mm * Millimetre);
            strokes.Add(tick(x, y, (mm % 10 == 0 ? 2.2 : mm % 5 == 0 ? 1.5 : 0.8) * Millimetre));
            // The middle is where the two rulers cross.
            if (mm % 10 == 0 && mm * 2 != whole)
            {
                var figure = Text(mm.ToString(CultureInfo.InvariantCulture), 6);
                var sideways = from.Y == to.Y;
                lines.Add(new PictureLine(figure, sideways ? x - figure.Width / 2 : x + 2.8 * Millimetre,
                    sideways ? y - 2.8 * Millimetre : y + 2));
            }
        }
    }

    // A line from the very edge inward at the middle of each side, with a tick each millimetre:
    // where it begins to show is what the printer can reach.
    private static void AddEdgeScales(ImmutableArray<Stroke>.Builder strokes, double width, double height)
    {
        foreach (var (x, y, dx, dy) in new[] { (0.0, height / 3, 1, 0), (width, height / 3, -1, 0), (width / 3, 0.0, 0, 1),
            (width / 3, height, 0, -1) })
        {
            strokes.Add(new Stroke(x, y, x + dx * 12 * Millimetre, y + dy * 12 * Millimetre, Thin, Tint.Black));
            for (var mm = 1; mm <= 12; mm++)
            {
                var (at, down, half) = (x + dx * mm * Millimetre, y + dy * mm * Millimetre, (mm % 5 == 0 ? 2.5 : 1.2) * Millimetre);
                strokes.Add(new Stroke(at - dy * half, down - dx * half, at + dy * half, down + dx * half, Thin, Tint.Black));
            }
        }
    }

    private static void AddCrosshair(ImmutableArray<Stroke>.Builder strokes, LabelStock stock, int position)
    {
        var corner = stock.CornerOf(position);
        var (x, y) = (Points.Of(corner.X) + Points.Of(stock.LabelWidth) / 2, Points.Of(corner.Y) + Points.Of(stock.LabelHeight) / 2);
        const double arm = 4 * Millimetre;
        strokes.Add(new Stroke(x - arm, y, x + arm, y, Thin, Tint.Black));
        strokes.Add(new Stroke(x, y - arm, x, y + arm, Thin, Tint.Black));
    }

    private static IEnumerable<string> Words(LabelStock stock, Printer printer, Length across, Length down) =>
    [
        $"Test page for {stock.Id}. {(printer.Id.Length == 0 ? "Printed as it is." : $"For {printer.Id}: {printer.Registration}.")}",
        "1. Print on plain paper at actual size, never \"fit to page\".",
        "2. Lay the page on something dark, scan it or take a photo from above, and give the picture:",
        "    labelforge calibrate --printer ... --scan PICTURE. It finds what 3 and 4 do by hand.",
        $"3. Or measure the rulers: {across.Millimetres:0} mm across and {down.Millimetres:0} mm down. Where they differ, tell",
        "    labelforge calibrate --stock ... --printer ... --ruler ACROSS,DOWN",
        "    what you measured, and print this page again.",
        "4. Hold the page and a label sheet together against the light. Where the outlines stand",
        "    off, measure how far the print has to move, right and down, and add it to the nudge:",
        "    labelforge calibrate --printer ... --nudge RIGHT,DOWN (millimetres; left and up with a minus).",
        "5. The scales at the edges count millimetres. Where the first ones are missing, write",
        "    that many under margins in printers/....yaml.",
    ];

    private static void AddWords(ImmutableArray<PictureLine>.Builder lines, IEnumerable<string> words, double x, double y)
    {
        foreach (var (text, i) in words.Select((w, i) => (w, i)))
            lines.Add(new PictureLine(Text(text, 7.5), x, y + i * 10));
    }

    private static MeasuredText Text(string text, double size) => new(BundledFaces.Regular, size, BundledFaces.Regular.Shape(text));
}
