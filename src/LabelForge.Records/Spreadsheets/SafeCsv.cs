namespace LabelForge.Records.Spreadsheets;

/// <summary>Writes CSV that a spreadsheet opens as what it says, and never as a formula.</summary>
/// <remarks>
/// A cell of text that begins with = + - @, a tab or a line end would be run as a formula by common spreadsheets; it gets an
/// apostrophe before it, which <see cref="Plain"/> takes off again (common practice against formula injection). Figures are
/// written by the program itself, with a decimal point.
/// </remarks>
public static class SafeCsv
{
    /// <summary>Writes a heading and rows; a cell is text, a figure, a date, or null for nothing.</summary>
    public static string Write(IReadOnlyList<string> heading, IEnumerable<IReadOnlyList<object?>> rows)
    {
        var text = new StringBuilder();
        Line(text, heading);
        foreach (var row in rows)
            Line(text, row);
        return text.ToString();
    }

    /// <summary>Writes a heading and rows line by line, so that a list of any length takes no more memory than a short one.</summary>
    public static void WriteTo(TextWriter writer, IReadOnlyList<string> heading, IEnumerable<IReadOnlyList<object?>> rows)
    {
        var line = new StringBuilder();
        foreach (var cells in rows.Prepend(heading))
        {
            Line(line.Clear(), cells);
            writer.Write(line);
        }
    }

    /// <summary>The same as a file: UTF-8, with the mark at the beginning that tells spreadsheets so.</summary>
    public static void WriteFile(Stream stream, IReadOnlyList<string> heading, IEnumerable<IReadOnlyList<object?>> rows)
    {
        using var writer = new StreamWriter(stream, new UTF8Encoding(encoderShouldEmitUTF8Identifier: true), leaveOpen: true);
        WriteTo(writer, heading, rows);
    }

    /// <summary>A heading and rows as the bytes of a file.</summary>
    public static byte[] File(IReadOnlyList<string> heading, IEnumerable<IReadOnlyList<object?>> rows) => File(Write(heading, rows));

    /// <summary>A written table as the bytes of a file: UTF-8, with the mark at the beginning that tells spreadsheets so.</summary>
    public static byte[] File(string csv) => [0xEF, 0xBB, 0xBF, .. Encoding.UTF8.GetBytes(csv)];

    /// <summary>The text as it was before <see cref="Write"/> made it safe.</summary>
    public static string Plain(string cell) =>
        cell.Length > 1 && cell[0] == '\'' && (Dangerous(cell[1]) || cell[1] == '\'') ? cell[1..] : cell;

    private static void Line(StringBuilder text, IReadOnlyList<object?> cells) => text.AppendJoin(',', cells.Select(Cell)).Append("\r\n");

    private static string Cell(object? value) => value switch
    {
        null => "",
        decimal figure => figure.ToString("0.############################", CultureInfo.InvariantCulture),
        int or long => Convert.ToString(value, CultureInfo.InvariantCulture)!,
        DateOnly day => day.ToIso(),
        _ => Text(Convert.ToString(value, CultureInfo.InvariantCulture) ?? ""),
    };

    private static string Text(string text)
    {
        // A text that itself starts with an apostrophe before such a sign would otherwise come back without it.
        if (text.Length > 0 && (Dangerous(text[0]) || text[0] == '\''))
            text = "'" + text;
        return text.AsSpan().IndexOfAny(",\"\r\n;\t") >= 0 ? $"\"{text.Replace("\"", "\"\"")}\"" : text;
    }

    private static bool Dangerous(char first) =>
        first is '=' or '+' or '-' or '@' or '\t' or '\r' or '\n' or '|' or '%' or '\uFF1D' or '\uFF0B' or '\uFF0D' or '\uFF20';
}
