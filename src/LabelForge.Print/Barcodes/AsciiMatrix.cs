using System.Collections.Concurrent;
using System.Runtime.InteropServices;
using LabelForge.Lots;
using LabelForge.Print.Drawing;
using ZXing.Datamatrix.Encoder;

namespace LabelForge.Print.Barcodes;

/// <summary>
/// A GS1 DataMatrix in ASCII encodation alone (ISO/IEC 16022, 5.2.3; from memory): two digits to a codeword, each other character one.
/// Error correction and the placing of modules are the library's; where it places each bit is asked once for a size of symbol.
/// </summary>
internal static class AsciiMatrix
{
    private const char Fnc1 = (char)232;
    private const char FirstPad = (char)129;

    // Beyond this a symbol is parted into regions, which only the general encoder draws: 26 by 26 modules.
    private const int MostCodewords = 44;

    private static readonly ConcurrentDictionary<int, Places> Known = new();

    // For each bit of the codewords, the highest of the first one first, the bit of the picture that shows it; and the modules that are
    // the same in every symbol of the size.
    private sealed record Places(int Side, byte[] Fixed, int[] OfBits);

    /// <summary>The symbol, or null where the message has a character beyond ASCII or is longer
    /// than a symbol of one region holds.</summary>
    public static SymbolPicture? Of(string message)
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
        return Placed(ErrorCorrection.encodeECC200(words.ToString(), info), side);
    }

    // The 253-state algorithm (Annex B.1): pads are scattered so that they form no pattern.
    private static char Pad(int position)
    {
        var pad = FirstPad + 149 * position % 253 + 1;
        return (char)(pad > 254 ? pad - 254 : pad);
    }

    private static SymbolPicture Placed(string codewords, int side)
    {
        var places = Known.GetOrAdd(side, s => PlacesOf(s, codewords.Length));
        var bits = (byte[])places.Fixed.Clone();
        for (var word = 0; word < codewords.Length; word++)
        {
            for (var bit = 0; bit < 8; bit++)
            {
                if ((codewords[word] & (0x80 >> bit)) != 0)
                    bits[places.OfBits[8 * word + bit] >> 3] |= (byte)(0x80 >> (places.OfBits[8 * word + bit] & 7));
            }
        }
        return new SymbolPicture(places.Side, places.Side, ImmutableCollectionsMarshal.AsImmutableArray(bits));
    }

    // Each bit is given its own number, from 1, and the library places the first digits of all numbers, then the second, and so on: a
    // module that shows none of them, or always ink, is the same in every symbol.
    private static Places PlacesOf(int side, int codewords)
    {
        var digits = 1 + (int)Math.Log2(8 * codewords + 1);
        var numbers = new int[side * side];
        for (var digit = 0; digit < digits; digit++)
        {
            var words = string.Create(codewords, digit, (span, d) =>
            {
                for (var word = 0; word < span.Length; word++)
                    span[word] = (char)Enumerable.Range(0, 8).Sum(bit => ((8 * word + bit + 1) >> d & 1) << (7 - bit));
            });
            var placement = new DefaultPlacement(words, side, side);
            placement.place();
            for (var at = 0; at < numbers.Length; at++)
                numbers[at] |= (placement.getBit(at % side, at / side) ? 1 : 0) << digit;
        }
        var across = (side + 2 + 7) / 8;
        var (ofBits, picture) = (new int[8 * codewords], new byte[across * (side + 2)]);
        int BitAt(int column, int row) => 8 * across * row + column;
        void Ink(int column, int row) => picture[BitAt(column, row) >> 3] |= (byte)(0x80 >> (column & 7));
        // Solid at the left and the foot, every other module at the top and the right, ink at the top left and none at the top right.
        for (var i = 0; i < side + 2; i++)
        {
            Ink(0, i);
            Ink(i, side + 1);
            if (i % 2 == 0)
                Ink(i, 0);
            else
                Ink(side + 1, i);
        }
        for (var at = 0; at < numbers.Length; at++)
        {
            var (column, row) = (at % side + 1, at / side + 1);
            if (numbers[at] > ofBits.Length)
                Ink(column, row);
            else if (numbers[at] > 0)
                ofBits[numbers[at] - 1] = BitAt(column, row);
        }
        return new Places(side + 2, picture, ofBits);
    }
}
