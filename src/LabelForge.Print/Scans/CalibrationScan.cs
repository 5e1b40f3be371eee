using LabelForge.Print.Output;
using LabelForge.Print.Sheets;
using ZXing;
using ZXing.Common;
using ZXing.QrCode;

namespace LabelForge.Print.Scans;

/// <summary>What a scan or a photo of a printed test page shows.</summary>
/// <param name="Stock">The stock of the page.</param>
/// <param name="Used">How the page was moved and stretched when it was printed.</param>
/// <param name="Needed">How prints have to be moved and stretched to land where the labels are.</param>
/// <param name="ByEdges">Whether the sheet's edges were seen; without them the nudge is not known and stays as it was.</param>
/// <param name="TurnDegrees">By how much the print stands turned on its sheet, clockwise; no
/// print can be turned back, the paper's guides can. 0 without edges.</param>
/// <param name="OffMm">How far the codes stand from where the fit puts them, root mean square:
/// what the paper and the picture left unsaid.</param>
public sealed record CalibrationReading(LabelStock Stock, Registration Used, Registration Needed, bool ByEdges, double TurnDegrees,
    double OffMm);

/// <summary>
/// Reads a scan or a photo of a printed test page: its four codes say where the print lies, the sheet's edges where it should lie.
/// The sheet's own size is the measure, so that no ruler and no known resolution is needed; without visible edges, the scanner's
/// resolution is, and then the stretch alone is found.
/// </summary>
public static class CalibrationScan
{
    // Farther from the fit than this, the page was not flat or is not the page it says.
    private const double MostOff = 0.6;

    /// <summary>Reads a picture.</summary>
    /// <param name="picture">The scan or photo.</param>
    /// <param name="stock">Finds the stock that the codes name.</param>
    /// <exception cref="InputException">The stock is not known.</exception>
    public static Parsed<CalibrationReading> Read(ScannedPicture picture, Func<string, LabelStock> stock)
    {
        var codes = Codes(picture);
        if (codes.Select(c => c.Code with { Corner = 0 }).Distinct().Count() > 1)
            return Refused("scan.several-pages");
        if (codes.Count < 3)
            return Refused("scan.codes-unread", ("count", codes.Count));
        var (page, used) = (stock(codes[0].Code.Stock), codes[0].Code.Used);
        // Where the codes were to be drawn, before the page was moved and stretched.
        var drawn = codes.SelectMany(c => c.Code.Finders(page)).ToList();
        var seen = codes.SelectMany(c => c.Finders).ToList();
        var toPicture = PlaneMap.Fit(drawn, seen);
        var (width, height) = ((double)page.PageWidth.Millimetres, (double)page.PageHeight.Millimetres);
        if (SheetEdges.Corners(picture, toPicture, width, height) is { } corners)
        {
            var toSheet = PlaneMap.Fit(corners, [(0, 0), (width, 0), (width, height), (0, height)]);
            var back = toPicture.Inverse();
            return Of(page, used, Fitted(drawn, [.. seen.Select(p => toSheet.Apply(back.Apply(p)))]), byEdges: true);
        }
        return picture.DotsPerInch is { } dots
            ? Of(page, used, Fitted(drawn, [.. seen.Select(p => (p.X * 25.4 / dots, p.Y * 25.4 / dots))]), byEdges: false)
            : Refused("scan.no-edges");
    }

    private static Parsed<CalibrationReading> Of(LabelStock page, Registration used, Fitting found, bool byEdges)
    {
        if (found.Off > MostOff)
            return Refused("scan.codes-off", ("off", $"{found.Off:0.0}"));
        // The printer makes of what it is sent: factor times place, and a shift.
        var (factorX, factorY) = (found.WideX / used.FactorX, found.HighY / used.FactorY);
        var (shiftX, shiftY) = (found.X - factorX * (double)used.NudgeXMm, found.Y - factorY * (double)used.NudgeYMm);
        var needed = new Registration(
            byEdges ? Rounded(-shiftX / factorX, 2) : used.NudgeXMm, byEdges ? Rounded(-shiftY / factorY, 2) : used.NudgeYMm,
            Rounded(100 * (1 / factorX - 1), 2), Rounded(100 * (1 / factorY - 1), 2));
        if (Math.Abs(needed.StretchXPercent) > Registration.MostStretchPercent
            || Math.Abs(needed.StretchYPercent) > Registration.MostStretchPercent)
            return Refused("scan.not-actual-size", ("value", $"{100 * factorX:0.0}"), ("value-2", $"{100 * factorY:0.0}"));
        return Math.Abs(needed.NudgeXMm) > Registration.MostNudgeMm || Math.Abs(needed.NudgeYMm) > Registration.MostNudgeMm
            ? Refused("scan.out-of-place", ("shift-x", $"{shiftX:0.0}"), ("shift-y", $"{shiftY:0.0}"), ("page", page.Id))
            : Parsed<CalibrationReading>.Of(new CalibrationReading(page, used, needed, byEdges, byEdges ? found.Turn : 0, found.Off));
    }

