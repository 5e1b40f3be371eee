using System.Reflection;
using LabelForge.Measures;

namespace LabelForge.Ingredients;

/// <summary>A table of data with a fixed heading, read row by row; what is wrong in it names the file, the line and the row's text.</summary>
internal static class DataTable
{
    // Read by hand: these tables are read before the first label is drawn, and the general reader costs more to start than they take.
    /// <summary>The rows of a table, each with its line in the file.</summary>
    /// <exception cref="InputException">The heading is not the one wanted, or a row has too few or too many cells.</exception>
    public static IEnumerable<DataRow> Read(string file, TextReader text, string[] heading)
    {
        var rest = text.ReadToEnd().AsMemory().TrimStart('\uFEFF');
        var line = 1;
        var first = true;
        while (!rest.IsEmpty)
        {
            var (cells, length, lines) = Record(rest.Span, file, line, heading.Length);
            var raw = rest[..length].TrimEnd("\r\n");
            var row = new DataRow(file, line, raw, heading, cells);
            (rest, line) = (rest[length..], line + lines);
            if (raw.IsEmpty)
                continue;
            if (first && !cells.SequenceEqual(heading))
                throw row.Refuse("the heading is not the one wanted.", $"Write {string.Join(',', heading)}");
            if (cells.Length != heading.Length)
                throw row.Refuse($"the row has {cells.Length} cells.", $"Write {heading.Length}: {string.Join(',', heading)}");
            if (!first)
                yield return row;
            first = false;
        }
    }

    // One record (RFC 4180): its cells, and how many characters and lines it takes.
    private static (string[] Cells, int Length, int Lines) Record(ReadOnlySpan<char> text, string file, int line, int expected)
    {
        var cells = new List<string>(expected);
        var (at, lines) = (0, 1);
        while (true)
        {
            if (at < text.Length && text[at] == '"')
            {
                var end = Closing(text, at + 1);
                if (end < 0 || (end + 1 < text.Length && text[end + 1] is not (',' or '\r' or '\n')))
                    throw Stray(file, line);
                var quoted = text[(at + 1)..end];
                lines += quoted.Count('\n');
                cells.Add(quoted.ToString().Replace("\"\"", "\"", StringComparison.Ordinal).Trim());
                at = end + 1;
            }
            else
            {
                var length = text[at..].IndexOfAny(',', '\n');
                var cell = length < 0 ? text[at..] : text.Slice(at, length);
                if (cell.Contains('"'))
                    throw Stray(file, line);
                cells.Add(cell.Trim().ToString());
                at += cell.Length;
            }
            if (at < text.Length && text[at] == '\r')
                at++;
            if (at >= text.Length || text[at] == '\n')
                return ([.. cells], Math.Min(at + 1, text.Length), lines);
            at++;
        }
    }

    private static InputException Stray(string file, int line) =>
        new(new Problem(file, line, "A quotation mark does not close, or stands inside a cell.", "Close every quotation mark that a cell opens."));

    // Where the quotation mark stands that ends a cell; two together are one of the cell's own.
    private static int Closing(ReadOnlySpan<char> text, int from)
    {
        for (var at = from; at < text.Length; at++)
        {
            if (text[at] != '"')
                continue;
            if (at + 1 >= text.Length || text[at + 1] != '"')
                return at;
            at++;
        }
        return -1;
    }

    /// <summary>The tables shipped inside this assembly below a folder, in the order of their names.</summary>
    public static IEnumerable<(string File, TextReader Text)> Shipped(string folder)
    {
        var assembly = Assembly.GetExecutingAssembly();
        return assembly.GetManifestResourceNames()
            .Select(n => (Resource: n, Name: n.Replace('\\', '/')))
            .Where(n => n.Name.StartsWith(folder, StringComparison.Ordinal) && n.Name.EndsWith(".csv", StringComparison.Ordinal))
            .OrderBy(n => n.Name, StringComparer.Ordinal)
            .Select(n => (n.Name, (TextReader)new StreamReader(assembly.GetManifestResourceStream(n.Resource)!)));
    }
}

/// <summary>A row of a table of data.</summary>
internal sealed record DataRow(string File, int Line, ReadOnlyMemory<char> Raw, string[] Heading, string[] Cells)
{
    /// <summary>The text in the column of this name; empty where nothing stands there.</summary>
    public string this[string column] => Cells[Array.IndexOf(Heading, column)];

    /// <summary>The parts of the column's text between semicolons.</summary>
    public string[] Several(string column) =>
        this[column].Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);

    /// <summary>The column's text, which must be there.</summary>
    public string Needed(string column) =>
        this[column] is { Length: > 0 } text ? text : throw Refuse($"the column {column} is empty.", "Fill it in.");

    /// <summary>What a reader made of the text, or a refusal that names this row.</summary>
    public T Value<T>(Parsed<T> parsed) => parsed.IsValue ? parsed.Value : throw Refuse(parsed.Wrong, parsed.Write);

    /// <summary>A refusal that names this row and shows its text.</summary>
    public InputException Refuse(string wrong, string write) => new(new Problem(File, Line, $"In \"{Raw}\": {wrong}", write));
}
