using LabelForge.Lots;
using LabelForge.Print.Barcodes;
using LabelForge.Print.Drawing;

namespace LabelForge.Print.Tests.Barcodes;

/// <summary>Reads the bars themselves: a decoder may hide the first FNC1, which alone makes Code 128 a GS1-128.</summary>
public class Gs1Code128SymbolTests
{
    // ISO/IEC 15417, table 1 (from memory): widths of bar, space, bar, space, bar, space in modules.
    private const string StartB = "211214";
    private const string StartC = "211232";
    private const string Fnc1 = "411131";
    private const string Stop = "2331112";

    [Fact]
    public void FNC1_is_the_first_character_after_the_start()
    {
        var widths = Widths(Barcode.Draw(BarcodeKind.Gs1Code128, "(01)09521321000018(10)26R25-072").Value!);
        Assert.Equal(StartC + Fnc1, widths[..12]);
        Assert.EndsWith(Stop, widths);
    }

    [Fact]
    public void FNC1_ends_a_lot_that_a_serial_number_follows()
    {
        var one = Count(Widths(Barcode.Draw(BarcodeKind.Gs1Code128, "(01)09521321000018(10)AB(21)CD").Value!), Fnc1);
        Assert.Equal(2, one);
        Assert.Equal(1, Count(Widths(Barcode.Draw(BarcodeKind.Gs1Code128, "(01)09521321000018(21)CD").Value!), Fnc1));
    }

    [Fact]
    public void A_lot_of_the_makers_own_has_no_FNC1()
    {
        var widths = Widths(Barcode.Draw(BarcodeKind.Code128, "AB26R25-072").Value!);
        Assert.Equal(StartB, widths[..6]);
        Assert.Equal(0, Count(widths, Fnc1));
    }

    // Element widths in modules from left to right, bars and spaces in turn, quiet zones left out.
    private static string Widths(InkBlock block)
    {
        var bars = block.Bars.OrderBy(bar => bar.XMm).ToList();
        var module = bars.Min(bar => bar.WidthMm);
        var widths = new List<decimal>();
        for (var i = 0; i < bars.Count; i++)
        {
            widths.Add(bars[i].WidthMm);
            if (i + 1 < bars.Count)
                widths.Add(bars[i + 1].XMm - bars[i].XMm - bars[i].WidthMm);
        }

        return string.Concat(widths.Select(width => (int)Math.Round(width / module)));
    }

    private static int Count(string widths, string symbol) => widths.Chunk(6).Count(character => new string(character) == symbol);
}
