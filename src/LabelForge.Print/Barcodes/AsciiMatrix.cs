using LabelForge.Lots;
using ZXing.Common;
using ZXing.Datamatrix.Encoder;

namespace LabelForge.Print.Barcodes;

/// <summary>
/// A GS1 DataMatrix in ASCII encodation alone (ISO/IEC 16022, 5.2.3; from memory): two digits to a codeword, each other character one.
/// Error correction and the placing of modules are the library's.
/// </summary>
internal static class AsciiMatrix
{
    private const char Fnc1 = (char)232;
    private const char FirstPad = (char)129;

    // Beyond this a symbol is parted into regions, which only the general encoder draws: 26 by 26 modules.
    private const int MostCodewords = 44;

    /// <summary>The modules, or null where the message has a character beyond ASCII or is longer
    /// than a symbol of one region holds.</summary>
    public static BitMatrix? Of(string message)
    {
        var words = new StringBuilder(MostCodewords).Append(Fnc1);
        for (var at = 0; at < message.Length; at++)
        {
            var sign = message[at];
            if (sign == Gs1ElementString.Separator)
                words.Append(Fnc1);
            else if (char.IsAsciiDigit(sign) && at + 1 < message.Length && char.IsAsciiDigit(message[at + 1]))
                words.Append((char)(130 + 10 * (sign - '0') + message[++at] - '0'));
            else if (sign < 128)
                words.Append((char)(sign + 1));
            else
                return null;
        }
        if (words.Length > MostCodewords)
            return null;
        var info = SymbolInfo.lookup(words.Length, SymbolShapeHint.FORCE_SQUARE);
        var capacity = info.getDataLengthForInterleavedBlock(1);
        if (words.Length < capacity)
            words.Append(FirstPad);
        while (words.Length < capacity)
            words.Append(Pad(words.Length + 1));
        var side = info.getSymbolDataWidth();
        if (info.getSymbolWidth() != side + 2)
            return null;
        var placed = new DefaultPlacement(ErrorCorrection.encodeECC200(words.ToString(), info), side, side);
        placed.place();
        return Framed(placed, side);
    }

    // The 253-state algorithm (Annex B.1): pads are scattered so that they form no pattern.
    private static char Pad(int position)
    {
        var pad = FirstPad + 149 * position % 253 + 1;
        return (char)(pad > 254 ? pad - 254 : pad);
    }

    // Solid at the left and the foot, every other module at the top and the right, ink at the top left and none at the top right.
    private static BitMatrix Framed(DefaultPlacement placed, int side)
    {
        var modules = new BitMatrix(side + 2);
        for (var i = 0; i < side + 2; i++)
        {
            modules[0, i] = true;
            modules[i, side + 1] = true;
            if (i % 2 == 0)
                modules[i, 0] = true;
            else
                modules[side + 1, i] = true;
        }
        for (var row = 0; row < side; row++)
        {
            for (var column = 0; column < side; column++)
            {
                if (placed.getBit(column, row))
                    modules[column + 1, row + 1] = true;
            }
        }
        return modules;
    }
}
