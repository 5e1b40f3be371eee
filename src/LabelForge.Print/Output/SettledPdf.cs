using System.Security;
using System.Security.Cryptography;
using System.Text;

namespace LabelForge.Print.Output;

/// <summary>
/// Makes a document that PDFsharp wrote the same every time: the library gives it random ids, and a metadata packet whose
/// title is not escaped. Both are written over in place, so that no offset in the file moves.
/// </summary>
internal static class SettledPdf
{
    private const int IdDigits = 32;

    /// <summary>Settles a document in memory.</summary>
    /// <exception cref="InvalidOperationException">The document is not written as this expects: the library has changed.</exception>
    public static void Settle(Span<byte> pdf, DocumentInfo info)
    {
        var packet = Packet(pdf);
        packet.Fill((byte)' ');
        var ids = Ids(pdf);
        foreach (var at in ids)
            pdf.Slice(at, IdDigits).Fill((byte)'0');
        // The id of a document is to differ where its content does (ISO 32000-1, 14.4).
        var digits = Encoding.ASCII.GetBytes(Convert.ToHexString(SHA256.HashData(pdf))[..IdDigits]);
        foreach (var at in ids)
            digits.CopyTo(pdf[at..]);
        var told = Encoding.UTF8.GetBytes(Xmp(info, SecurityElement.Escape(info.Title)!));
        if (told.Length > packet.Length)
            told = Encoding.UTF8.GetBytes(Xmp(info, ""));
        told.CopyTo(packet);
        packet[told.Length..].Fill((byte)' ');
    }

    private static Span<byte> Packet(Span<byte> pdf)
    {
        var start = pdf.LastIndexOf("<?xpacket begin"u8);
        var end = pdf.LastIndexOf("<?xpacket end=\"w\"?>"u8);
        return start >= 0 && end > start
            ? pdf[start..(end + "<?xpacket end=\"w\"?>"u8.Length)]
            : throw new InvalidOperationException("The document has no metadata packet.");
    }

    private static int[] Ids(ReadOnlySpan<byte> pdf)
    {
        var start = pdf.LastIndexOf("/ID[<"u8);
        var first = start + "/ID[<"u8.Length;
        return start >= 0 && pdf[first + IdDigits] == '>' && pdf[first + IdDigits + 1] == '<'
            ? [first, first + IdDigits + 2]
            : throw new InvalidOperationException("The document has no pair of ids.");
    }

    private static string Xmp(DocumentInfo info, string title)
    {
        var made = info.Made.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss'Z'", System.Globalization.CultureInfo.InvariantCulture);
        return $"""
            <?xpacket begin="{'\uFEFF'}" id="W5M0MpCehiHzreSzNTczkc9d"?>
            <x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
            <rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:xmp="http://ns.adobe.com/xap/1.0/">
            <dc:title><rdf:Alt><rdf:li xml:lang="x-default">{title}</rdf:li></rdf:Alt></dc:title>
            <xmp:CreatorTool>{PdfFile.Creator}</xmp:CreatorTool><xmp:CreateDate>{made}</xmp:CreateDate><xmp:ModifyDate>{made}</xmp:ModifyDate>
            </rdf:Description></rdf:RDF></x:xmpmeta>
            <?xpacket end="w"?>
            """;
    }
}
