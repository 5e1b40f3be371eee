using System.Runtime.InteropServices;
using LabelForge.Lots;
using LabelForge.Print.Drawing;
using ZXing.Common;

namespace LabelForge.Print.Barcodes;

/// <summary>
/// Makes the symbols of a series, thousands that differ in a few digits and are all of one size. The general encoder looks for the
/// shortest way to write each message; here it is asked once, and where plain ASCII encodation is as short, that is used for all.
/// </summary>
public sealed class SymbolSeries
{
    private readonly BarcodeKind _kind;
    private readonly int _columns;
    private readonly bool _inAscii;

    private SymbolSeries(BarcodeKind kind, SymbolPicture sample, bool inAscii) =>
        (_kind, _columns, _inAscii) = (kind, sample.Columns, inAscii);

    /// <summary>A series of GS1 DataMatrix symbols as large as one's.</summary>
    public static SymbolSeries OfMatrix(Gs1ElementString sample)
    {
        var modules = SymbolEncoder.Gs1DataMatrix(sample.Message);
        return new SymbolSeries(BarcodeKind.Gs1DataMatrix, PictureOf(modules),
            AsciiMatrix.Of(sample.Message) is { } ascii && ascii.Columns == modules.Width);
    }

    /// <summary>A series of symbols of text, Code 128 or QR, as large as one's.</summary>
    public static SymbolSeries OfText(BarcodeKind kind, string sample) => new(kind, PictureOf(Encoded(kind, sample)), false);

    /// <summary>A symbol of the series.</summary>
    /// <exception cref="InvalidOperationException">It is not as large as the others.</exception>
    public SymbolPicture Of(Gs1ElementString data) =>
        Checked(_inAscii && AsciiMatrix.Of(data.Message) is { } ascii ? ascii : PictureOf(SymbolEncoder.Gs1DataMatrix(data.Message)));

    /// <inheritdoc cref="Of(Gs1ElementString)"/>
    public SymbolPicture Of(string text) => Checked(PictureOf(Encoded(_kind, text)));

    private static BitMatrix Encoded(BarcodeKind kind, string text) =>
        kind == BarcodeKind.Qr ? SymbolEncoder.Qr(text) : SymbolEncoder.Code128(text);

    private SymbolPicture Checked(SymbolPicture picture) => picture.Columns == _columns
        ? picture
        : throw new InvalidOperationException("Numbers of one length make barcodes of different sizes.");

    private static SymbolPicture PictureOf(BitMatrix modules)
    {
        var across = (modules.Width + 7) / 8;
        var bits = new byte[across * modules.Height];
        for (var row = 0; row < modules.Height; row++)
        {
            for (var column = 0; column < modules.Width; column++)
            {
                if (modules[column, row])
                    bits[row * across + column / 8] |= (byte)(0x80 >> (column % 8));
            }
        }
        return new SymbolPicture(modules.Width, modules.Height, ImmutableCollectionsMarshal.AsImmutableArray(bits));
    }
}
