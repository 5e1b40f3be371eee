using System.Collections.Concurrent;

namespace LabelForge.Checks.Words;

/// <summary>One part of a warning.</summary>
/// <param name="Says">What it says.</param>
/// <param name="Words">The words of which one must stand on the label.</param>
/// <param name="Unless">Words of the label that free it of this part; null where none do.</param>
/// <param name="OnlyWith">Ingredients of which one must be there for this part to be wanted; null where it is wanted always.</param>
/// <param name="Facts">Facts of the product that free it of this part.</param>
/// <param name="Exact">The law's own words for it, or each of the ways in which it may be worded; empty where the law sets none.</param>
public sealed record WarningPart(string Says, Regex Words, Regex? Unless, Regex? OnlyWith, ImmutableArray<Exemption> Facts,
    ImmutableArray<string> Exact);

/// <summary>A warning that some products must carry. The kinds that need it are those of its rule.</summary>
/// <param name="Rule">The rule by which it is told, such as <c>warning.missing/aerosol</c>.</param>
/// <param name="Words">Words of a label that show that it is needed; null where none do.</param>
/// <param name="Ingredients">Ingredients that show that it is needed; null where none do.</param>
/// <param name="SaysIngredient">Whether the finding names the ingredient that calls for it, and not the parts that are missing.</param>
/// <param name="Parts">Its parts.</param>
public sealed record RequiredWarning(string Rule, Regex? Words, Regex? Ingredients, bool SaysIngredient, ImmutableArray<WarningPart> Parts)
{
    /// <summary>The word that the law sets before it; null where it sets none.</summary>
    public string? Signal { get; init; }

    /// <summary>Kinds that need it, beside the products of its rule.</summary>
    public ImmutableArray<string> Kinds { get; init; } = [];

    /// <summary>Kinds that need it where an ingredient of <see cref="WithIngredients"/> is in the product.</summary>
    public ImmutableArray<string> WithKinds { get; init; } = [];

    /// <summary>The ingredients that call for it in those kinds; null where there are none.</summary>
    public Regex? WithIngredients { get; init; }
}

/// <summary>The warnings of a market's folder.</summary>
public static class SafetyLists
{
    private static readonly ConcurrentDictionary<Market, ImmutableArray<RequiredWarning>> Warnings = new();

    /// <summary>The warnings of a market.</summary>
    public static ImmutableArray<RequiredWarning> WarningsOf(Market market) =>
        Warnings.GetOrAdd(market, m => [.. m.Records("warnings").Select(Warning)]);

    private static RequiredWarning Warning(YamlRecord record)
    {
        record.OnlyKeys("id", "signal", "kinds", "words", "ingredients", "says ingredient", "with", "parts");
        var with = record.Has("with") ? record.Record("with", "{ kinds: [bath-bomb], ingredients: [...] }") : null;
        return new(
            "warning.missing/" + record.Text("id", "a name"),
            record.Has("words") ? PhrasePattern.Any(record.Texts("words", "[aerosol]")) : null,
            record.Has("ingredients") ? PhrasePattern.Whole(record.Texts("ingredients", "[butane]")) : null,
            record.Has("says ingredient"),
            [.. record.Records("parts", "- { says: ..., words: [...] }")
                .Select(p => new WarningPart(p.Text("says", "what it says"), PhrasePattern.Any(p.Texts("words", "[urinary tract]")),
                    Any(p, "unless"), Whole(p, "only with"), Facts(p),
                    p.Has("exact") ? [.. p.Texts("exact", "[Use only as directed]")] : []))])
        {
            Signal = record.Has("signal") ? record.Text("signal", "Caution") : null,
            Kinds = record.Has("kinds") ? [.. record.Texts("kinds", "[foaming-bath]")] : [],
            WithKinds = with is null ? [] : [.. with.Texts("kinds", "[bath-bomb]")],
            WithIngredients = with is null ? null : Whole(with, "ingredients"),
        };
    }

    private static ImmutableArray<Exemption> Facts(YamlRecord record) => !record.Has("facts") ? []
        : [.. record.Texts("facts", "[not spray]")
            .Select(t => Exemption.Parse(t) is var e && e.IsValue ? e.Value : throw record.RefuseAt("facts", e.Problem))];

    private static Regex? Any(YamlRecord record, string key) => record.Has(key) ? PhrasePattern.Any(record.Texts(key, "[foam]")) : null;

    private static Regex? Whole(YamlRecord record, string key) =>
        record.Has(key) ? PhrasePattern.Whole(record.Texts(key, "[propane]")) : null;
}
