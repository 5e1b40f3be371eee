using LabelForge.Recipes.Files;

namespace LabelForge.Markets;

/// <summary>A mapping in a data file, read key by key; every refusal names the file and the line.</summary>
public sealed class YamlRecord(MapNode node)
{
    /// <summary>Reads a file that is a list of mappings.</summary>
    public static IReadOnlyList<YamlRecord> List(string file, TextReader text) => List(file, YamlFile.Root(text.ReadToEnd(), file));

    /// <summary>The entries of a file that ships and is a list of mappings.</summary>
    /// <param name="name">Its path, as <c>markets/Words/french.yaml</c>.</param>
    public static IReadOnlyList<YamlRecord> Embedded(string name) => List(name, LawData.Tree(name));

    /// <summary>The entries of a file that is a list of mappings.</summary>
    public static IReadOnlyList<YamlRecord> List(string file, Node root) => root is ListNode list
        ? Records(list)
        : throw root.Refuse("record.file-not-a-list");

    /// <summary>The keys given, in order.</summary>
    public IEnumerable<string> Keys => node.Entries.Select(e => e.Key);

    /// <summary>Whether a key is given.</summary>
    public bool Has(string key) => node[key] is not null;

    /// <summary>A text that must be given and not be empty.</summary>
    public string Text(string key, string write)
    {
        if (Find(key) is not { } found)
            throw node.Refuse("record.missing-key", ("name", Name), ("key", key), ("write", write));
        return found is TextNode { Text.Length: > 0 } value
            ? value.Text
            : throw found.Refuse("record.not-a-single-text", ("name", Name), ("key", key), ("write", write));
    }

    /// <summary>A date that must be given, as year-month-day.</summary>
    public DateOnly Date(string key)
    {
        var text = Text(key, "a date, such as 2026-07-31");
        return IsoDay.Read(text) is { } date
            ? date
            : throw At(key).Refuse("record.not-a-date", ("name", Name), ("key", key), ("text", text));
    }

    /// <summary>A figure that must be given.</summary>
    public decimal Figure(string key)
    {
        var text = Text(key, "a figure, such as 0.125");
        return FigureOf(text) ?? throw At(key).Refuse("record.not-a-figure", ("name", Name), ("key", key), ("text", text));
    }

    /// <summary>A plain figure, or null where the text is none.</summary>
    public static decimal? FigureOf(string text) =>
        PlainFigure.Read(text);

    /// <summary>A list of texts that must be given and not be empty.</summary>
    public IReadOnlyList<string> Texts(string key, string write)
    {
        if (Find(key) is ListNode { Items.Length: > 0 } list && list.Items.All(n => n is TextNode { Text.Length: > 0 }))
            return [.. list.Items.Cast<TextNode>().Select(n => n.Text)];
        throw At(key).Refuse("record.not-a-list", ("name", Name), ("key", key), ("write", write));
    }

    /// <summary>A mapping that must be given.</summary>
    public YamlRecord Record(string key, string write) =>
        Find(key) is MapNode map
            ? new YamlRecord(map)
            : throw At(key).Refuse("record.not-keys-and-values", ("name", Name), ("key", key), ("write", write));

    /// <summary>A list of mappings that must be given.</summary>
    public IReadOnlyList<YamlRecord> Records(string key, string write) =>
        Find(key) is ListNode { Items.Length: > 0 } list
            ? Records(list)
            : throw At(key).Refuse("record.not-a-list", ("name", Name), ("key", key), ("write", write));

    /// <summary>Refuses keys that nothing reads: a misspelt key would be a gap that no one sees.</summary>
    public void OnlyKeys(params IReadOnlyList<string> known)
    {
        foreach (var entry in node.Entries)
        {
            if (!known.Contains(entry.Key))
                throw entry.Name.Refuse("record.unknown-key", ("name", Name), ("key", entry.Key), ("known", string.Join(", ", known)));
        }
    }

    /// <summary>A refusal at a key's line.</summary>
    public InputException RefuseAt(string key, string code, params ReadOnlySpan<(string Name, object? Value)> arguments) =>
        RefuseAt(key, new Problem(code, arguments));

    /// <summary>A refusal at a key's line.</summary>
    public InputException RefuseAt(string key, Problem problem) => Name.Length == 0
        ? At(key).Refuse(problem)
        : At(key).Refuse("record.entry", ("name", Name), ("inner", problem));

    private string Name => node["id"] is TextNode id ? $"{id.Text}: " : "";

    private Node? Find(string key) => node[key];

    private Node At(string key) => Find(key) ?? node;

    private static IReadOnlyList<YamlRecord> Records(ListNode list) =>
        [.. list.Items.Select(n => n is MapNode m
            ? new YamlRecord(m)
            : throw n.Refuse("record.entry-not-keys-and-values"))];
}
