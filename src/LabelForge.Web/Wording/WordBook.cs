using System.Collections.Frozen;
using LabelForge.Days;
using LabelForge.Recipes.Files;

namespace LabelForge.Web.Wording;

/// <summary>The words of the page in one language: a file for each, with the same keys in all.</summary>
public sealed partial class WordBook
{
    private readonly FrozenDictionary<string, string> _words;

    private WordBook(string language, FrozenDictionary<string, string> words) => (Language, _words) = (language, words);

    /// <summary>The languages there are, with their own names, English first.</summary>
    public static IReadOnlyList<(string Id, string Name)> Languages { get; } = [("en", "English"), ("fr", "Français")];

    /// <summary>The language's code.</summary>
    public string Language { get; }

    /// <summary>All keys, in order.</summary>
    public IEnumerable<string> Keys => _words.Keys.Order(StringComparer.Ordinal);

    /// <summary>The words of a language; English where it is not known.</summary>
    public static WordBook Of(string language)
    {
        var known = Languages.Any(l => l.Id == language) ? language : Languages[0].Id;
        using var stream = typeof(WordBook).Assembly.GetManifestResourceStream($"words/{known}.yaml")!;
        using var reader = new StreamReader(stream);
        var words = new Dictionary<string, string>(StringComparer.Ordinal);
        Flatten("", YamlFile.ReadText(reader.ReadToEnd(), $"{known}.yaml"), words);
        foreach (var (key, text) in Saying.Words(known))
            words["today.said." + key] = text;
        return new(known, words.ToFrozenDictionary(w => w.Key, w => known == "fr" ? Spaced(w.Value) : w.Value, StringComparer.Ordinal));
    }

    // French sets a space before these signs and inside its quotation marks, at which no line breaks.
    private static string Spaced(string text) => FrenchSpace().Replace(text, "\u00a0");

    [GeneratedRegex("(?<=«) | (?=[:;?!»])")]
    private static partial Regex FrenchSpace();

    /// <summary>The words of a key; the key itself where it has none.</summary>
    public string Of(string key, params object?[] filled) => !_words.TryGetValue(key, out var text) ? key
        : filled.Length == 0 ? text : string.Format(CultureInfo.InvariantCulture, text, filled);

    /// <summary>Whether a key has words.</summary>
    public bool Has(string key) => _words.ContainsKey(key);

    private static void Flatten(string before, MapNode map, Dictionary<string, string> words)
    {
        foreach (var entry in map.Entries)
        {
            if (entry.Value is MapNode inner)
                Flatten(before + entry.Key + ".", inner, words);
            else if (entry.Value is TextNode text)
                words[before + entry.Key] = text.Text;
        }
    }
}
