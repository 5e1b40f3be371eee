using System.Collections.Immutable;
using System.Runtime.InteropServices;
using ZXing.Common;

namespace LabelForge.Print.Barcodes;

/// <summary>A symbol's modules without its quiet zones, one bit each: a row begins with a byte of its own, its first module is the highest bit, and 1 is ink.</summary>
/// <param name="Columns">Modules across.</param>
/// <param name="Rows">Modules down; 1 for a linear symbol.</param>
/// <param name="Bits">The rows, one after the other.</param>
public sealed record SymbolPicture(int Columns, int Rows, ImmutableArray<byte> Bits)
{
    /// <summary>Whether a module is ink.</summary>
    public bool this[int column, int row] => (Bits[row * ((Columns + 7) / 8) + column / 8] & (0x80 >> (column % 8))) != 0;

    internal static SymbolPicture Of(BitMatrix modules)
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
