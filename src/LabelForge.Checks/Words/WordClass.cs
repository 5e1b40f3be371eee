using System.Collections.Immutable;
using LabelForge.Checks.Reading;
using LabelForge.Markets;

namespace LabelForge.Checks.Words;

/// <summary>Words of one language that do the same in a sentence: what makes a thing go, what ails, a part of the body.</summary>
/// <param name="Members">The words, each as a pattern, with what of it stands in every text that it is found in.</param>
internal sealed record WordClass(ImmutableArray<(string Pattern, string Probe)> Members)
{
    /// <summary>A class of words, as the lists write them.</summary>
    public static WordClass Of(IEnumerable<string> words) =>
        new([.. words.Select(FoldedText.KeepingCase).Distinct(StringComparer.Ordinal).Select(w => (PhrasePattern.Body(w), PhraseSet.Probe(w))).OrderByDescending(m => m.Item1.Length)]);

    /// <summary>The classes of a language, by name; a class may hold others, as <c>{name}</c>, which stand before it.</summary>
    public static ImmutableDictionary<string, WordClass> Read(IEnumerable<YamlRecord> records)
    {
        var words = new Dictionary<string, ImmutableArray<string>>(StringComparer.Ordinal);
        foreach (var record in records)
        {
            record.OnlyKeys("id", "words");
            var id = record.Text("id", "the name of a class");
            words.Add(id, [.. record.Texts("words", "[banish*, stops]").SelectMany(w => Name(w) is not { } other ? [w]
                : words.TryGetValue(other, out var held) ? held : throw record.RefuseAt("words", $"There is no class {w} before it.", "Write the class first."))]);
        }
        return words.ToImmutableDictionary(w => w.Key, w => Of(w.Value), StringComparer.Ordinal);
    }

    /// <summary>The class that a word of a pattern names, as <c>{name}</c>; null where it is a word of its own.</summary>
    public static string? Name(string word) => word is ['{', .. var name, '}'] ? name : null;
}
