using System.Globalization;
using LabelForge.Measures;
using LabelForge.Recipes.Files;

namespace LabelForge.Markets;

/// <summary>A mapping in a data file, read key by key; every refusal names the file and the line.</summary>
public sealed class YamlRecord(MapNode node)
{
    /// <summary>The line on which the mapping starts, from 1.</summary>
    public int Line => node.Line;

    /// <summary>Reads a file that is a list of mappings.</summary>
    public static IReadOnlyList<YamlRecord> List(string file, TextReader text) => List(file, YamlFile.Root(text.ReadToEnd(), file));

    /// <summary>The entries of a file that ships and is a list of mappings.</summary>
    /// <param name="name">Its path, as <c>markets/Words/french.yaml</c>.</param>
    public static IReadOnlyList<YamlRecord> Shipped(string name) => List(name, LawData.Tree(name));

    /// <summary>The entries of a file that is a list of mappings.</summary>
    public static IReadOnlyList<YamlRecord> List(string file, Node root) => root is ListNode list
        ? Records(list)
        : throw Refuse(file, 1, "The file is not one list of entries.", "Start each entry with \"- id: ...\".");

    /// <summary>Whether a key is given.</summary>
    public bool Has(string key) => node[key] is not null;

    /// <summary>A text that must be given and not be empty.</summary>
    public string Text(string key, string write)
    {
        if (Find(key) is not { } found)
            throw Refuse(Line, $"{Name}no \"{key}\".", $"Write {key}: {write}");
        return found is TextNode { Text.Length: > 0 } value
            ? value.Text
            : throw Refuse(found.Line, $"{Name}\"{key}\" is not a single text.", $"Write {key}: {write}");
    }

    /// <summary>A date that must be given, as year-month-day.</summary>
    public DateOnly Date(string key)
    {
        var text = Text(key, "a date, such as 2026-07-31");
        return DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date)
            ? date
            : throw Refuse(LineOf(key), $"{Name}\"{key}\" is not a date: {text}.", "Write year-month-day, such as 2026-07-31.");
    }

    /// <summary>A figure that must be given.</summary>
    public decimal Figure(string key)
    {
        var text = Text(key, "a figure, such as 0.125");
        return FigureOf(text) ?? throw Refuse(LineOf(key), $"{Name}\"{key}\" is not a figure: {text}.", "Write digits with a decimal point, such as 0.125.");
    }

    /// <summary>A plain figure, or null where the text is none.</summary>
    public static decimal? FigureOf(string text) =>
        decimal.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var figure) ? figure : null;

    /// <summary>A list of texts that must be given and not be empty.</summary>
    public IReadOnlyList<string> Texts(string key, string write)
    {
        if (Find(key) is ListNode { Items.Length: > 0 } list && list.Items.All(n => n is TextNode { Text.Length: > 0 }))
            return [.. list.Items.Cast<TextNode>().Select(n => n.Text)];
        throw Refuse(LineOf(key), $"{Name}\"{key}\" is missing or not a list.", $"Write {key}: {write}");
    }

    /// <summary>A mapping that must be given.</summary>
    public YamlRecord Record(string key, string write) =>
        Find(key) is MapNode map ? new YamlRecord(map) : throw Refuse(LineOf(key), $"{Name}\"{key}\" is missing or not made of keys and values.", $"Write {key}: {write}");

    /// <summary>A list of mappings that must be given.</summary>
    public IReadOnlyList<YamlRecord> Records(string key, string write) =>
        Find(key) is ListNode { Items.Length: > 0 } list
            ? Records(list)
            : throw Refuse(LineOf(key), $"{Name}\"{key}\" is missing or not a list.", $"Write {key}: {write}");

    /// <summary>Refuses keys that nothing reads: a misspelt key would be a gap that no one sees.</summary>
    public void OnlyKeys(params IReadOnlyList<string> known)
    {
        foreach (var entry in node.Entries)
        {
            if (!known.Contains(entry.Key))
                throw Refuse(entry.Line, $"{Name}\"{entry.Key}\" is not a key known here.", $"The keys are: {string.Join(", ", known)}.");
        }
    }

    /// <summary>A refusal at a key's line.</summary>
    public InputException RefuseAt(string key, string wrong, string write) => Refuse(LineOf(key), Name + wrong, write);

    private string Name => node["id"] is TextNode id ? $"{id.Text}: " : "";

    private Node? Find(string key) => node[key];

    private int LineOf(string key) => (Find(key) ?? node).Line;

    private InputException Refuse(int line, string wrong, string write) => Refuse(node.File, line, wrong, write);

    private static InputException Refuse(string file, int line, string wrong, string write) => new(new Problem(file, line, wrong, write));

    private static IReadOnlyList<YamlRecord> Records(ListNode list) =>
        [.. list.Items.Select(n => n is MapNode m
            ? new YamlRecord(m)
            : throw Refuse(n.File, n.Line, "An entry is not made of keys and values.", "Write each entry as key: value lines."))];
}
