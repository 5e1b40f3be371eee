using LabelForge.Lots;

namespace LabelForge.Print.Barcodes;

/// <summary>The human-readable text of a barcode, in parts that a line break may stand between.</summary>
public static class BarcodeText
{
    // A text that has no parts, as a long lot code or an address, is broken after this many characters.
    private const int LongestPart = 24;

    /// <summary>An element string, each identifier with its value: <c>(01)09521321000018</c>,
    /// <c>(10)26R25-072</c> (GS1 General Specifications, 4.14).</summary>
    public static ImmutableArray<string> Of(Gs1ElementString data) => [.. data.Elements.Select(e => $"({e.Identifier.Code}){e.Value}")];

    /// <summary>A plain text: whole where it is short.</summary>
    public static ImmutableArray<string> Of(string text) => [.. text.Chunk(LongestPart).Select(c => new string(c))];

    /// <summary>Parts set into lines, as many to a line as fit; a part that does not fit alone has a line of its own.</summary>
    internal static IEnumerable<string> Lines(ImmutableArray<string> parts, Func<string, bool> fits)
    {
        var line = "";
        foreach (var part in parts)
        {
            if (line.Length > 0 && !fits(line + part))
            {
                yield return line;
                line = "";
            }
            line += part;
        }
        if (line.Length > 0)
            yield return line;
    }
}
