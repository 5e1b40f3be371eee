using LabelForge.Lots;
using LabelForge.Measures;
using LabelForge.Print.Barcodes;

namespace LabelForge.Print.Tests.Barcodes;

public class BarcodeRefusalTests
{
    private static readonly Gs1ElementString Lot = Gs1ElementString.Parse("(01)09521321000018(10)26R25-072").Value!;

    public static TheoryData<BarcodeKind, string, string> Unfit => new()
    {
        { BarcodeKind.Code128, "", "0 characters" },
        { BarcodeKind.Code128, "é", "cannot carry 'é'" },
        { BarcodeKind.Code128, new string('A', 81), "81 characters" },
        { BarcodeKind.Gs1Code128, "26R25-072", "Application Identifier" },
        { BarcodeKind.Gs1Code128, "(01)09521321000018(10)12345678901234567890(21)12345678901234567890", "GS1-128 carries 48" },
        { BarcodeKind.Gs1DataMatrix, "(10)A", "no GTIN" },
        { BarcodeKind.Qr, "", "nothing to put" },
        { BarcodeKind.Qr, new string('x', 3000), "cannot carry" },
        { BarcodeKind.Ean13, "9521321000017", "check digit" },
        { BarcodeKind.Ean13, "96385074", "cannot carry 96385074" },
        { BarcodeKind.Ean13, "19521321000015", "cannot carry" },
        { BarcodeKind.UpcA, "9521321000018", "needs 13" },
        { BarcodeKind.UpcA, "0614141123452X", "more than digits" },
    };

    [Theory]
    [MemberData(nameof(Unfit))]
    public void Data_that_a_kind_cannot_carry_is_refused_with_a_reason(BarcodeKind kind, string data, string says)
    {
        var drawn = Barcode.Draw(kind, data);
        Assert.False(drawn.IsValue);
        Assert.Contains(says, drawn.Wrong);
        Assert.NotEmpty(drawn.Write);
    }

    [Theory]
    [InlineData(BarcodeKind.Code128)]
    [InlineData(BarcodeKind.Qr)]
    [InlineData(BarcodeKind.Ean13)]
    [InlineData(BarcodeKind.UpcA)]
    public void An_element_string_with_a_lot_needs_a_GS1_kind(BarcodeKind kind) => Assert.False(Barcode.Draw(kind, Lot).IsValue);

    [Fact]
    public void A_GTIN_alone_may_be_an_EAN_13() =>
        Assert.Equal("9521321000018", Barcode.Draw(BarcodeKind.Ean13, Gs1ElementString.Parse("(01)09521321000018").Value!).Value!.Caption);

    [Fact]
    public void The_caption_is_what_people_read() =>
        Assert.Equal("(01)09521321000018(10)26R25-072", Barcode.Draw(BarcodeKind.Gs1DataMatrix, Lot).Value!.Caption);

    [Fact]
    public void A_printer_of_another_resolution_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Barcode.Draw(BarcodeKind.Code128, "A", new BarcodeOptions { Dpi = 96 }));

    [Fact]
    public void A_module_of_no_width_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Barcode.Draw(BarcodeKind.Code128, "A",
            new BarcodeOptions { LeastModuleWidth = Length.FromMillimetres(0) }));
}
