using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Text.RegularExpressions;
using LabelForge.Markets;

namespace LabelForge.Checks.Words;

/// <summary>One part of a warning: what it says, and the words of which one must stand on the label.</summary>
public sealed record WarningPart(string Says, Regex Words);

/// <summary>A warning that some products must carry. The kinds that need it are those of its rule.</summary>
/// <param name="Rule">The rule by which it is told, such as <c>warning.missing/aerosol</c>.</param>
/// <param name="Words">Words of a label that show that it is needed; null where none do.</param>
/// <param name="Ingredients">Ingredients that show that it is needed; null where none do.</param>
/// <param name="SaysIngredient">Whether the finding names the ingredient that calls for it, and not the parts that are missing.</param>
/// <param name="Parts">Its parts.</param>
public sealed record RequiredWarning(string Rule, Regex? Words, Regex? Ingredients, bool SaysIngredient, ImmutableArray<WarningPart> Parts);

/// <summary>A substance that may not be used.</summary>
public sealed record ProhibitedSubstance(Regex Names, string Says, string Source);

/// <summary>The warnings and the prohibited substances of a market's folder.</summary>
public static class SafetyLists
{
    private static readonly ConcurrentDictionary<Market, ImmutableArray<RequiredWarning>> Warnings = new();
    private static readonly ConcurrentDictionary<Market, ImmutableArray<ProhibitedSubstance>> Prohibited = new();

    /// <summary>The warnings of a market.</summary>
    public static ImmutableArray<RequiredWarning> WarningsOf(Market market) => Warnings.GetOrAdd(market, m => [.. m.Records("warnings").Select(Warning)]);

    /// <summary>The substances that may not be used there.</summary>
    public static ImmutableArray<ProhibitedSubstance> ProhibitedIn(Market market) => Prohibited.GetOrAdd(market, m => [.. m.Records("prohibited").Select(r =>
        new ProhibitedSubstance(PhrasePattern.Whole(r.Texts("names", "[bithionol]")), r.Text("says", "why"), r.Text("source", "21 CFR 700.11")))]);

    private static RequiredWarning Warning(YamlRecord record)
    {
        record.OnlyKeys("id", "words", "ingredients", "says ingredient", "parts");
        return new(
            "warning.missing/" + record.Text("id", "a name"),
            record.Has("words") ? PhrasePattern.Any(record.Texts("words", "[aerosol]")) : null,
            record.Has("ingredients") ? PhrasePattern.Whole(record.Texts("ingredients", "[butane]")) : null,
            record.Has("says ingredient"),
            [.. record.Records("parts", "- { says: ..., words: [...] }").Select(p => new WarningPart(p.Text("says", "what it says"), PhrasePattern.Any(p.Texts("words", "[urinary tract]"))))]);
    }
}
