using System.Collections.Concurrent;
using System.Collections.Frozen;
using LabelForge.Markets;
using LabelForge.Recipes.Files;

namespace LabelForge.Checks;

/// <summary>
/// The words of shipped law in other languages than English, a file for each: the sentences of rules (<c>words-fr.yaml</c> in a
/// market's folder, by the rule's id), how exemptions are said (<c>facts-fr.yaml</c>, by the fact's id, and under <c>unless</c> the
/// sentences around them), what claims say (<c>claims-said-fr.yaml</c>, by the claim's id). They have the same places as the English
/// ones. The translations are the project's own; words that a law sets are in the law's language.
/// </summary>
internal static class LawWords
{
    /// <summary>The language in which the law's data itself is written.</summary>
    internal const string English = "en";

    private static readonly ConcurrentDictionary<string, FrozenDictionary<string, MapNode>> Read = new(StringComparer.Ordinal);

    /// <summary>What a file says, entry by entry; nothing where there is no such file.</summary>
    /// <param name="name">Its name under <c>Markets</c> without its ending, as <c>facts-fr</c> or <c>us/words-fr</c>.</param>
    internal static FrozenDictionary<string, MapNode> All(string name) => Read.GetOrAdd($"markets/{name}.yaml", file =>
        LawData.Names(file).Contains(file)
            ? ((MapNode)LawData.Tree(file)).Entries.ToFrozenDictionary(e => e.Key, e => (MapNode)e.Value, StringComparer.Ordinal)
            : FrozenDictionary<string, MapNode>.Empty);

    /// <summary>A text of an entry; null where there is none.</summary>
    internal static string? Of(string name, string id, string key) => All(name).GetValueOrDefault(id)?.OptionalText(key)?.Text;
}
