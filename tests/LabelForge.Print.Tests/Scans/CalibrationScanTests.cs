using LabelForge.Print.Drawing;
using LabelForge.Print.Output;
using LabelForge.Print.Scans;
using LabelForge.Print.Sheets;

namespace LabelForge.Print.Tests.Scans;

/// <summary>Test pages printed, laid askew, blurred and seen through noise: what was done to the
/// print is found again, with the error that docs/printing.md states.</summary>
public class CalibrationScanTests
{
    // As stated in docs/printing.md.
    private const double StretchError = 0.1;
    private const double NudgeError = 0.25;

    private static readonly PaperCamera Plain = new() { Shrink = (0.985, 0.99), ShiftMm = (1.4, -0.8) };

    public static TheoryData<string, string> Pictures =>
        [.. Ways.Keys.Select(w => (w, "us-letter-10-2x4in")), ("all at once", "a4-8-99.1x67.7mm"),
            ("lying on its side", "a4-8-99.1x67.7mm")];

    private static Dictionary<string, PaperCamera> Ways { get; } = new()
    {
        ["as it is"] = Plain,
        ["one percent too small"] = Plain with { Shrink = (0.99, 0.99) },
        ["four percent too small"] = Plain with { Shrink = (0.962, 0.962), ShiftMm = (4.1, 5.3) },
        ["blurred"] = Plain with { BlurDots = 2 },
        ["noisy"] = Plain with { Noise = 22 },
        ["laid askew"] = Plain with { TurnDegrees = 3.5 },
        ["upside down"] = Plain with { TurnDegrees = 181 },
        ["lying on its side"] = Plain with { TurnDegrees = 90.7, MarginMm = 60 },
        ["seen from one side"] = Plain with { Tilt = 0.12, MarginMm = 25 },
        ["low on ink"] = Plain with { Ink = 0.4 },
        ["all at once"] = Plain with { BlurDots = 1.4f, Noise = 14, TurnDegrees = -2.3, Tilt = -0.08, Ink = 0.6, MarginMm = 25 },
    };

    [Theory, MemberData(nameof(Pictures))]
    public void What_a_printer_did_is_found_in_a_picture_of_its_page(string way, string id)
    {
        var (stock, camera) = (LabelStock.Load(id), Ways[way]);
        foreach (var used in new[] { default, new Registration(0.5m, -0.3m, 0.4m, 0.2m) })
        {
            var found = Taken(camera, stock, used);
            Assert.True(found.IsValue, $"{found.Wrong} {found.Write}");
            Assert.True(found.Value.ByEdges);
            Assert.Equal(id, found.Value.Stock.Id);
            Assert.Equal(used, found.Value.Used);
            // What has to be sent so that the printer's shrinking and shifting leave it in its place.
            Assert.Equal(100 * (1 / camera.Shrink.X - 1), (double)found.Value.Needed.StretchXPercent, StretchError);
            Assert.Equal(100 * (1 / camera.Shrink.Y - 1), (double)found.Value.Needed.StretchYPercent, StretchError);
            Assert.Equal(-camera.ShiftMm.X / camera.Shrink.X, (double)found.Value.Needed.NudgeXMm, NudgeError);
            Assert.Equal(-camera.ShiftMm.Y / camera.Shrink.Y, (double)found.Value.Needed.NudgeYMm, NudgeError);
        }
    }

    [Fact]
    public void Printed_again_as_was_found_the_page_needs_nothing_more()
    {
        var stock = LabelStock.Load("us-letter-10-2x4in");
        var needed = Taken(Plain, stock, default).Value!.Needed;
        var again = Taken(Plain, stock, needed).Value!.Needed;
        Assert.Equal((double)needed.StretchXPercent, (double)again.StretchXPercent, 0.05);
        Assert.Equal((double)needed.NudgeYMm, (double)again.NudgeYMm, 0.1);
    }

    [Fact]
    public void Without_the_sheets_edges_the_scanners_dots_give_the_stretch_and_the_nudge_stays()
    {
        var stock = LabelStock.Load("us-letter-10-2x4in");
        var white = Plain with { Ground = new SkiaSharp.SKColor(247, 246, 242) };
        var seen = white.Scan(215.9, 279.4, default, Page(stock, default));
        Assert.Contains("edges", CalibrationScan.Read(seen, LabelStock.Load).Wrong);
        var found = CalibrationScan.Read(new ScannedPicture(seen.Width, seen.Height, seen.Grey, 200), LabelStock.Load).Value!;
        Assert.False(found.ByEdges);
        Assert.Equal(0, found.Needed.NudgeXMm);
        Assert.Equal(100 * (1 / 0.985 - 1), (double)found.Needed.StretchXPercent, StretchError);
    }

    [Fact]
    public void A_page_shrunk_to_fit_is_sent_back_to_the_print_window() =>
        Assert.Contains("actual size",
            Taken(Plain with { Shrink = (0.93, 0.93), ShiftMm = (7, 9) }, LabelStock.Load("us-letter-10-2x4in"), default).Write);

    [Fact]
    public void A_picture_of_something_else_is_refused() =>
        Assert.Contains("0 of the page's four codes",
            CalibrationScan.Read(Plain.Scan(215.9, 279.4, default, _ => { }), LabelStock.Load).Wrong);

    private static Measures.Parsed<CalibrationReading> Taken(PaperCamera camera, LabelStock stock, Registration used) =>
        CalibrationScan.Read(camera.Scan((double)stock.PageWidth.Millimetres, (double)stock.PageHeight.Millimetres, used,
            Page(stock, used)), LabelStock.Load);

    private static Action<SkiaSharp.SKCanvas> Page(LabelStock stock, Registration used)
    {
        var picture = CalibrationPage.Of(stock, new Printer("kitchen", used, BlankEdges.None));
        return canvas => PicturePainter.Paint(canvas, picture);
    }
}
