using System.Reflection;
using LabelForge.Recipes.Files;

namespace LabelForge.Ingredients;

/// <summary>A table of data with a fixed heading, read row by row; what is wrong in it names the
/// file, the line and the row's text.</summary>
public sealed class DataTable
{
    private readonly Func<ImmutableArray<CompiledRow>> _rows;

    private DataTable(string file, Func<ImmutableArray<CompiledRow>> rows) => (File, _rows) = (file, rows);

    /// <summary>How messages name it.</summary>
    public string File { get; }

    /// <summary>A table from the text of a CSV file.</summary>
    /// <param name="file">How messages name it.</param>
    public static DataTable Of(string file, string text) => new(file, () => TableText.Rows(text, file));

    /// <summary>The tables shipped with this assembly whose names begin so, in the order of their names.</summary>
    /// <param name="folder">How their names begin, such as <c>ingredients/dictionary/</c>.</param>
    public static IEnumerable<DataTable> Embedded(string folder)
    {
        var assembly = Assembly.GetExecutingAssembly();
        return assembly.GetManifestResourceNames()
            .Where(n => n.StartsWith(folder, StringComparison.Ordinal) && n.EndsWith(".csv", StringComparison.Ordinal))
            .Order(StringComparer.Ordinal)
            .Select(n => new DataTable(n, () => CompiledData.ReadTable(assembly, n)));
    }

    /// <summary>Whether its first row is this heading.</summary>
    public bool Has(string[] heading) => _rows() is [var first, ..] && first.Cells.SequenceEqual(heading);

    /// <summary>The rows below the heading.</summary>
    /// <param name="heading">The heading that it must have.</param>
    /// <exception cref="InputException">The heading is not the one wanted, or a row has too few or too many cells.</exception>
    public IEnumerable<DataRow> Rows(string[] heading)
    {
        var first = true;
        foreach (var (line, cells) in _rows())
        {
            var row = new DataRow(File, line, heading, cells);
            if (first && !cells.SequenceEqual(heading))
                throw row.Refuse("substances.heading", ("list", string.Join(',', heading)));
            if (cells.Length != heading.Length)
                throw row.Refuse("substances.cells", ("count", cells.Length), ("count-2", heading.Length),
                    ("list", string.Join(',', heading)));
            if (!first)
                yield return row;
            first = false;
        }
    }
}

/// <summary>A row of a table of data.</summary>
/// <param name="File">How messages name the table.</param>
/// <param name="Line">The row's line in its file, counted from 1.</param>
/// <param name="Heading">The table's heading.</param>
/// <param name="Cells">The row's cells.</param>
public sealed record DataRow(string File, int Line, string[] Heading, ImmutableArray<string> Cells)
{
    /// <summary>The text in the column of this name; empty where nothing stands there.</summary>
    public string this[string column] => Cells[Array.IndexOf(Heading, column)];

    /// <summary>The parts of the column's text between semicolons.</summary>
    public string[] Several(string column) => this[column] is { Length: > 0 } text
        ? text.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)
        : [];

    /// <summary>The column's text, which must be there.</summary>
    public string Needed(string column) =>
        this[column] is { Length: > 0 } text ? text : throw Refuse("substances.column-empty", ("column", column));

    /// <summary>What the row rests on: its columns basis and read.</summary>
    /// <exception cref="InputException">It does not say, or names no text that was read.</exception>
    public (Basis Basis, string? Read) Basis()
    {
        var basis = Value(BasisText.Parse(this["basis"]));
        var read = this["read"] is { Length: > 0 } text ? text : null;
        return LawTexts.Doubt(basis, read) is { } doubt ? throw Refuse(doubt) : (basis, read);
    }

    /// <summary>What a reader made of the text, or a refusal that names this row.</summary>
    public T Value<T>(Parsed<T> parsed) => parsed.IsValue ? parsed.Value : throw Refuse(parsed.Problem);

    /// <summary>A refusal that names this row and shows its text.</summary>
    public InputException Refuse(string code, params ReadOnlySpan<(string Name, object? Value)> arguments) =>
        Refuse(new Problem(code, arguments));

    /// <summary>A refusal that names this row and shows its text.</summary>
    public InputException Refuse(Problem problem) =>
        new(File, Line, "substances.in-row", ("row", string.Join(',', Cells)), ("inner", problem));
}
