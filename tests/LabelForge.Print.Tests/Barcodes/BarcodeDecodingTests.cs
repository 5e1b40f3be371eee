using LabelForge.Lots;
using LabelForge.Measures;
using LabelForge.Print.Barcodes;

namespace LabelForge.Print.Tests.Barcodes;

/// <summary>Every kind is read back from the rasterised page by zbar or dmtx, at both resolutions.</summary>
public class BarcodeDecodingTests
{
    private static readonly Gs1ElementString Lot = Gs1ElementString.ForItem(
        Gtin.FromPrefix("9521321", 1).Value!, lot: "26R25-072", made: new DateOnly(2026, 11, 25),
        useBy: new DateOnly(2028, 11, 30)).Value!;

    private static readonly Gs1ElementString LotAndSerial = Gs1ElementString.ForItem(
        Gtin.FromPrefix("9521321", 1).Value!, lot: "26R25-072", serial: "12").Value!;

    public static TheoryData<BarcodeKind, string, string, int> Plain => new()
    {
        { BarcodeKind.Code128, "26R25-072", "CODE-128:26R25-072", 300 },
        { BarcodeKind.Code128, "26R25-072", "CODE-128:26R25-072", 600 },
        { BarcodeKind.Code128, "ab cd~0123456789", "CODE-128:ab cd~0123456789", 300 },
        { BarcodeKind.Ean13, "9521321000018", "EAN-13:9521321000018", 300 },
        { BarcodeKind.Ean13, "9521321000018", "EAN-13:9521321000018", 600 },
        { BarcodeKind.Ean13, "614141123452", "EAN-13:0614141123452", 300 },
        { BarcodeKind.UpcA, "614141123452", "UPC-A:614141123452", 300 },
        { BarcodeKind.UpcA, "614141123452", "UPC-A:614141123452", 600 },
        { BarcodeKind.Qr, "https://id.example.com/01/09521321000018/10/26R25-072?11=261125",
            "QR-Code:https://id.example.com/01/09521321000018/10/26R25-072?11=261125", 300 },
        { BarcodeKind.Qr, "https://id.example.com/01/09521321000018/10/26R25-072?11=261125",
            "QR-Code:https://id.example.com/01/09521321000018/10/26R25-072?11=261125", 600 },
        { BarcodeKind.Qr, "Bruyère", "QR-Code:Bruyère", 300 },
    };

    [Theory]
    [MemberData(nameof(Plain))]
    public void A_printed_barcode_is_read_back(BarcodeKind kind, string data, string read, int dpi)
    {
        var block = Barcode.Draw(kind, data, new BarcodeOptions { Dpi = dpi }).Value!;
        // zbar calls UPC-A EAN-13 unless told to look for it.
        Assert.Equal(read, Decoders.Zbar(block, dpi, kind == BarcodeKind.UpcA ? ["-Supca.enable"] : []));
    }

    [Theory]
    [InlineData(300)]
    [InlineData(600)]
    public void A_printed_GS1_128_is_read_back_with_the_FNC1_that_ends_its_lot(int dpi)
    {
        // zbar does not tell of the first FNC1 (Gs1Code128SymbolTests reads that from the bars); a later one it sends as GS (29).
        var read = Decoders.Zbar(Barcode.Draw(BarcodeKind.Gs1Code128, LotAndSerial, new BarcodeOptions { Dpi = dpi }).Value!, dpi);
        Assert.StartsWith("CODE-128:", read);
        Assert.Equal(LotAndSerial, Gs1ElementString.Parse(read["CODE-128:".Length..]).Value);
    }

    [Theory]
    [InlineData(300)]
    [InlineData(600)]
    public void A_printed_GS1_DataMatrix_is_read_back_with_its_FNC1(int dpi)
    {
        var options = new BarcodeOptions { Dpi = dpi };
        Assert.Equal("~" + Lot.Message, Decoders.Dmtx(Barcode.Draw(BarcodeKind.Gs1DataMatrix, Lot, options).Value!, dpi));
        Assert.Equal("~" + LotAndSerial.Message.Replace(Gs1ElementString.Separator, '~'),
            Decoders.Dmtx(Barcode.Draw(BarcodeKind.Gs1DataMatrix, LotAndSerial, options).Value!, dpi));
    }

    [Fact]
    public void The_first_codeword_of_a_GS1_DataMatrix_is_FNC1() =>
        Assert.StartsWith("d:232\n", Decoders.DmtxCodewords(Barcode.Draw(BarcodeKind.Gs1DataMatrix, Lot).Value!));
}
