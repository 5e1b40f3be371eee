using System.Reflection;
using System.Text;
using CsvHelper;
using LabelForge.Measures;

namespace LabelForge.Ingredients;

/// <summary>A table of data with a fixed heading, read row by row; what is wrong in it names the file, the line and the row's text.</summary>
internal static class DataTable
{
    /// <summary>The rows of a table, each with its line in the file.</summary>
    /// <exception cref="InputException">The heading is not the one wanted, or a row has too few or too many cells.</exception>
    public static IEnumerable<DataRow> Read(string file, TextReader text, string[] heading)
    {
        using var reader = CsvReader.Create(text, Options, leaveOpen: true);
        var first = true;
        while (Next(reader, file))
        {
            string[] cells = [.. Enumerable.Range(0, reader.FieldCount).Select(i => reader.GetString(i).Trim())];
            var raw = Encoding.UTF8.GetString(reader.RawRecord).TrimEnd('\r', '\n');
            var row = new DataRow(file, (int)reader.LineNumber, raw, heading, cells);
            if (first && !cells.SequenceEqual(heading))
                throw row.Refuse("the heading is not the one wanted.", $"Write {string.Join(',', heading)}");
            if (cells.Length != heading.Length)
                throw row.Refuse($"the row has {cells.Length} cells.", $"Write {heading.Length}: {string.Join(',', heading)}");
            if (!first)
                yield return row;
            first = false;
        }
    }

    private static CsvReaderOptions Options { get; } = new()
    {
        Separator = ',',
        HasHeader = false,
        TrackLineNumbers = true,
        MalformedData = CsvMalformedDataHandling.Throw,
        FieldCountMismatch = CsvFieldCountHandling.Allow,
    };

    private static bool Next(CsvReader reader, string file)
    {
        try
        {
            return reader.Read();
        }
        catch (CsvFormatException e)
        {
            throw new InputException(new Problem(file, (int)e.LineNumber, e.Message, "Close every quotation mark that a cell opens."));
        }
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
internal sealed record DataRow(string File, int Line, string Raw, string[] Heading, string[] Cells)
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
