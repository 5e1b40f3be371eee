using System.Collections.Immutable;
using System.Text.RegularExpressions;
using LabelForge.Ingredients;
using LabelForge.Markets;

namespace LabelForge.Checks.Words;

/// <summary>What words make of a product.</summary>
public enum Makes
{
    /// <summary>A drug.</summary>
    Drug,

    /// <summary>A cosmetic, where it would be a soap without them.</summary>
    Cosmetic,

    /// <summary>No other thing, but they need proof.</summary>
    Proof,

    /// <summary>No other thing, but they set down others or claim what every product must be.</summary>
    Unfair,
}

/// <summary>Words that claim something.</summary>
/// <param name="Id">The entry's name.</param>
/// <param name="Makes">What they make of the product.</param>
/// <param name="Words">Finds them.</param>
/// <param name="Unless">Words beside them that change their sense; null where there are none.</param>
/// <param name="Says">What they say, as a sentence's end.</param>
/// <param name="Instead">A wording on the right side.</param>
public sealed record ClaimWords(string Id, Makes Makes, Regex Words, Regex? Unless, string Says, string Instead)
{
    /// <summary>The markets in which they do so, as <c>us</c>; empty for all.</summary>
    public ImmutableArray<string> Markets { get; init; } = [];

    /// <summary>Whether they do so in a market.</summary>
    public bool HoldsIn(Market market) => Markets.IsEmpty || Markets.Contains(MarketText.Of(market));
}

/// <summary>Words that deny an ingredient, and the ingredients that contradict them.</summary>
public sealed record DenialWords(
    string Id, Regex Words, ImmutableArray<IngredientRole> Roles, bool Animal, Regex? Names, Regex? But, Regex? Perhaps, string Instead)
{
    /// <summary>Whether an ingredient of this name contradicts the words.</summary>
    public bool IsContradictedBy(string name, Ingredient? known) =>
        But?.IsMatch(name) != true && (But is null || known is null || !But.IsMatch(known.Us))
        && (Fits(Names, name, known) || (Animal && known?.Flags.HasFlag(IngredientFlags.Animal) == true) || known?.Roles.Any(r => Roles.Contains(r) && IsMainRole(r, known)) == true);

    /// <summary>Whether an ingredient of this name may come from what the words deny.</summary>
    public bool IsDoubtfulWith(string name, Ingredient? known) => Fits(Perhaps, name, known);

    private static bool Fits(Regex? pattern, string name, Ingredient? known) => pattern is not null && (pattern.IsMatch(name) || (known is not null && pattern.IsMatch(known.Us)));

    // Benzyl alcohol preserves and smells, titanium dioxide whitens and thickens: only what a thing is for first of all counts.
    private static bool IsMainRole(IngredientRole role, Ingredient known) => known.Roles[0] == role || role is IngredientRole.EssentialOil or IngredientRole.Soap;
}

/// <summary>The word lists that ship with the program.</summary>
public static class WordLists
{
    private static readonly Lazy<ImmutableArray<ClaimWords>> LazyClaims = new(() => [.. Records("claims").Select(Claim)]);
    private static readonly Lazy<ImmutableArray<DenialWords>> LazyDenials = new(() => [.. Records("denials").Select(Denial)]);

    /// <summary>Words that claim.</summary>
    public static ImmutableArray<ClaimWords> Claims => LazyClaims.Value;

    /// <summary>Words that deny.</summary>
    public static ImmutableArray<DenialWords> Denials => LazyDenials.Value;

    private static ClaimWords Claim(YamlRecord record)
    {
        record.OnlyKeys("id", "makes", "words", "unless", "says", "instead", "markets");
        var makes = record.Text("makes", "drug, cosmetic, proof or unfair");
        return new(
            record.Text("id", "a name"),
            Enum.TryParse<Makes>(makes, ignoreCase: true, out var kind) ? kind : throw record.RefuseAt("makes", $"\"{makes}\" is not known.", "Write drug, cosmetic, proof or unfair."),
            PhrasePattern.Any(record.Texts("words", "[heals, healing]")),
            record.Has("unless") ? PhrasePattern.Any(record.Texts("unless", "[appearance of]")) : null,
            record.Text("says", "what they say"),
            record.Text("instead", "a wording"))
        { Markets = [.. Texts(record, "markets")] };
    }

    private static DenialWords Denial(YamlRecord record)
    {
        record.OnlyKeys("id", "nouns", "phrases", "roles", "flags", "names", "but", "perhaps", "instead");
        return new(
            record.Text("id", "a name"),
            DenialPattern.For(Texts(record, "nouns"), Texts(record, "phrases")),
            [.. Texts(record, "roles").Select(r => Enum.Parse<IngredientRole>(r.Replace("-", ""), ignoreCase: true))],
            Texts(record, "flags").Contains("animal"),
            Whole(record, "names"), Whole(record, "but"), Whole(record, "perhaps"), record.Has("instead") ? record.Text("instead", "a wording") : "");
    }

    private static Regex? Whole(YamlRecord record, string key) => record.Has(key) ? PhrasePattern.Whole(record.Texts(key, "[tallow]")) : null;

    private static IReadOnlyList<string> Texts(YamlRecord record, string key) => record.Has(key) ? record.Texts(key, "[fragrance]") : [];

    private static IReadOnlyList<YamlRecord> Records(string list)
    {
        var name = $"markets/Words/{list}.yaml";
        return YamlRecord.Shipped(name);
    }
}
