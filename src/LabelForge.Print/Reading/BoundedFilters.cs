using System.IO.Compression;
using UglyToad.PdfPig.Filters;
using UglyToad.PdfPig.Tokens;

namespace LabelForge.Print.Reading;

/// <summary>
/// The filters by which a PDF's streams are unpacked (ISO 32000-1, 7.4), with a bound on what comes out: a small file can hold
/// gigabytes. What a stream unpacks to is counted before it is unpacked.
/// </summary>
/// <remarks>Pictures are not unpacked at all: no word of a label is read from one.</remarks>
internal sealed class BoundedFilters : BaseFilterProvider
{
    private BoundedFilters(UnpackBudget budget) : base(All(budget))
    {
    }

    /// <summary>Filters that draw on a budget.</summary>
    public static BoundedFilters Of(UnpackBudget budget) => new(budget);

    private static Dictionary<string, IFilter> All(UnpackBudget budget)
    {
        var filters = new Dictionary<string, IFilter>(StringComparer.Ordinal);
        void Add(string name, string abbreviated, IFilter filter) => filters[name] = filters[abbreviated] = filter;
        Add("FlateDecode", "Fl", new Bounded(new FlateFilter(), budget, (input, _, most) => Inflated(input, most)));
        Add("LZWDecode", "LZW", new Bounded(new LzwFilter(), budget, (input, at, most) => LzwLength.Of(input.Span, at, most)));
        Add("RunLengthDecode", "RL", new Bounded(new RunLengthFilter(), budget, (input, _, _) => Runs(input.Span)));
        Add("ASCII85Decode", "A85",
            new Bounded(new Ascii85Filter(), budget, (input, _, _) => input.Length + 3L * Count(input.Span, (byte)'z')));
        Add("ASCIIHexDecode", "AHx", new Bounded(new AsciiHexDecodeFilter(), budget, (input, _, _) => input.Length));
        Add("DCTDecode", "DCT", new NotUnpacked());
        Add("CCITTFaxDecode", "CCF", new NotUnpacked());
        Add("JBIG2Decode", "JBIG2", new NotUnpacked());
        Add("JPXDecode", "JPX", new NotUnpacked());
        return filters;
    }

    // What follows the two bytes of the zlib header (RFC 1950, 2.2), whatever they say; some writers leave the header out.
    private static long Inflated(Memory<byte> input, long most)
    {
        var after = input.Length > 2 ? Deflated(input[2..], most) : 0;
        return after > most ? after : Math.Max(after, Deflated(input, most));
    }

    private static long Deflated(Memory<byte> input, long most)
    {
        long length = 0;
        try
        {
            using var plain = new DeflateStream(new MemoryStream(input.ToArray(), writable: false), CompressionMode.Decompress);
            var buffer = new byte[64 * 1024];
            while (length <= most && plain.Read(buffer) is > 0 and var more)
                length += more;
        }
        catch (InvalidDataException)
        {
            // Not packed so, or damaged: as much as came out counts.
        }
        return length;
    }

    // 7.4.5: up to 127, that many bytes and one follow; from 129, the next byte stands 257 less so many times.
    private static long Runs(ReadOnlySpan<byte> input)
    {
        long length = 0;
        for (var at = 0; at < input.Length && input[at] != 128;)
        {
            var copies = input[at] < 128;
            length += copies ? input[at] + 1 : 257 - input[at];
            at += copies ? input[at] + 2 : 2;
        }
        return length;
    }

    private static int Count(ReadOnlySpan<byte> input, byte sign)
    {
        var count = 0;
        foreach (var b in input)
            count += b == sign ? 1 : 0;
        return count;
    }

    private sealed class Bounded(IFilter inner, UnpackBudget budget, Func<Memory<byte>, DictionaryToken, long, long> length) : IFilter
    {
        public bool IsSupported => true;

        public Memory<byte> Decode(Memory<byte> input, DictionaryToken streamDictionary, IFilterProvider filterProvider, int filterIndex)
        {
            budget.Take(length(input, streamDictionary, budget.MostOfOne));
            return inner.Decode(input, streamDictionary, filterProvider, filterIndex);
        }
    }

    private sealed class NotUnpacked : IFilter
    {
        public bool IsSupported => false;

        public Memory<byte> Decode(Memory<byte> input, DictionaryToken streamDictionary, IFilterProvider filterProvider,
            int filterIndex) => input;
    }
}
