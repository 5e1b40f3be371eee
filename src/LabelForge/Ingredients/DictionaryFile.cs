using System.Collections.Immutable;
using CsvHelper;
using LabelForge.Measures;

namespace LabelForge.Ingredients;

/// <summary>Reads the dictionary's CSV files. An error names the file, the row and its text.</summary>
public static class DictionaryFile
{
    private const string Folder = "ingredients/dictionary/";

    private static readonly string[] Columns = ["us", "eu", "inci", "ca", "cas", "ec", "ci", "everyday", "roles", "flags", "koh", "source"];

    private static readonly string[] KnownFlags = ["colourant", "botanical", "nano", "allergen", "animal"];

    /// <summary>Reads every file that ships.</summary>
    public static ImmutableArray<Ingredient> ReadShipped()
    {
        var assembly = typeof(DictionaryFile).Assembly;
        return [.. assembly.GetManifestResourceNames()
            .Where(n => n.StartsWith(Folder, StringComparison.Ordinal))
            .Order(StringComparer.Ordinal)
            .SelectMany(n =>
            {
                using var reader = new StreamReader(assembly.GetManifestResourceStream(n)!);
                return Read(reader, n);
            })];
    }

    /// <summary>Reads one file.</summary>
    /// <exception cref="InputException">A row is not an entry.</exception>
    public static ImmutableArray<Ingredient> Read(TextReader text, string file)
    {
        using var reader = CsvReader.Create(text, new CsvReaderOptions { HasHeader = false, TrackLineNumbers = true }, leaveOpen: true);
        if (!reader.Read() || !Cells(reader).SequenceEqual(Columns))
            throw new InputException(new Problem(file, 1, "The heading is not that of a dictionary.", $"Write: {string.Join(',', Columns)}"));
        var entries = ImmutableArray.CreateBuilder<Ingredient>();
        while (reader.Read())
            entries.Add(Entry(Cells(reader), (int)reader.LineNumber, file));
        return entries.ToImmutable();
    }

    private static string[] Cells(CsvReader reader) => [.. Enumerable.Range(0, reader.FieldCount).Select(reader.GetString)];

    private static Ingredient Entry(string[] cells, int line, string file)
    {
        InputException Refuse(string wrong, string write) => new(new Problem(file, line, $"{wrong} The row is: {string.Join(',', cells)}", write));
        if (cells.Length != Columns.Length)
            throw Refuse($"There are {cells.Length} cells.", $"Write {Columns.Length}, in quotation marks where a cell holds a comma.");
        if (cells[0].Length == 0 || cells[1].Length == 0 || cells[11].Length == 0)
            throw Refuse("An entry needs its US name, its EU name and its source.", "Fill the columns us, eu and source.");
        var flags = Several(cells[9]);
        if (flags.FirstOrDefault(f => !KnownFlags.Contains(f)) is { } unknown)
            throw Refuse($"\"{unknown}\" is not a flag.", $"Write {string.Join(", ", KnownFlags)}.");
        var cas = Several(cells[4]).Select(c => CasNumber.Parse(c) is { IsValue: true } read ? read.Value : throw Refuse(CasNumber.Parse(c).Wrong!, CasNumber.Parse(c).Write!));
        return new Ingredient
        {
            Us = cells[0],
            Eu = cells[1],
            Inci = Optional(cells[2]),
            Ca = Optional(cells[3]),
            Cas = [.. cas],
            Ec = Optional(cells[5]),
            ColourIndex = Optional(cells[6]),
            Everyday = Several(cells[7]),
            Roles = Several(cells[8]),
            Flags = flags,
            Source = cells[11],
        };
    }

    private static string? Optional(string cell) => cell.Length == 0 ? null : cell;

    private static ImmutableArray<string> Several(string cell) => [.. cell.Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)];
}
