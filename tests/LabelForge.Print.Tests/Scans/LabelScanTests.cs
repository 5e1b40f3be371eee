using LabelForge.Lots;
using LabelForge.Markets;
using LabelForge.Print.Barcodes;
using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Fitting;
using LabelForge.Print.Ornaments;
using LabelForge.Print.Scans;
using LabelForge.Print.Tests.Looks;
using SkiaSharp;

namespace LabelForge.Print.Tests.Scans;

/// <summary>Labels printed too small, pale, blurred, askew: what a scan of them shows is what was done to them.</summary>
public class LabelScanTests
{
    private static readonly LabelLayout Plain = LabelFitter.Fit(LabelDesign.Load("bar-2x4"), Samples.Bar, Code()).OrRefuse();

    private static readonly LabelLayout Looked = LabelFitter.Fit(LabelDesign.Load("bar-2x4")
        .In(FrontTests.Of("colour-block", "bookish", OrnamentFamily.All[4], null, 350)), FrontTests.Usual(Market.Us), Code()).OrRefuse();

    private static Dictionary<string, PaperCamera> Ways { get; } = new()
    {
        ["as it is"] = new() { Dpi = 300 },
        ["two percent too small"] = new() { Dpi = 300, Shrink = (0.98, 0.98), ShiftMm = (3, 2) },
        ["four percent too low"] = new() { Dpi = 300, Shrink = (1, 0.96), ShiftMm = (1, 4) },
        ["blurred"] = new() { Dpi = 300, BlurDots = 1f },
        ["noisy"] = new() { Dpi = 300, Noise = 16 },
        ["askew"] = new() { Dpi = 300, TurnDegrees = 2.2 },
        ["upside down"] = new() { Dpi = 300, TurnDegrees = 179 },
        ["low on ink"] = new() { Dpi = 300, Ink = 0.45 },
        ["all at once"] = new() { Dpi = 300, Shrink = (0.985, 0.98), BlurDots = 1, Noise = 8, TurnDegrees = 91.2, Ink = 0.7 },
    };

    // By turns a plain label and one with a look.
    public static TheoryData<string, bool> Scans => [.. Ways.Keys.Select((w, i) => (w, i % 2 == 1))];

    [Theory, MemberData(nameof(Scans))]
    public void What_became_of_a_label_is_measured_on_its_scan(string way, bool looked)
    {
        var (label, camera) = (looked ? Looked : Plain, Ways[way]);
        var found = Read(label, camera);
        Assert.True(found.IsValue, found.Wrong);
        Assert.Equal(100 * camera.Shrink.X, found.Value.WidePercent, 0.3);
        Assert.Equal(100 * camera.Shrink.Y, found.Value.HighPercent, 0.3);
        Assert.NotEmpty(found.Value.Texts);
        Assert.All(found.Value.Texts, t => Assert.Equal(1, t.PrintedMm / (t.DrawnMm * camera.Shrink.Y), LabelScan.HeightError));
        Assert.NotNull(found.Value.Symbol);
        Assert.Equal(camera.Shrink.X * found.Value.Symbol.ModuleMm, found.Value.Symbol.PrintedModuleMm, 0.01);
        Assert.Equal(0, found.Value.Symbol.GrowthMm, 0.03);
        Assert.Equal("26R25-01E", found.Value.Symbol.Says);
    }

    [Fact]
    public void Letters_shrunk_below_the_rule_are_said_to_be_too_low()
    {
        var texts = Read(Plain, new PaperCamera { Dpi = 300, Shrink = (0.93, 0.93), ShiftMm = (4, 4) }).Value!.Texts;
        Assert.Contains(texts, t => !t.IsHighEnough);
        Assert.All(Read(Plain, new PaperCamera { Dpi = 300 }).Value!.Texts, t => Assert.True(t.IsHighEnough, $"{t.Role}: {t.PrintedMm}"));
    }

    [Fact]
    public void Little_ink_is_little_contrast()
    {
        double Least(double ink) =>
        Read(Plain, new PaperCamera { Dpi = 300, Ink = ink }).Value!.Texts.Where(t => t.DrawnMm > 1.5).Min(t => t.Contrast);
        Assert.True(Least(1) > 7, $"{Least(1)}");
        Assert.True(Least(0.45) < 4.5, $"{Least(0.45)}");
    }

    [Fact]
    public void Spread_ink_is_measured_at_the_bars_edges()
    {
        // Every bar a twentieth of a millimetre wider on each side.
        var grown = Plain with { Bars = [.. Plain.Bars.Select(b => b with { X = b.X - 0.14, Width = b.Width + 0.28 })] };
        var dots = new PaperCamera { Dpi = 300 };
        var scan = dots.Scan(215.9, 279.4, default, canvas => LabelPainter.Paint(canvas, grown, 100, 120));
        var found = LabelScan.Read(new ScannedPicture(scan.Width, scan.Height, scan.Grey, 300), Plain).Value!;
        Assert.InRange(found.Symbol!.GrowthMm, 0.02, 0.07);
    }

    [Fact]
    public void A_label_that_is_not_there_is_not_found()
    {
        var scan = new PaperCamera { Dpi = 150 }.Scan(215.9, 279.4, default, canvas => LabelPainter.Paint(canvas, Looked, 100, 120));
        var found = LabelScan.Read(new ScannedPicture(scan.Width, scan.Height, scan.Grey, 150),
            LabelFitter.Fit(LabelDesign.Load("bar-front-2x2"), Samples.Bar with { ProductName = "Hayloft" }, null).OrRefuse());
        Assert.False(found.IsValue);
    }

    private static Measures.Parsed<LabelReading> Read(LabelLayout label, PaperCamera camera)
    {
        var scan = (camera with { MarginMm = camera.TurnDegrees is > 60 and < 120 ? 60 : 6 })
            .Scan(215.9, 279.4, default, canvas => LabelPainter.Paint(canvas, label, 100, 120));
        return LabelScan.Read(new ScannedPicture(scan.Width, scan.Height, scan.Grey, camera.Dpi), label);
    }

    private static InkBlock Code() => Barcode.Draw(BarcodeKind.Code128, "26R25-01E").OrRefuse();
}