    private static decimal Rounded(double value, int places) => Math.Round((decimal)value, places);

    // Wide, high, shift and turn, by least squares: x' = a x + c y + e, y' = d x + b y + f.
    private static Fitting Fitted(List<(double X, double Y)> drawn, List<(double X, double Y)> lies)
    {
        var rows = drawn.Select(p => new[] { p.X, p.Y, 1.0 }).ToArray();
        var (x, y) = (Squares([.. lies.Select(p => p.X)]), Squares([.. lies.Select(p => p.Y)]));
        var off = Math.Sqrt(drawn.Zip(lies)
            .Average(p => Math.Pow(Along(x, p.First) - p.Second.X, 2) + Math.Pow(Along(y, p.First) - p.Second.Y, 2)));
        // Scanned turned, a page's own axes lie across the picture's: its lengths are what counts.
        return new Fitting(Math.Sqrt(x[0] * x[0] + y[0] * y[0]), Math.Sqrt(x[1] * x[1] + y[1] * y[1]), x[2], y[2],
            Math.Atan2(y[0] - x[1], x[0] + y[1]) * 180 / Math.PI, off);

        double[] Squares(double[] targets) => MathNet.Numerics.LinearRegression.MultipleRegression.QR(rows, targets, intercept: false);

        static double Along(double[] axis, (double X, double Y) p) => axis[0] * p.X + axis[1] * p.Y + axis[2];
    }

    private static List<(CalibrationCode Code, (double X, double Y)[] Finders)> Codes(ScannedPicture picture)
    {
        var found = new Dictionary<int, (CalibrationCode, (double, double)[])>();
        // A quarter and a little more at a time: each holds one code, whichever way the page lies.
        var (wide, high) = (picture.Width * 11 / 20, picture.Height * 11 / 20);
        foreach (var (left, top) in new[] { (0, 0), (picture.Width - wide, 0), (0, picture.Height - high),
            (picture.Width - wide, picture.Height - high) })
        {
            var (grey, width, height) = picture.Part(left, top, wide, high);
            if (Read(grey, width, height) is { } code)
                found.TryAdd(code.Code.Corner, (code.Code, [.. code.Points.Select(p => (left + p.X, top + p.Y))]));
        }
        return [.. found.OrderBy(f => f.Key).Select(f => f.Value)];
    }

    private static (CalibrationCode Code, (double X, double Y)[] Points)? Read(byte[] grey, int width, int height)
    {
        var source = new RGBLuminanceSource(grey, width, height, RGBLuminanceSource.BitmapFormat.Gray8);
        var hints = new Dictionary<DecodeHintType, object> { [DecodeHintType.TRY_HARDER] = true };
        foreach (var binarizer in new Binarizer[] { new HybridBinarizer(source), new GlobalHistogramBinarizer(source) })
        {
            if (new QRCodeReader().decode(new BinaryBitmap(binarizer), hints) is { ResultPoints.Length: >= 3 } result
                && CalibrationCode.Parse(result.Text) is { } code)
                return (code, [.. result.ResultPoints.Take(3).Select(p => ((double)p.X, (double)p.Y))]);
        }
        return null;
    }

    private static Parsed<CalibrationReading> Refused(string code, params ReadOnlySpan<(string Name, object? Value)> arguments) =>
        Parsed<CalibrationReading>.Refused(code, arguments);

    private sealed record Fitting(double WideX, double HighY, double X, double Y, double Turn, double Off);
}
