namespace LabelForge.Print.Drawing;

/// <summary>A symbol's modules without its quiet zones, one bit each: a row begins with a byte of
/// its own, its first module is the highest bit, and 1 is ink.</summary>
/// <param name="Columns">Modules across.</param>
/// <param name="Rows">Modules down; 1 for a linear symbol.</param>
/// <param name="Bits">The rows, one after the other.</param>
public sealed record SymbolPicture(int Columns, int Rows, ImmutableArray<byte> Bits);
