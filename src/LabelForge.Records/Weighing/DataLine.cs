using System.Collections.Concurrent;
using System.Reflection;
using LabelForge.Records.Spreadsheets;

namespace LabelForge.Records.Weighing;

/// <summary>A line of one of the tables shipped with this assembly.</summary>
internal sealed record DataLine(IReadOnlyList<string> Heading, IReadOnlyList<string> Cells)
{
    private static readonly ConcurrentDictionary<string, IReadOnlyList<DataLine>> Loaded = new(StringComparer.Ordinal);

    public string this[string column]
    {
        get
        {
            for (var i = 0; i < Heading.Count; i++)
                if (Heading[i] == column)
                    return Cells[i];
            throw new InvalidOperationException($"No column {column}.");
        }
    }

    public static IReadOnlyList<DataLine> Shipped(string file) => Loaded.GetOrAdd(file, name =>
    {
        using var reader = new StreamReader(Assembly.GetExecutingAssembly().GetManifestResourceStream($"weighing/{name}")
            ?? throw new InvalidOperationException($"No table {name}."));
        var rows = TextTable.Read(reader.ReadToEnd(), name);
        return [.. rows.Skip(1).Select(r => r.Cells.Count == rows[0].Cells.Count ? new DataLine(rows[0].Cells, r.Cells) : throw new InvalidOperationException($"{name}, line {r.Line}: the cells do not match the heading."))];
    });
}
