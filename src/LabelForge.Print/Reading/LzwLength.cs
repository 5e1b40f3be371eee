using UglyToad.PdfPig.Filters;
using UglyToad.PdfPig.Tokens;

namespace LabelForge.Print.Reading;

/// <summary>How long a stream packed by LZW becomes (ISO 32000-1, 7.4.4), told without unpacking
/// it: of every code only the length is kept.</summary>
internal static class LzwLength
{
    private const int Clear = 256;
    private const int End = 257;
    private const int Codes = 4096;

    /// <summary>The length; no farther than just past the most that is asked for.</summary>
    public static long Of(ReadOnlySpan<byte> packed, DictionaryToken dictionary, long most)
    {
        // A code is made longer one code early, unless the parameters say otherwise (table 8).
        var early = DecodeParameterResolver.GetFilterParameters(dictionary, 0)
            .TryGet(NameToken.Create("EarlyChange"), out NumericToken change) ? change.Int : 1;
        var lengths = new int[Codes];
        var (next, width, before, bits, held, total) = (End + 1, 9, 0, 0, 0u, 0L);
        foreach (var b in packed)
        {
            held = (held << 8) | b;
            bits += 8;
            if (bits < width)
                continue;
            bits -= width;
            var code = (int)(held >> bits) & ((1 << width) - 1);
            if (code == End || total > most)
                break;
            if (code == Clear)
            {
                (next, width, before) = (End + 1, 9, 0);
                continue;
            }
            var length = code < Clear ? 1 : code < next ? lengths[code] : before + 1;
            total += length;
            if (before > 0 && next < Codes)
                lengths[next++] = before + 1;
            before = length;
            width = (next + early) switch { >= 2048 => 12, >= 1024 => 11, >= 512 => 10, _ => 9 };
        }
        return total;
    }
}
