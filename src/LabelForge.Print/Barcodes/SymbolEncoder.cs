using LabelForge.Lots;
using ZXing;
using ZXing.Common;
using ZXing.Datamatrix;
using ZXing.OneD;
using ZXing.QrCode;
using ZXing.QrCode.Internal;

namespace LabelForge.Print.Barcodes;

/// <summary>Turns checked data into modules, without quiet zones: true is ink.</summary>
internal static class SymbolEncoder
{
    // The encoder's own character for FNC1 in Code 128 contents.
    private const char Fnc1 = '\u00F1';

    public static BitMatrix Code128(string text) =>
        new Code128Writer().encode(text, BarcodeFormat.CODE_128, 1, 1, Hints());

    public static BitMatrix Gs1Code128(string message) =>
        Code128(Fnc1 + message.Replace(Gs1ElementString.Separator, Fnc1));

    public static BitMatrix Gs1DataMatrix(string message)
    {
        var hints = Hints();
        // The compact encoder alone puts FNC1 (codeword 232) first, and in the place of each separator.
        hints[EncodeHintType.DATA_MATRIX_COMPACT] = true;
        hints[EncodeHintType.GS1_FORMAT] = true;
        hints[EncodeHintType.DATA_MATRIX_SHAPE] = ZXing.Datamatrix.Encoder.SymbolShapeHint.FORCE_SQUARE;
        return new DataMatrixWriter().encode(message, BarcodeFormat.DATA_MATRIX, 1, 1, hints);
    }

    public static BitMatrix Qr(string text)
    {
        var hints = Hints();
        // Level M (about 15 % of the symbol may be lost) is what most printed codes use; common practice.
        hints[EncodeHintType.ERROR_CORRECTION] = ErrorCorrectionLevel.M;
        if (!text.All(char.IsAscii))
            hints[EncodeHintType.CHARACTER_SET] = "UTF-8";
        return new QRCodeWriter().encode(text, BarcodeFormat.QR_CODE, 1, 1, hints);
    }

    public static BitMatrix Ean13(string digits) =>
        new EAN13Writer().encode(digits, BarcodeFormat.EAN_13, 1, 1, Hints());

    public static BitMatrix UpcA(string digits) =>
        new UPCAWriter().encode(digits, BarcodeFormat.UPC_A, 1, 1, Hints());

    // No margin: quiet zones are added where the symbol is drawn, since left and right differ.
    private static Dictionary<EncodeHintType, object> Hints() => new() { [EncodeHintType.MARGIN] = 0 };
}
