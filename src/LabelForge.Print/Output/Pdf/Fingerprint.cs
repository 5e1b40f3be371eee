using System.Buffers.Binary;
using System.Numerics;

namespace LabelForge.Print.Output.Pdf;

/// <summary>
/// 128 bits that differ where bytes do, but for a chance nobody meets. A document's id asks for no more (ISO 32000-1,
/// 14.4): nothing is guarded by it, so that a cryptographic library need not be loaded for one label.
/// </summary>
internal sealed class Fingerprint
{
    // Odd, with bits well spread: the golden ratio's fraction and the square root of three's, in 64 bits.
    private const ulong First = 0x9E3779B97F4A7C15;
    private const ulong Second = 0xBB67AE8584CAA73B;

    private ulong _a = First;
    private ulong _b = Second;

    /// <summary>Takes bytes in; the same bytes in other portions make another fingerprint.</summary>
    public void Add(ReadOnlySpan<byte> bytes)
    {
        Mix((ulong)bytes.Length);
        while (bytes.Length >= sizeof(ulong))
        {
            Mix(BinaryPrimitives.ReadUInt64LittleEndian(bytes));
            bytes = bytes[sizeof(ulong)..];
        }
        foreach (var one in bytes)
            Mix(one);
    }

    /// <summary>32 hexadecimal digits.</summary>
    public override string ToString() => Invariant($"{_a ^ (_a >> 29):X16}{_b ^ (_b >> 31):X16}");

    private void Mix(ulong word)
    {
        _a = BitOperations.RotateLeft((_a ^ word) * First, 31);
        _b = BitOperations.RotateLeft(_b + word, 27) * Second;
    }
}
