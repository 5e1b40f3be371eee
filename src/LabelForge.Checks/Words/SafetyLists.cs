using System.Collections.Immutable;
using System.Text.RegularExpressions;
using LabelForge.Markets;

namespace LabelForge.Checks.Words;

/// <summary>One part of a warning: what it says, and the words of which one must stand on the label.</summary>
public sealed record WarningPart(string Says, Regex Words);

/// <summary>A warning that some products must carry.</summary>
/// <param name="Id">Its name, which is the case of the rule <c>warning.missing</c>.</param>
/// <param name="Kinds">The product kinds that need it.</param>
/// <param name="Words">Words of a label that show that it is needed; null where none do.</param>
/// <param name="Ingredients">Ingredients that show that it is needed; null where none do.</param>
/// <param name="Parts">Its parts.</param>
public sealed record RequiredWarning(string Id, ImmutableArray<string> Kinds, Regex? Words, Regex? Ingredients, ImmutableArray<WarningPart> Parts);

/// <summary>A substance that may not be used.</summary>
public sealed record ProhibitedSubstance(Regex Names, string Says, string Source);

/// <summary>The lists of warnings and of prohibited substances of the United States that ship with the program.</summary>
public static class SafetyLists
{
    private static readonly Lazy<ImmutableArray<RequiredWarning>> LazyWarnings = new(() => [.. Records("us/warnings").Select(Warning)]);
    private static readonly Lazy<ImmutableArray<ProhibitedSubstance>> LazyProhibited = new(() => [.. Records("us/prohibited").Select(r =>
        new ProhibitedSubstance(PhrasePattern.Whole(r.Texts("names", "[bithionol]")), r.Text("says", "why"), r.Text("source", "21 CFR 700.11")))]);

    /// <summary>The warnings.</summary>
    public static ImmutableArray<RequiredWarning> Warnings => LazyWarnings.Value;

    /// <summary>The prohibited substances.</summary>
    public static ImmutableArray<ProhibitedSubstance> Prohibited => LazyProhibited.Value;

    private static RequiredWarning Warning(YamlRecord record)
    {
        record.OnlyKeys("id", "kinds", "words", "ingredients", "parts");
        return new(
            record.Text("id", "a name"),
            record.Has("kinds") ? [.. record.Texts("kinds", "[foaming-bath]")] : [],
            record.Has("words") ? PhrasePattern.Any(record.Texts("words", "[aerosol]")) : null,
            record.Has("ingredients") ? PhrasePattern.Whole(record.Texts("ingredients", "[butane]")) : null,
            [.. record.Records("parts", "- { says: ..., words: [...] }").Select(p => new WarningPart(p.Text("says", "what it says"), PhrasePattern.Any(p.Texts("words", "[urinary tract]"))))]);
    }

    private static IReadOnlyList<YamlRecord> Records(string list)
    {
        var name = $"markets/{list}.yaml";
        return YamlRecord.Shipped(name);
    }
}
