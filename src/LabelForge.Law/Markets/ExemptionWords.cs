using System.Collections.Concurrent;
using System.Collections.Frozen;
using LabelForge.Recipes.Files;

namespace LabelForge.Checks;

/// <summary>How exemptions are said in another language than English: <c>facts-fr.yaml</c>, by
/// the fact's id, and under <c>unless</c> the sentences around them.</summary>
internal sealed class ExemptionWords
{
    private const string Around = "unless";

    private static readonly ConcurrentDictionary<string, ExemptionWords?> Read = new(StringComparer.Ordinal);

    private readonly FrozenDictionary<string, MapNode> _entries;

    private ExemptionWords(FrozenDictionary<string, MapNode> entries) => _entries = entries;

    /// <summary>The words of a language; null where there are none.</summary>
    internal static ExemptionWords? Of(string language) => Read.GetOrAdd(language, l =>
        RuleWords.Entries($"markets/facts-{l}.yaml")
            .ToFrozenDictionary(e => e.Key, e => e.Value, StringComparer.Ordinal) is { Count: > 0 } entries ? new(entries) : null);

    /// <summary>That the rule holds unless one of them is so.</summary>
    internal string Sentence(ImmutableArray<Exemption> open) =>
        " " + Fill("sentence", string.Join(Say(Around, "or"), open.Select(e => Say(e.Fact.Id, e.IfNot ? "not" : "is"))));

    /// <summary>What is asked of the maker.</summary>
    internal string Question(ImmutableArray<Exemption> open) =>
        $" {string.Join(' ', open.Select(e => Say(e.Fact.Id, "asks")).Distinct())} {Fill("answer", string.Join(", ", open.Select(e => e.Fact.Id)))}";

    private string Fill(string key, string with) => string.Format(CultureInfo.InvariantCulture, Say(Around, key), with);

    private string Say(string entry, string key) => RuleWords.Text(_entries[entry], key);
}
