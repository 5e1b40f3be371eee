using CsvHelper;

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
        using var input = new StringReader(text);
        using var csv = CsvReader.Create(input, new CsvReaderOptions
        {
            Separator = SeparatorOf(text),
            HasHeader = false,
            TrackLineNumbers = true,
            MalformedData = CsvMalformedDataHandling.Throw,
            FieldCountMismatch = CsvFieldCountHandling.Allow,
        }, leaveOpen: true);
        var rows = new List<TextRow>();
        try
        {
            while (csv.Read())
            {
                string[] cells = [.. Enumerable.Range(0, csv.FieldCount).Select(i => csv.GetString(i).Trim())];
                if (cells.Any(c => c.Length > 0) && !cells[0].StartsWith('#'))
                    rows.Add(new TextRow((int)csv.LineNumber, cells));
            }
        }
        catch (CsvFormatException e)
        {
            throw new InputException(shownAs, (int)e.LineNumber, "table.quotation-mark-does-not-close");
        }
        return rows;
    }

    // Where a comma is the decimal separator, spreadsheets put semicolons or tabs between cells.
    private static char SeparatorOf(string text)
    {
        var first = text.Split('\n').FirstOrDefault(l => l.Trim().Length > 0 && !l.StartsWith('#')) ?? "";
        return first.Contains('\t') ? '\t' : first.Contains(';') ? ';' : ',';
    }
}
