using CsCheck;
using LabelForge.Lots;
using LabelForge.Measures;
using LabelForge.Print.Barcodes;
using LabelForge.Print.Drawing;
using LabelForge.Print.Output;
using ZXing.Common;
using ZXing.Datamatrix.Internal;

namespace LabelForge.Print.Tests.Barcodes;

/// <summary>Symbols of thousands of labels that differ in a number: made another way than one alone, and saying the same.</summary>
public class SymbolSeriesTests
{
    private static readonly Gtin Item = Gtin.FromPrefix("9521321", 31).Value!;

    [Fact]
    public void A_symbol_in_plain_encodation_says_its_message()
    {
        const string Signs = "ABCDEFGHJKLMNPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-/.+";
        Gen.Select(Gen.Char[Signs].Array[1, 12], Gen.Int[0, 999_999_999]).Sample((lot, number) =>
        {
            var message = Gs1ElementString.ForItem(Item, new string(lot), serial: $"{number:000000000}").Value!.Message;
            if (AsciiMatrix.Of(message) is not { } picture)
                return message.Length > 20;
            var modules = new BitMatrix(picture.Columns, picture.Rows);
            for (var row = 0; row < picture.Rows; row++)
            {
                for (var column = 0; column < picture.Columns; column++)
                    modules[column, row] = (picture.Bits[row * ((picture.Columns + 7) / 8) + column / 8] & (0x80 >> (column % 8))) != 0;
            }
            return ReadBy(modules) == message;
        }, iter: 200);
    }

    [Fact]
    public void A_number_takes_no_larger_symbol_in_a_series_than_alone()
    {
        var series = SymbolSeries.OfMatrix(Serial("00000"));
        for (var number = 1; number < 100_000; number *= 7)
        {
            var alone = SymbolEncoder.Gs1DataMatrix(Serial($"{number:00000}").Message);
            Assert.Equal(alone.Width, series.Of(Serial($"{number:00000}")).Columns);
        }
    }

    [Theory]
    [InlineData(0), InlineData(1), InlineData(2), InlineData(3)]
    public void A_symbol_painted_as_a_mask_is_read_from_the_page(int quarters)
    {
        var series = SymbolSeries.OfMatrix(Serial("00000"));
        var placed = new PlacedSymbol(series.Of(Serial("00417")), 12, 12, 24, 24, quarters);
        var file = Path.Combine(Path.GetTempPath(), Guid.NewGuid().ToString("N") + ".pdf");
        try
        {
            AtomicFile.Write(file, stream =>
            {
                var document = new FormDocument(stream, Samples.Info);
                using (var page = document.AddPage(Length.FromMillimetres(16.9333m), Length.FromMillimetres(16.9333m)))
                    page.Fill(placed, 0, 0, Colour.Black);
                document.Finish();
            });
            Assert.Equal("~01095213210003151026R25-02C~2100417", Decoders.DmtxPage(file));
        }
        finally
        {
            File.Delete(file);
        }
    }

    private static Gs1ElementString Serial(string number) => Gs1ElementString.ForItem(Item, "26R25-02C", serial: number).Value!;

    // The decoder of the library that placed the modules, but by another way: from modules to codewords to text.
    private static string ReadBy(BitMatrix modules) => new Decoder().decode(modules).Text.TrimStart('\u001D');
}
