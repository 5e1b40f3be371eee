using System.Buffers.Text;

namespace LabelForge.Print.Output.Pdf;

/// <summary>
/// A document as Skia writes it, taken apart: its objects by their numbers, and the drawing on each of its pages. Reads
/// that one writer's files and no others: one table of objects, no streams of objects, no encryption.
/// </summary>
internal sealed class SkiaPdf
{
    private readonly ReadOnlyMemory<byte> _file;
    private readonly int[] _places;
    private readonly int _end;

    /// <summary>Takes a document apart.</summary>
    /// <exception cref="InvalidOperationException">It is not written as this expects: the library has changed.</exception>
    public SkiaPdf(ReadOnlyMemory<byte> file)
    {
        _file = file;
        var start = Bytes.LastIndexOf("startxref\n"u8);
        _end = start < 0 ? throw Unexpected() : NumberAt(start + "startxref\n"u8.Length).Value;
        // xref, then "0 COUNT", then twenty bytes for each object (ISO 32000-1, 7.5.4).
        if (!Bytes[_end..].StartsWith("xref\n0 "u8))
            throw Unexpected();
        var count = NumberAt(_end + "xref\n0 "u8.Length);
        _places = new int[count.Value];
        for (var i = 0; i < _places.Length; i++)
            _places[i] = NumberAt(count.End + 1 + i * 20).Value;
    }

    private ReadOnlySpan<byte> Bytes => _file.Span;

    /// <summary>The numbers of the pages, in order.</summary>
    public IReadOnlyList<int> Pages
    {
        get
        {
            var kids = Value(Body(Reference(Body(Reference(Bytes[_end..], "/Root "u8)), "/Pages "u8)), "/Kids ["u8);
            var all = new List<int>();
            // Few enough pages are drawn at a time that Skia does not part them into branches.
            foreach (var kid in kids[..kids.IndexOf((byte)']')].Split(" 0 R"u8))
            {
                if (Utf8Parser.TryParse(kids[kid].TrimStart(" \n"u8), out int page, out _))
                    all.Add(page);
            }
            return all;
        }
    }

    /// <summary>An object's dictionary, or whatever it is.</summary>
    public ReadOnlySpan<byte> Body(int number)
    {
        var from = Bytes[_places[number]..];
        from = from[(from.IndexOf(" obj\n"u8) + " obj\n"u8.Length)..];
        var (end, stream) = (from.IndexOf("\nendobj"u8), from.IndexOf(" stream\n"u8));
        return stream >= 0 && stream < end ? from[..stream] : end >= 0 ? from[..end] : throw Unexpected();
    }

    /// <summary>What an object's stream holds, still deflated; empty where it has none.</summary>
    public ReadOnlySpan<byte> Stream(int number)
    {
        var body = Body(number);
        Bytes.Overlaps(body, out var at);
        var after = Bytes[(at + body.Length)..];
        if (!after.StartsWith(" stream\n"u8))
            return [];
        var length = Value(body, "/Length "u8);
        return Utf8Parser.TryParse(length, out int bytes, out _) ? after.Slice(" stream\n"u8.Length, bytes) : throw Unexpected();
    }

    /// <summary>The number of the object that a key refers to.</summary>
    public static int Reference(ReadOnlySpan<byte> body, ReadOnlySpan<byte> key) =>
        Utf8Parser.TryParse(Value(body, key), out int number, out _) ? number : throw Unexpected();

    /// <summary>What stands after a key.</summary>
    /// <param name="body">A dictionary.</param>
    /// <param name="key">The key and what parts it from its value.</param>
    public static ReadOnlySpan<byte> Value(ReadOnlySpan<byte> body, ReadOnlySpan<byte> key)
    {
        var at = body.IndexOf(key);
        return at < 0 ? throw Unexpected() : body[(at + key.Length)..];
    }

    private (int Value, int End) NumberAt(int at) =>
        Utf8Parser.TryParse(Bytes[at..], out int value, out var digits) ? (value, at + digits) : throw Unexpected();

    private static InvalidOperationException Unexpected() => new("The drawing is not written as a PDF of Skia's is.");
}
