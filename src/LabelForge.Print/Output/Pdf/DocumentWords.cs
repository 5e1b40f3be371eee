using System.Security;

namespace LabelForge.Print.Output.Pdf;

/// <summary>What a document says about itself, in the two places that readers look: the information dictionary and the metadata.</summary>
internal static class DocumentWords
{
    /// <summary>The information dictionary (ISO 32000-1, 14.3.3).</summary>
    public static string Information(DocumentInfo info)
    {
        var made = info.Made.UtcDateTime.ToString("'(D:'yyyyMMddHHmmss'+00''00'')'", CultureInfo.InvariantCulture);
        return $"<</Title {Quoted(info.Title)}/Creator {Quoted(PdfFile.Creator)}/CreationDate {made}/ModDate {made}>>";
    }

    /// <summary>The metadata packet (14.3.2).</summary>
    public static byte[] Metadata(DocumentInfo info)
    {
        var made = info.Made.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss'Z'", CultureInfo.InvariantCulture);
        return Encoding.UTF8.GetBytes($"""
            <?xpacket begin="{'\uFEFF'}" id="W5M0MpCehiHzreSzNTczkc9d"?>
            <x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
            <rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:xmp="http://ns.adobe.com/xap/1.0/">
            <dc:title><rdf:Alt><rdf:li xml:lang="x-default">{SecurityElement.Escape(info.Title)}</rdf:li></rdf:Alt></dc:title>
            <xmp:CreatorTool>{PdfFile.Creator}</xmp:CreatorTool><xmp:CreateDate>{made}</xmp:CreateDate><xmp:ModifyDate>{made}</xmp:ModifyDate>
            </rdf:Description></rdf:RDF></x:xmpmeta>
            <?xpacket end="w"?>
            """);
    }

    // ASCII as it is, anything else as UTF-16 in hexadecimal digits (7.9.2.2).
    private static string Quoted(string text) => text.All(c => c is >= ' ' and <= '~')
        ? $"({text.Replace(@"\", @"\\", StringComparison.Ordinal).Replace("(", @"\(", StringComparison.Ordinal).Replace(")", @"\)", StringComparison.Ordinal)})"
        : $"<FEFF{Convert.ToHexString(Encoding.BigEndianUnicode.GetBytes(text))}>";
}
