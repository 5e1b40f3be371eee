using LabelForge.Print.Output;
using LabelForge.Recipes.Files;

namespace LabelForge.Print.Sheets;

/// <summary>A sheet of label stock on which some places are used up.</summary>
/// <param name="Name">The letter that the maker writes on it.</param>
/// <param name="Used">The places that are used, from 1.</param>
public sealed record PartUsedSheet(string Name, ImmutableSortedSet<int> Used);

/// <summary>The part-used sheets of each stock, remembered in a workshop's <c>part-used.yaml</c>.</summary>
public sealed class PartUsedSheets
{
    private const string FileName = "part-used.yaml";
    private readonly string _path;
    private readonly ImmutableSortedDictionary<string, ImmutableArray<PartUsedSheet>> _sheets;

    private PartUsedSheets(string path, ImmutableSortedDictionary<string, ImmutableArray<PartUsedSheet>> sheets) =>
        (_path, _sheets) = (path, sheets);

    /// <summary>Reads what is remembered; nothing where there is no such file.</summary>
    /// <exception cref="InputException">The file cannot be used; the message names the line.</exception>
    public static PartUsedSheets Of(string workshopFolder)
    {
        var path = Path.Combine(workshopFolder, FileName);
        var sheets = ImmutableSortedDictionary.CreateBuilder<string, ImmutableArray<PartUsedSheet>>(StringComparer.Ordinal);
        if (File.Exists(path))
        {
            foreach (var entry in YamlFile.Read(path, FileName).Entries)
                sheets.Add(entry.Key, entry.Value is MapNode several ? [.. several.Entries.Select(Sheet)] : First(entry));
        }
        return new PartUsedSheets(path, sheets.ToImmutable());
    }

    /// <summary>The part-used sheets of a stock that still have a free place.</summary>
    public ImmutableArray<PartUsedSheet> SheetsOf(LabelStock stock) =>
        [.. _sheets.GetValueOrDefault(stock.Id, []).Select(s => s with { Used = s.Used.Intersect(Enumerable.Range(1, stock.PerSheet)) })
            .Where(s => s.Used.Count > 0 && s.Used.Count < stock.PerSheet)];

    /// <summary>The first position behind all that is used on a stock's first part-used sheet, or 1 where none is remembered.</summary>
    public int FirstOf(LabelStock stock) => SheetsOf(stock) is [var first, ..] && first.Used.Max < stock.PerSheet ? first.Used.Max + 1 : 1;

    /// <summary>Remembers where the next print starts, after labels were printed from a position on.</summary>
    /// <param name="first">The first position used, from 1.</param>
    /// <param name="count">How many labels.</param>
    /// <returns>The position that the next print starts at: 1 for a new sheet.</returns>
    /// <exception cref="InputException">The file cannot be written.</exception>
    public int Remember(LabelStock stock, int first, int count)
    {
        var next = (first - 1 + count) % stock.PerSheet + 1;
        var sheets = SheetsOf(stock);
        // A print from the first position on took a new sheet; any other went on with the one that was begun.
        var rest = first > 1 && !sheets.IsEmpty ? sheets.RemoveAt(0) : sheets;
        Remember(stock, next == 1 ? rest : rest.Insert(0, new PartUsedSheet(FreeName(rest), [.. Enumerable.Range(1, next - 1)])));
        return next;
    }

    /// <summary>Remembers the part-used sheets of a stock; those of others stay.</summary>
    /// <exception cref="InputException">The file cannot be written.</exception>
    public void Remember(LabelStock stock, IEnumerable<PartUsedSheet> sheets)
    {
        ImmutableArray<PartUsedSheet> left = [.. sheets.Where(s => s.Used.Count > 0 && s.Used.Count < stock.PerSheet)];
        var all = _sheets.SetItem(stock.Id, left);
        var text =
            new StringBuilder(
                "# The part-used sheets of each stock, by the letter on them, and the places that are used; a single figure is the first "
                    + "free place.\n# Correct it, or delete the line, where a sheet was thrown away.\n");
        foreach (var (id, part) in all)
        {
            if (part.IsEmpty)
                text.Append(CultureInfo.InvariantCulture, $"{id}: 1\n");
            else if (part is [{ Name: "A" } only] && only.Used.Max == only.Used.Count)
                text.Append(CultureInfo.InvariantCulture, $"{id}: {only.Used.Count + 1}\n");
            else
                text.Append(CultureInfo.InvariantCulture,
                    $"{id}:\n{string.Concat(part.Select(s => $"  {s.Name}: \"{PositionRanges.Write(s.Used)}\"\n"))}");
        }
        AtomicFile.Write(_path, text.ToString());
    }

    /// <summary>Says of a place that it is used, or where it was, that it is free: a label was
    /// printed elsewhere, or one was never stuck on.</summary>
    /// <param name="name">The letter on the sheet; null for one that bears none yet.</param>
    /// <param name="place">The place, from 1.</param>
    /// <returns>The letter on the sheet.</returns>
    /// <exception cref="InputException">The file cannot be written.</exception>
    public string Turn(LabelStock stock, string? name, int place)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(place, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(place, stock.PerSheet);
        var sheets = SheetsOf(stock);
        var sheet = sheets.FirstOrDefault(s => s.Name == name) ?? new PartUsedSheet(name ?? FreeName(sheets), []);
        var turned = sheet with { Used = sheet.Used.Contains(place) ? sheet.Used.Remove(place) : sheet.Used.Add(place) };
        Remember(stock, sheets.Contains(sheet) ? sheets.Replace(sheet, turned) : sheets.Add(turned));
        return turned.Name;
    }

    /// <summary>The first letter that no sheet bears: A to Z, then AA and so on.</summary>
    public static string FreeName(IEnumerable<PartUsedSheet> sheets)
    {
        var taken = sheets.Select(s => s.Name).ToHashSet(StringComparer.OrdinalIgnoreCase);
        return Enumerable.Range(0, 26 * 27).Select(Letters).First(l => !taken.Contains(l));
    }

    private static string Letters(int at) => at < 26 ? $"{(char)('A' + at)}" : $"{(char)('A' + at / 26 - 1)}{(char)('A' + at % 26)}";

    private static PartUsedSheet Sheet(Entry entry) =>
        entry.Value is TextNode text && PositionRanges.Read(text.Text) is { Count: > 0 } used
            ? new PartUsedSheet(entry.Key, used)
            : throw entry.Value.Refuse("sheet.part-used-places", ("name", entry.Key));

    private static ImmutableArray<PartUsedSheet> First(Entry entry) =>
        Position(entry) is > 1 and var first ? [new PartUsedSheet("A", [.. Enumerable.Range(1, first - 1)])] : [];

    private static int Position(Entry entry) =>
        entry.Value is TextNode text
            && PlainFigure.Whole(text.Text) is >= 1 and <= 10_000 and var position
            ? position
            : throw entry.Value.Refuse("sheet.part-used-position", ("name", entry.Key));
}
