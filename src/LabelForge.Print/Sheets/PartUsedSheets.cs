using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using LabelForge.Measures;
using LabelForge.Print.Output;
using LabelForge.Recipes.Files;

namespace LabelForge.Print.Sheets;

/// <summary>The first free position of the part-used sheet of each stock, remembered in a workshop's <c>part-used.yaml</c>.</summary>
public sealed class PartUsedSheets
{
    private const string FileName = "part-used.yaml";
    private readonly string _path;
    private readonly ImmutableSortedDictionary<string, int> _first;

    private PartUsedSheets(string path, ImmutableSortedDictionary<string, int> first) => (_path, _first) = (path, first);

    /// <summary>Reads what is remembered; nothing where there is no such file.</summary>
    /// <exception cref="InputException">The file cannot be used; the message names the line.</exception>
    public static PartUsedSheets Of(string workshopFolder)
    {
        var path = Path.Combine(workshopFolder, FileName);
        var first = ImmutableSortedDictionary.CreateBuilder<string, int>(StringComparer.Ordinal);
        if (File.Exists(path))
        {
            foreach (var entry in YamlFile.Read(path, FileName).Entries)
                first.Add(entry.Key, Position(entry));
        }
        return new PartUsedSheets(path, first.ToImmutable());
    }

    /// <summary>The first free position of a stock's part-used sheet, or 1 where none is remembered.</summary>
    public int FirstOf(LabelStock stock) => _first.TryGetValue(stock.Id, out var first) && first <= stock.PerSheet ? first : 1;

    /// <summary>Remembers where the next print starts, after labels were printed from a position on.</summary>
    /// <param name="stock">The stock.</param>
    /// <param name="first">The first position used, from 1.</param>
    /// <param name="count">How many labels.</param>
    /// <returns>The position that the next print starts at: 1 for a new sheet.</returns>
    /// <exception cref="InputException">The file cannot be written.</exception>
    public int Remember(LabelStock stock, int first, int count)
    {
        var next = (first - 1 + count) % stock.PerSheet + 1;
        var all = _first.SetItem(stock.Id, next);
        var text = new StringBuilder("# The first free position of the part-used sheet of each stock, written by: labelforge sheet --remember\n# Correct it, or delete the line, where the sheet was thrown away.\n");
        foreach (var (id, position) in all)
            text.Append(CultureInfo.InvariantCulture, $"{id}: {position}\n");
        AtomicFile.Write(_path, stream => stream.Write(Encoding.UTF8.GetBytes(text.ToString())));
        return next;
    }

    private static int Position(Entry entry) => entry.Value is TextNode text && int.TryParse(text.Text, NumberStyles.None, CultureInfo.InvariantCulture, out var position) && position >= 1
        ? position
        : throw entry.Value.Refuse($"The value of \"{entry.Key}\" is no position on a sheet.", $"Write the first free position, counted from 1, or delete the line: {entry.Key}: 1");
}
