using System.Collections.Concurrent;
using System.Collections.Frozen;
using LabelForge.Recipes.Files;

namespace LabelForge.Checks;

/// <summary>A part of a finding's sentence that tells of a claim: what it says of the product, or what to write instead.</summary>
/// <param name="Id">The claim's id; in another language than English the words are those of <c>claims-said-LANGUAGE.yaml</c>.</param>
/// <param name="Key">Which part: <c>says</c> or <c>instead</c>.</param>
/// <param name="English">Its words in English.</param>
public sealed record ClaimSaid(string Id, string Key, string English)
{
    private static readonly ConcurrentDictionary<string, FrozenDictionary<string, MapNode>> Read = new(StringComparer.Ordinal);

    /// <summary>The words in a language; in English where it has none.</summary>
    internal string In(string language) => All(language).GetValueOrDefault(Id) is { } entry ? RuleWords.Text(entry, Key) : English;

    /// <summary>What a language has words for, by the claim's id.</summary>
    internal static FrozenDictionary<string, MapNode> All(string language) => Read.GetOrAdd(language,
        l => RuleWords.Entries($"markets/claims-said-{l}.yaml").ToFrozenDictionary(e => e.Key, e => e.Value, StringComparer.Ordinal));

    /// <inheritdoc/>
    public override string ToString() => English;
}
