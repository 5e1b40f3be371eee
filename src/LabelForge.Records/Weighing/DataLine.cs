using System.Collections.Concurrent;
using System.Reflection;
using LabelForge.Recipes.Files;

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

    public static IReadOnlyList<DataLine> Embedded(string file) => Loaded.GetOrAdd(file, name =>
    {
        var rows = CompiledData.ReadTable(Assembly.GetExecutingAssembly(), $"weighing/{name}").Where(r => !r.Cells[0].StartsWith('#'))
            .ToArray();
        return [.. rows.Skip(1)
            .Select(r => r.Cells.Length == rows[0].Cells.Length
                ? new DataLine(rows[0].Cells, r.Cells)
                : throw new InvalidOperationException($"{name}, line {r.Line}: the cells do not match the heading."))];
    });
}
