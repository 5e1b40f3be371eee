using LabelForge.Lots;
using LabelForge.Measures;
using LabelForge.Print.Barcodes;
using LabelForge.Print.Drawing;

namespace LabelForge.Print.Tests.Barcodes;

/// <summary>Bars stand on whole printer dots, and quiet zones are blank.</summary>
public class BarcodeGeometryTests
{
    private static readonly Dictionary<BarcodeKind, string> Data = new()
    {
        [BarcodeKind.Code128] = "26R25-072",
        [BarcodeKind.Gs1Code128] = "(01)09521321000018(10)26R25-072",
        [BarcodeKind.Gs1DataMatrix] = "(01)09521321000018(11)261125(10)26R25-072",
        [BarcodeKind.Qr] = "https://id.example.com/01/09521321000018/10/26R25-072",
        [BarcodeKind.Ean13] = "9521321000018",
        [BarcodeKind.UpcA] = "614141123452",
    };

    public static TheoryData<BarcodeKind, int, decimal> Sizes
    {
        get
        {
            var sizes = new TheoryData<BarcodeKind, int, decimal>();
            foreach (var kind in Data.Keys)
            {
                foreach (var dpi in new[] { 300, 600 })
                {
                    foreach (var module in new[] { 0.25m, 0.33m, 0.508m })
                        sizes.Add(kind, dpi, module);
                }
            }

            return sizes;
        }
    }

    // Quiet zones in modules, left, right, above and below: ISO/IEC 15417; GS1 General Specifications 5.2.3.4 and 5.4;
    // ISO/IEC 16022; ISO/IEC 18004 (from memory). Widths: an EAN-13 or UPC-A has 95 modules (GS1 General Specifications 5.2.2).
    public static TheoryData<BarcodeKind, int, int, int> QuietZones => new()
    {
        { BarcodeKind.Code128, 10, 10, 0 },
        { BarcodeKind.Gs1Code128, 10, 10, 0 },
        { BarcodeKind.Ean13, 11, 7, 0 },
        { BarcodeKind.UpcA, 9, 9, 0 },
        { BarcodeKind.Gs1DataMatrix, 1, 1, 1 },
        { BarcodeKind.Qr, 4, 4, 4 },
    };

    [Theory]
    [MemberData(nameof(Sizes))]
    public void Every_edge_stands_on_a_whole_dot_and_no_module_is_narrower_than_asked(BarcodeKind kind, int dpi, decimal module)
    {
        var block = Draw(kind, dpi, module);
        var dots = block.Bars.SelectMany(bar => new[] { bar.XMm, bar.YMm, bar.WidthMm, bar.HeightMm })
            .Append(block.Width.Millimetres).Append(block.Height.Millimetres)
            .Select(mm => mm * dpi / 25.4m);
        Assert.All(dots, dot => Assert.True(Math.Abs(dot - Math.Round(dot)) < 1e-20m, $"{dot} dots"));

        var narrowest = block.Bars.Min(bar => bar.WidthMm);
        Assert.InRange(narrowest, module, module + 25.4m / dpi);
        Assert.All(block.Bars, bar => Assert.True(Math.Abs(bar.WidthMm / narrowest - Math.Round(bar.WidthMm / narrowest)) < 1e-20m));
    }

    [Theory]
    [MemberData(nameof(QuietZones))]
    public void The_quiet_zones_are_whole_and_blank(BarcodeKind kind, int left, int right, int around)
    {
        const int Dpi = 300;
        const int Dots = 3;
        var block = Draw(kind, Dpi, 0.254m);
        using var page = Decoders.Raster(block, Dpi);
        var inked = new List<(int X, int Y)>();
        for (var y = 0; y < page.Height; y++)
        {
            for (var x = 0; x < page.Width; x++)
            {
                if (page.GetPixel(x, y).Red < 128)
                    inked.Add((x, y));
            }
        }

        Assert.Equal(left * Dots, inked.Min(dot => dot.X));
        Assert.Equal(page.Width - right * Dots - 1, inked.Max(dot => dot.X));
        Assert.Equal(around * Dots, inked.Min(dot => dot.Y));
        Assert.Equal(page.Height - around * Dots - 1, inked.Max(dot => dot.Y));
    }

    [Theory]
    [InlineData(BarcodeKind.Ean13, 95 + 11 + 7)]
    [InlineData(BarcodeKind.UpcA, 95 + 9 + 9)]
    public void A_till_symbol_is_as_wide_as_the_standard_says(BarcodeKind kind, int modules) =>
        Assert.Equal(modules * 3, Math.Round(Draw(kind, 300, 0.254m).Width.Millimetres * 300 / 25.4m, 10));

    [Theory]
    [InlineData(300)]
    [InlineData(600)]
    public void No_two_rectangles_lie_on_one_another(int dpi)
    {
        foreach (var kind in Data.Keys)
        {
            var bars = Draw(kind, dpi, 0.33m).Bars;
            for (var i = 0; i < bars.Length; i++)
            {
                for (var j = i + 1; j < bars.Length; j++)
                    Assert.False(Overlap(bars[i], bars[j]), $"{kind}: {bars[i]} and {bars[j]}");
            }
        }
    }

    [Fact]
    public void Bars_are_as_high_as_asked()
    {
        var block = Barcode.Draw(BarcodeKind.Code128, "A1", new BarcodeOptions { Height = Length.FromMillimetres(25.4m) }).Value!;
        Assert.Equal(25.4m, block.Height.Millimetres);
        Assert.All(block.Bars, bar => Assert.Equal(25.4m, bar.HeightMm));
    }

    private static InkBlock Draw(BarcodeKind kind, int dpi, decimal module) =>
        Barcode.Draw(kind, Data[kind], new BarcodeOptions { Dpi = dpi, LeastModuleWidth = Length.FromMillimetres(module) }).Value!;

    private static bool Overlap(InkRectangle a, InkRectangle b)
    {
        const decimal Touch = 1e-15m;
        return a.XMm + a.WidthMm - Touch > b.XMm && b.XMm + b.WidthMm - Touch > a.XMm
            && a.YMm + a.HeightMm - Touch > b.YMm && b.YMm + b.HeightMm - Touch > a.YMm;
    }
}
