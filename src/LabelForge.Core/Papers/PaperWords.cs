using System.Collections.Frozen;
using System.Text.Json;

namespace LabelForge.Papers;

/// <summary>The words of the papers for the bench and the table in one language: a file for each, with the same keys in all.</summary>
/// <remarks>What a maker wrote, as a step or a name, stands as it was written. What a label says
/// is the market's, and not in here.</remarks>
public sealed class PaperWords
{
    private readonly FrozenDictionary<string, string> _words;

    private PaperWords(string language)
    {
        Language = language;
        using var stream = typeof(PaperWords).Assembly.GetManifestResourceStream($"papers/{language}.json")!;
        using var file = JsonDocument.Parse(stream);
        _words = file.RootElement.EnumerateObject().ToFrozenDictionary(e => e.Name, e => e.Value.GetString()!, StringComparer.Ordinal);
    }

    /// <summary>The words in English.</summary>
    public static PaperWords English { get; } = new("en");

    private static FrozenDictionary<string, PaperWords> Known { get; } = new[] { English, new("fr") }
        .ToFrozenDictionary(w => w.Language, StringComparer.Ordinal);

    /// <summary>The languages there are.</summary>
    public static IEnumerable<string> Languages => Known.Keys;

    /// <summary>The language's code.</summary>
    public string Language { get; }

    /// <summary>All keys.</summary>
    public IEnumerable<string> Keys => _words.Keys;

    /// <summary>The words in a language; in English where there are none in it.</summary>
    public static PaperWords In(string language) => Known.GetValueOrDefault(language) ?? English;

    /// <summary>The words of a key, with its places filled in order.</summary>
    /// <exception cref="KeyNotFoundException">There is no such key: a mistake that a test finds.</exception>
    public string this[string key, params object?[] filled] =>
        filled.Length == 0 ? _words[key] : string.Format(CultureInfo.InvariantCulture, _words[key], filled);

    /// <summary>The words for one or for several: the keys <c>key-one</c> and <c>key-many</c>, which begin with the count.</summary>
    public string Counted(string key, int count, params object?[] more) =>
        this[count == 1 ? $"{key}-one" : $"{key}-many", [count, .. more]];
}
