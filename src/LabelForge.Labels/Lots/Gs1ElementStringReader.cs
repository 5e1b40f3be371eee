namespace LabelForge.Lots;

/// <summary>Reads element strings, bracketed as printed or raw as a scanner sends them.</summary>
internal static class Gs1ElementStringReader
{
    // Symbology identifiers of GS1-128, GS1 DataMatrix and GS1 QR Code (ISO/IEC 15424).
    private static readonly string[] SymbologyIdentifiers = ["]C1", "]d2", "]Q3"];

    public static Parsed<Gs1ElementString> Read(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var trimmed = text.Trim(' ', '\t', '\r', '\n');
        return trimmed.StartsWith('(') ? Bracketed(trimmed) : Raw(trimmed);
    }

    private static Parsed<Gs1ElementString> Bracketed(string text)
    {
        var elements = new List<Gs1Element>();
        var at = 0;
        while (at < text.Length)
        {
            if (!IsIdentifierAt(text, at))
                return Parsed<Gs1ElementString>.Refused("gs1.no-identifier-in-brackets", ("text", text[at..]));
            var code = text.Substring(at + 1, 2);
            // Brackets are of set 82 too and may stand in a value; only (dd) of an identifier known begins the next element.
            var end = at + 4;
            while (end < text.Length && !(IsIdentifierAt(text, end) && Gs1Identifier.Find(text.Substring(end + 1, 2)) is not null))
                end++;
            var element = Gs1Element.Of(code, text[(at + 4)..end]);
            if (!element.IsValue)
                return Parsed<Gs1ElementString>.Refused(element.Problem);
            elements.Add(element.Value);
            at = end;
        }

        return Gs1ElementString.Of(elements);
    }

    private static bool IsIdentifierAt(string text, int at) =>
        at + 3 < text.Length && text[at] == '(' && char.IsAsciiDigit(text[at + 1]) && char.IsAsciiDigit(text[at + 2])
            && text[at + 3] == ')';

    private static Parsed<Gs1ElementString> Raw(string text)
    {
        var rest = SymbologyIdentifiers.Any(id => text.StartsWith(id, StringComparison.Ordinal)) ? text[3..] : text;
        rest = rest.TrimStart(Gs1ElementString.Separator);
        var elements = new List<Gs1Element>();
        while (rest.Length > 0)
        {
            if (rest.Length < 3 || Gs1Identifier.Find(rest[..2]) is not { } identifier)
                return Parsed<Gs1ElementString>.Refused("gs1.no-identifier", ("rest", rest));
            var separator = rest.IndexOf(Gs1ElementString.Separator);
            var end = identifier.FixedLength is { } length
                ? Math.Min(2 + length, rest.Length)
                : separator < 0 ? rest.Length : separator;
            var element = Gs1Element.Of(identifier.Code, rest[2..end]);
            if (!element.IsValue)
                return Parsed<Gs1ElementString>.Refused(element.Problem);
            elements.Add(element.Value);
            // A separator after a fixed length is not needed but must be borne with (GS1 General Specifications, 7.8.5.2).
            if (end < rest.Length && rest[end] == Gs1ElementString.Separator)
                end++;
            rest = rest[end..];
        }

        return elements.Count == 0
            ? Parsed<Gs1ElementString>.Refused("gs1.empty")
            : Gs1ElementString.Of(elements);
    }
}
