using System.Collections.Concurrent;
using System.Collections.Frozen;
using LabelForge.Markets;
using LabelForge.Recipes.Files;

namespace LabelForge.Checks;

/// <summary>
/// The sentences of shipped rules in other languages than English: <c>words-fr.yaml</c> in a market's folder, by the rule's id, with
/// the same places as the English ones. The translations are the project's own; words that a law sets are in the law's language.
/// </summary>
internal static class RuleWords
{
    /// <summary>The language in which the rules themselves are written.</summary>
    internal const string English = "en";

    private static readonly ConcurrentDictionary<string, FrozenDictionary<string, (string Message,
        string Fix)>> Read = new(StringComparer.Ordinal);

    /// <summary>The words of a rule; null where the language has none.</summary>
    /// <param name="folder">The market's folder; null for a rule of nobody's.</param>
    /// <param name="language">The language's code.</param>
    /// <param name="rule">The rule's id, with its case.</param>
    internal static (string Message, string Fix)? Of(string? folder, string language, string rule) =>
        folder is not null && language != English && All(folder, language).TryGetValue(rule, out var words) ? words : null;

    /// <summary>All words of a folder in a language, by the rule's id.</summary>
    internal static FrozenDictionary<string, (string Message, string Fix)> All(string folder, string language) =>
        Read.GetOrAdd($"markets/{folder}/words-{language}.yaml",
            name => Entries(name)
                .ToFrozenDictionary(e => e.Key, e => (Text(e.Value, "message"), Text(e.Value, "fix")), StringComparer.Ordinal));

    /// <summary>What a shipped file of words says, entry by entry; nothing where there is no such file.</summary>
    internal static IEnumerable<KeyValuePair<string, MapNode>> Entries(string name) => LawData.Names(name).Contains(name)
        ? ((MapNode)LawData.Tree(name)).Entries.Select(e => KeyValuePair.Create(e.Key, (MapNode)e.Value))
        : [];

    /// <summary>A text of an entry.</summary>
    internal static string Text(MapNode entry, string key) => ((TextNode)entry.Entries.First(e => e.Key == key).Value).Text;
}
