using System.Globalization;
using LabelForge.Measures;
using YamlDotNet.Core;
using YamlDotNet.RepresentationModel;

namespace LabelForge.Markets;

/// <summary>A mapping in a data file, read key by key; every refusal names the file and the line.</summary>
internal sealed class YamlRecord(string file, YamlMappingNode node)
{
    /// <summary>The line on which the mapping starts, from 1.</summary>
    public int Line => (int)node.Start.Line;

    /// <summary>Reads a file that is a list of mappings.</summary>
    public static IReadOnlyList<YamlRecord> List(string file, TextReader text)
    {
        var stream = new YamlStream();
        try
        {
            stream.Load(text);
        }
        catch (YamlException e)
        {
            throw Refuse(file, (int)e.Start.Line, e.Message, "Write YAML: a list of entries, each of keys and values.");
        }
        if (stream.Documents is not [{ RootNode: YamlSequenceNode root }])
            throw Refuse(file, 1, "The file is not one list of entries.", "Start each entry with \"- id: ...\".");
        return Records(file, root);
    }

    /// <summary>Whether a key is given.</summary>
    public bool Has(string key) => node.Children.ContainsKey(key);

    /// <summary>A text that must be given and not be empty.</summary>
    public string Text(string key, string write)
    {
        if (Find(key) is not { } found)
            throw Refuse(Line, $"{Name}no \"{key}\".", $"Write {key}: {write}");
        return found is YamlScalarNode { Value: { } value } && !string.IsNullOrWhiteSpace(value)
            ? value.Trim()
            : throw Refuse((int)found.Start.Line, $"{Name}\"{key}\" is not a single text.", $"Write {key}: {write}");
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
        if (Find(key) is YamlSequenceNode { Children.Count: > 0 } list && list.All(n => n is YamlScalarNode { Value.Length: > 0 }))
            return [.. list.Cast<YamlScalarNode>().Select(n => n.Value!)];
        throw Refuse(LineOf(key), $"{Name}\"{key}\" is missing or not a list.", $"Write {key}: {write}");
    }

    /// <summary>A list of mappings that must be given.</summary>
    public IReadOnlyList<YamlRecord> Records(string key, string write) =>
        Find(key) is YamlSequenceNode { Children.Count: > 0 } list
            ? Records(file, list)
            : throw Refuse(LineOf(key), $"{Name}\"{key}\" is missing or not a list.", $"Write {key}: {write}");

    /// <summary>Refuses keys that nothing reads: a misspelt key would be a gap that no one sees.</summary>
    public void OnlyKeys(params IReadOnlyList<string> known)
    {
        foreach (var key in node.Children.Keys)
            if (key is not YamlScalarNode { Value: { } name } || !known.Contains(name))
                throw Refuse((int)key.Start.Line, $"{Name}\"{key}\" is not a key known here.", $"The keys are: {string.Join(", ", known)}.");
    }

    /// <summary>A refusal at a key's line.</summary>
    public InputException RefuseAt(string key, string wrong, string write) => Refuse(LineOf(key), Name + wrong, write);

    private string Name => node.Children.TryGetValue("id", out var id) ? $"{id}: " : "";

    private YamlNode? Find(string key) => node.Children.TryGetValue(key, out var found) ? found : null;

    private int LineOf(string key) => (int)(Find(key)?.Start.Line ?? node.Start.Line);

    private InputException Refuse(int line, string wrong, string write) => Refuse(file, line, wrong, write);

    private static InputException Refuse(string file, int line, string wrong, string write) => new(new Problem(file, line, wrong, write));

    private static IReadOnlyList<YamlRecord> Records(string file, YamlSequenceNode list) =>
        [.. list.Select(n => n is YamlMappingNode m
            ? new YamlRecord(file, m)
            : throw Refuse(file, (int)n.Start.Line, "An entry is not made of keys and values.", "Write each entry as key: value lines."))];
}
