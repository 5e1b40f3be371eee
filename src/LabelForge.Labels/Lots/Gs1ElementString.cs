namespace LabelForge.Lots;

/// <summary>What a GS1 barcode says about one item: its GTIN and, as the maker chooses, lot, dates and serial number.</summary>
/// <remarks>Source: GS1 General Specifications, 3 (identifiers), 7.8 (element strings), 4.14
/// (human readable interpretation); section numbers from memory.</remarks>
public sealed class Gs1ElementString : IEquatable<Gs1ElementString>
{
    /// <summary>How FNC1 stands in <see cref="Message"/> and in what a scanner sends: the control character GS, 29.</summary>
    public const char Separator = '\u001D';

    private Gs1ElementString(ImmutableArray<Gs1Element> elements) => Elements = elements;

    /// <summary>The elements in the order encoded.</summary>
    public ImmutableArray<Gs1Element> Elements { get; }

    /// <summary>The item's number.</summary>
    public Gtin Gtin => Gtin.Parse(Value("01")!).Value!;

    /// <summary>As printed for people: <c>(01)09521321000018(10)26R25-072</c>. The brackets are not encoded.</summary>
    public string HumanReadable => string.Concat(Elements.Select(element => $"({element.Identifier.Code}){element.Value}"));

    /// <summary>
    /// As encoded after the first FNC1: <see cref="Separator"/> ends each value of varying length that is not the last;
    /// none stands after values of fixed length (GS1 General Specifications, 7.8.5).
    /// </summary>
    public string Message
    {
        get
        {
            var message = new StringBuilder();
            for (var i = 0; i < Elements.Length; i++)
            {
                message.Append(Elements[i].Identifier.Code).Append(Elements[i].Value);
                if (i < Elements.Length - 1 && Elements[i].Identifier.FixedLength is null)
                    message.Append(Separator);
            }

            return message.ToString();
        }
    }

    /// <summary>The value of an identifier, or null where the string does not hold it.</summary>
    public string? Value(string code) => Elements.FirstOrDefault(element => element.Identifier.Code == code)?.Value;

    /// <summary>An element string of elements in a given order, or what is wrong with them together.</summary>
    public static Parsed<Gs1ElementString> Of(IEnumerable<Gs1Element> elements)
    {
        ImmutableArray<Gs1Element> all = [.. elements];
        foreach (var group in all.GroupBy(element => element.Identifier.Code))
        {
            if (group.Count() > 1)
                return Parsed<Gs1ElementString>.Refused("gs1.twice", ("name", group.Key), ("count", group.Count()));
        }

        // Of the identifiers known here every one belongs to an item (GS1 General Specifications, 4.13; Syntax Dictionary, req=01).
        return all.Any(element => element.Identifier.Code == "01")
            ? Parsed<Gs1ElementString>.Of(new Gs1ElementString(all))
            : Parsed<Gs1ElementString>.Refused("gs1.no-gtin");
    }

    /// <summary>The element string of a lot of an item. Fixed lengths come first, so that at most one separator is needed.</summary>
    /// <param name="gtin">The item.</param>
    /// <param name="lot">The lot as printed beside it, 1 to 20 characters; null leaves it out.</param>
    /// <param name="made">The day it was made, or null.</param>
    /// <param name="useBy">The last day to use it, or null.</param>
    /// <param name="serial">The piece's own number, 1 to 20 characters, or null.</param>
    public static Parsed<Gs1ElementString> ForItem(Gtin gtin, string? lot = null, DateOnly? made = null, DateOnly? useBy = null,
        string? serial = null)
    {
        ArgumentNullException.ThrowIfNull(gtin);
        if (made > useBy)
            return Parsed<Gs1ElementString>.Refused("gs1.use-by-before-made", ("use-by", $"{useBy:yyyy-MM-dd}"),
                ("made", $"{made:yyyy-MM-dd}"));

        var pairs = new (string Code, string? Value)[]
        {
            ("01", gtin.Fourteen),
            ("11", made is { } m ? Gs1Element.Digits(m) : null),
            ("17", useBy is { } u ? Gs1Element.Digits(u) : null),
            ("10", lot),
            ("21", serial),
        };
        var elements = new List<Gs1Element>();
        foreach (var (code, value) in pairs)
        {
            if (value is null)
                continue;
            var element = Gs1Element.Of(code, value);
            if (!element.IsValue)
                return Parsed<Gs1ElementString>.Refused(element.Problem);
            elements.Add(element.Value);
        }

        return Of(elements);
    }

    /// <summary>Reads what people write, <c>(01)...(10)...</c>, or what a scanner sends, with or without its ]C1, ]d2 or ]Q3.</summary>
    public static Parsed<Gs1ElementString> Parse(string text) => Gs1ElementStringReader.Read(text);

    /// <summary>The GS1 Digital Link URI, as a QR code carries it.</summary>
    /// <param name="site">The maker's own http or https address, with or without a path; no query and no fragment.</param>
    /// <returns>For instance <c>https://id.example.com/01/09521321000018/10/26R25-072?11=261125</c>.</returns>
    /// <remarks>GTIN, then 22, 10, 21 in the path, dates in the query; GTIN always in 14 digits.
    /// GS1 Digital Link Standard, URI Syntax.</remarks>
    public Parsed<string> DigitalLink(string site)
    {
        ArgumentNullException.ThrowIfNull(site);
        if (!Uri.TryCreate(site, UriKind.Absolute, out var uri)
            || uri.Scheme is not ("http" or "https")
            || uri.Query + uri.Fragment != ""
            || uri.UserInfo != "")
            return Parsed<string>.Refused("gs1.not-a-web-address", ("site", site));

        // ASCII alone, so that the QR code needs no character set: a name in other letters goes as its ASCII form.
        var link = new StringBuilder(uri.GetComponents(UriComponents.SchemeAndServer, UriFormat.UriEscaped)
            .Replace(uri.Host, uri.IdnHost, StringComparison.Ordinal));
        link.Append(uri.AbsolutePath.TrimEnd('/'));
        foreach (var identifier in Gs1Identifier.Known.Where(known => known.Place != DigitalLinkPlace.Attribute))
        {
            if (Value(identifier.Code) is { } value)
                link.Append('/').Append(identifier.Code).Append('/').Append(Uri.EscapeDataString(value));
        }

        var mark = '?';
        foreach (var element in Elements.Where(element => element.Identifier.Place == DigitalLinkPlace.Attribute))
        {
            link.Append(mark).Append(element.Identifier.Code).Append('=').Append(Uri.EscapeDataString(element.Value));
            mark = '&';
        }

        return Parsed<string>.Of(link.ToString());
    }

    /// <inheritdoc/>
    public bool Equals(Gs1ElementString? other) => other is not null && other.Message == Message;

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as Gs1ElementString);

    /// <inheritdoc/>
    public override int GetHashCode() => Message.GetHashCode(StringComparison.Ordinal);

    /// <summary>As printed for people.</summary>
    public override string ToString() => HumanReadable;
}
