using System.Runtime.CompilerServices;

namespace LabelForge.Print.Output.Pdf;

/// <summary>Bytes of a PDF as they grow, with numbers written as PDF wants them: no exponent, a
/// point, no more places than a printer could show.</summary>
internal sealed class PdfText
{
    // A ten-thousandth of a point is a thirtieth of a micrometre.
    private const int Places = 4;
    private const long Scale = 10_000;
    private const int LongestNumber = 24;

    private byte[] _bytes = new byte[4096];

    /// <summary>How many bytes there are.</summary>
    public int Length { get; private set; }

    /// <summary>The bytes so far; until the next change.</summary>
    public ReadOnlySpan<byte> Written => _bytes.AsSpan(0, Length);

    /// <summary>Forgets the bytes.</summary>
    public void Clear() => Length = 0;

    /// <summary>Adds bytes as they are.</summary>
    public PdfText Add(ReadOnlySpan<byte> bytes)
    {
        Need(bytes.Length);
        bytes.CopyTo(_bytes.AsSpan(Length));
        Length += bytes.Length;
        return this;
    }

    /// <summary>Adds a whole number.</summary>
    public PdfText Add(int number)
    {
        Need(LongestNumber);
        number.TryFormat(_bytes.AsSpan(Length), out var written);
        Length += written;
        return this;
    }

    /// <summary>Adds a whole number, zeros before it.</summary>
    public PdfText AddPadded(long number, int digits)
    {
        Need(LongestNumber);
        for (var at = Length + digits - 1; at >= Length; at--, number /= 10)
            _bytes[at] = (byte)('0' + number % 10);
        Length += digits;
        return this;
    }

    /// <summary>Adds a number, rounded to four places, and a space.</summary>
    public PdfText Add(double number)
    {
        Need(LongestNumber);
        var scaled = (long)Math.Round(number * Scale);
        if (scaled < 0)
        {
            _bytes[Length++] = (byte)'-';
            scaled = -scaled;
        }
        var (whole, part) = Math.DivRem(scaled, Scale);
        whole.TryFormat(_bytes.AsSpan(Length), out var written);
        Length += written;
        if (part != 0)
        {
            _bytes[Length++] = (byte)'.';
            for (var (place, unit) = (0, Scale / 10); place < Places && part != 0; place++, unit /= 10)
            {
                _bytes[Length++] = (byte)('0' + part / unit);
                part %= unit;
            }
        }
        _bytes[Length++] = (byte)' ';
        return this;
    }

    /// <summary>Adds a factor, to eight places, and a space: over a sheet's length four would be
    /// a hundredth of a millimetre out.</summary>
    public PdfText AddFactor(double factor)
    {
        if (factor == 1)
            return Add("1 "u8);
        Need(2 * LongestNumber);
        factor.TryFormat(_bytes.AsSpan(Length), out var written, "0.########", CultureInfo.InvariantCulture);
        Length += written;
        return Add(" "u8);
    }

    /// <summary>Adds a glyph's number as four hexadecimal digits.</summary>
    public PdfText AddGlyph(ushort glyph)
    {
        Need(4);
        for (var shift = 12; shift >= 0; shift -= 4)
            _bytes[Length++] = "0123456789ABCDEF"u8[(glyph >> shift) & 15];
        return this;
    }

    /// <summary>Adds bytes as hexadecimal digits, two each.</summary>
    public PdfText AddHex(ReadOnlySpan<byte> bytes)
    {
        Need(2 * bytes.Length);
        foreach (var value in bytes)
        {
            _bytes[Length++] = "0123456789ABCDEF"u8[value >> 4];
            _bytes[Length++] = "0123456789ABCDEF"u8[value & 15];
        }
        return this;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private void Need(int more)
    {
        if (Length + more > _bytes.Length)
            Array.Resize(ref _bytes, Math.Max(2 * _bytes.Length, Length + more));
    }
}
