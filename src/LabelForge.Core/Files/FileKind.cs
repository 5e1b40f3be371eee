namespace LabelForge.Files;

/// <summary>A kind of file that is written here: the endings it goes by, and how one is told from its first bytes.</summary>
/// <param name="Name">As messages name one: "a PDF".</param>
/// <param name="Endings">The endings it may have, lower-case, with their point; none where any name will do.</param>
/// <param name="IsOne">Whether a file that begins with these bytes is of this kind.</param>
public sealed record FileKind(string Name, ImmutableArray<string> Endings, Func<byte[], bool> IsOne)
{
    /// <summary>How much of a file is looked at.</summary>
    internal const int Head = 4096;

    /// <summary>A PDF; its header stands within the first kilobyte (ISO 32000-1, Annex H, note 13: from memory).</summary>
    public static FileKind Pdf { get; } = new("a PDF", [".pdf"],
        head => head.AsSpan(0, Math.Min(1024, head.Length)).IndexOf("%PDF-"u8) >= 0);

    /// <summary>A PNG, by its signature (W3C PNG, 5.2).</summary>
    public static FileKind Png { get; } = new("a PNG", [".png"],
        head => head.AsSpan().StartsWith((ReadOnlySpan<byte>)[0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A]));

    /// <summary>An SVG.</summary>
    public static FileKind Svg { get; } = new("an SVG", [".svg"],
        head => Text(head) is { } text && text.Contains("<svg", StringComparison.OrdinalIgnoreCase));

    /// <summary>An HTML page.</summary>
    public static FileKind Html { get; } = new("an HTML page", [".html", ".htm"],
        head => Text(head) is { } text && text.Contains("<html", StringComparison.OrdinalIgnoreCase));

    /// <summary>A table as CSV: text, whose first line has its parts between commas, semicolons or tabs.</summary>
    public static FileKind Csv { get; } = new("a CSV", [".csv"],
        head => Text(head) is { } text
            && text.TrimStart('\uFEFF') is var table
            && !table.StartsWith('<')
            && !table.StartsWith("%PDF", StringComparison.Ordinal) && table.Split('\n')[0].AsSpan().ContainsAny(",;\t"));

    /// <summary>A copy of the books: an SQLite file, under any name that is not another kind's (SQLite file format, 1.3.1).</summary>
    public static FileKind Books { get; } = new("a copy of books", [], head => head.AsSpan().StartsWith("SQLite format 3\0"u8));

    /// <summary>A copy of a whole workshop: a ZIP (APPNOTE 6.3, 4.3.7: the signature of a file's header).</summary>
    public static FileKind WorkshopCopy { get; } = new("a copy of a workshop", [".zip"], head => head.AsSpan().StartsWith("PK\x03\x04"u8));

    // Text has no zero bytes; what is cut off in the middle of a letter is text still.
    private static string? Text(byte[] head) => head.AsSpan().Contains((byte)0) ? null : Encoding.UTF8.GetString(head);
}
