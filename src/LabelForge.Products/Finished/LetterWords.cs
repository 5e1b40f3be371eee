using System.Collections.Concurrent;
using System.Collections.Frozen;
using LabelForge.Recipes.Files;

namespace LabelForge.Declarations;

/// <summary>The words of messages to suppliers in one language: <c>letters-en.yaml</c> and its neighbours, with the same keys.</summary>
internal sealed class LetterWords
{
    private static readonly ConcurrentDictionary<string, LetterWords> Read = new(StringComparer.Ordinal);

    private readonly FrozenDictionary<string, string> _words;

    private LetterWords(string language) =>
        _words = ((MapNode)CompiledData.ReadTree(typeof(LetterWords).Assembly, $"letters/letters-{language}.yaml"))
            .Entries.ToFrozenDictionary(e => e.Key, e => ((TextNode)e.Value).Text, StringComparer.Ordinal);

    /// <summary>The words in English.</summary>
    internal static LetterWords English => In("en");

    /// <summary>The words in a language; in English where there are none in it.</summary>
    internal static LetterWords In(string language) => Read.GetOrAdd(language, l => new LetterWords(l == "fr" ? l : "en"));

    /// <summary>The words of a key, its places filled.</summary>
    internal string this[string key, params object[] filled] => string.Format(CultureInfo.InvariantCulture, _words[key], filled);
}
