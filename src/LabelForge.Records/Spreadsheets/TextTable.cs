using LabelForge.Recipes.Files;

namespace LabelForge.Records.Spreadsheets;

/// <summary>One row of a table of text, with the line it stands on.</summary>
/// <param name="Line">The line, counted from 1.</param>
/// <param name="Cells">The cells, spaces around them taken off.</param>
public sealed record TextRow(int Line, IReadOnlyList<string> Cells);

/// <summary>Reads what a spreadsheet or a person saves as CSV: comma, semicolon or tab between
/// cells; nothing is guessed about numbers.</summary>
public static class TextTable
{
    private const long LargestFile = 10_000_000;

    /// <summary>Reads a file; empty lines and lines that begin with # are left out.</summary>
    /// <param name="path">Where it is.</param>
    /// <exception cref="InputException">It cannot be read, is too large, or a quotation mark does not close.</exception>
    public static IReadOnlyList<TextRow> ReadFile(string path)
    {
        try
        {
            if (new FileInfo(path).Length > LargestFile)
                throw new InputException(path, 0, "table.too-large");
            using var reader = new StreamReader(path, detectEncodingFromByteOrderMarks: true);
            return Read(reader.ReadToEnd(), path);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new InputException(path, 0, "table.unreadable", ("message", e.Message));
        }
    }

    /// <summary>Reads text.</summary>
    /// <param name="text">The whole text.</param>
    /// <param name="shownAs">How messages name it.</param>
    public static IReadOnlyList<TextRow> Read(string text, string shownAs)
    {
        if (text.Contains('\0'))
            throw new InputException(shownAs, 0, "table.not-text");
        text = text.TrimStart('\uFEFF').ReplaceLineEndings("\n");
        return [.. TableText.Rows(text, shownAs, SeparatorOf(text), "table.quotation-mark-does-not-close")
            .Where(r => !r.Cells[0].StartsWith('#')).Select(r => new TextRow(r.Line, r.Cells))];
    }

    // Where a comma is the decimal separator, spreadsheets put semicolons or tabs between cells.
    private static char SeparatorOf(string text)
    {
        var first = text.Split('\n').FirstOrDefault(l => l.Trim().Length > 0 && !l.StartsWith('#')) ?? "";
        return first.Contains('\t') ? '\t' : first.Contains(';') ? ';' : ',';
    }
}
