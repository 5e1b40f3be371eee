using System.Collections.Concurrent;
using LabelForge.Checks.Reading;
using LabelForge.Ingredients;

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

/// <summary>Words of one language.</summary>
/// <param name="Language">Its code, such as <c>en</c>.</param>
/// <param name="Finds">Finds them in a text without accents.</param>
public sealed record LanguageWords(string Language, PhraseSet Finds);

/// <summary>Words that claim something.</summary>
/// <param name="Id">The entry's name.</param>
/// <param name="Makes">What they make of the product.</param>
/// <param name="Words">The words, by language.</param>
/// <param name="Unless">Words in the same sentence that change their sense.</param>
/// <param name="Says">What they say, as a sentence's end.</param>
/// <param name="Instead">A wording on the right side.</param>
public sealed record ClaimWords(string Id, Makes Makes, ImmutableArray<LanguageWords> Words, ImmutableArray<PhraseSet> Unless, string Says,
    string Instead)
{
    /// <summary>The markets in which they do so, as <c>us</c>; empty for all.</summary>
    public ImmutableArray<string> Markets { get; init; } = [];

    /// <summary>The entries that its words belong to as well: what promises younger skin promises better looks.</summary>
    internal ImmutableArray<string> Also { get; init; } = [];

    /// <summary>What they mean, in words of classes; beside the words as they stand.</summary>
    internal ImmutableArray<LanguageMeanings> Meanings { get; init; } = [];

    /// <summary>Whether they may be a figure of speech: "heals the soul".</summary>
    public bool Figures { get; init; }

    /// <summary>Whether they do so in a market.</summary>
    public bool HoldsIn(Market market) => Markets.IsEmpty || Markets.Contains(market.Id);
}

/// <summary>What words of a language mean, for a claim.</summary>
/// <param name="Language">The language.</param>
/// <param name="Patterns">The patterns that it has all words for.</param>
internal sealed record LanguageMeanings(string Language, Lazy<ImmutableArray<MeaningPattern>> Patterns);

/// <summary>Words that deny an ingredient, and the ingredients that contradict them.</summary>
public sealed record DenialWords(
    string Id, PhraseSet Words, ImmutableArray<IngredientRole> Roles, bool Animal, Lazy<Regex>? Names, Lazy<Regex>? But,
    Lazy<Regex>? Perhaps, string Instead)
{
    /// <summary>Whether an ingredient of this name contradicts the words.</summary>
    public bool IsContradictedBy(string name, Ingredient? known) =>
        !Fits(But, name, known)
        && (Fits(Names, name, known)
            || (Animal && known?.Flags.HasFlag(IngredientFlags.Animal) == true)
            || known?.Roles.Any(r => Roles.Contains(r) && IsMainRole(r, known)) == true);

    /// <summary>Whether an ingredient of this name may come from what the words deny.</summary>
    public bool IsDoubtfulWith(string name, Ingredient? known) => Fits(Perhaps, name, known);

    private static bool Fits(Lazy<Regex>? pattern, string name, Ingredient? known) =>
        pattern?.Value is { } names && (names.IsMatch(name) || (known is not null && names.IsMatch(known.Us)));

    // Benzyl alcohol preserves and smells, titanium dioxide whitens and thickens: only what a thing is for first of all counts.
    private static bool IsMainRole(IngredientRole role, Ingredient known) =>
        known.Roles[0] == role || role is IngredientRole.EssentialOil or IngredientRole.Soap;
}

/// <summary>The word lists that ship with the program.</summary>
public static class WordLists
{
    private static readonly Lazy<ImmutableArray<ClaimWords>> LazyClaims = new(LoadClaims);
    private static readonly Lazy<ImmutableArray<DenialWords>> LazyDenials = new(() => [.. Records("denials").Select(Denial)]);

    /// <summary>Words that claim.</summary>
    public static ImmutableArray<ClaimWords> Claims => LazyClaims.Value;

    /// <summary>Words that deny.</summary>
    public static ImmutableArray<DenialWords> Denials => LazyDenials.Value;

    // The English list says what an entry is; the other languages add words to it by its id.
    private static ImmutableArray<ClaimWords> LoadClaims()
    {
        var all = Records("claims").Select(Claim).ToArray();
        foreach (var language in SentenceGrammar.All.Select(g => g.Language).Where(l => l != English))
        {
            foreach (var record in Records($"claims-{language}"))
            {
                record.OnlyKeys("id", "words", "unless");
                var at = Entry(all, record);
                all[at] = all[at] with
                {
                    Words = all[at].Words.Add(new(language, PhraseSet.Of(record.Texts("words", "[...]")))),
                    Unless = [.. all[at].Unless, .. Unless(record)],
                };
            }
        }
        foreach (var record in Records("meanings"))
        {
            record.OnlyKeys("id", "patterns");
            var at = Entry(all, record);
            all[at] = all[at] with
            {
                Meanings = MeaningsOf(record.Texts("patterns", "[\"{acts} ... {ailments}\"]")),
            };
        }
        return Joined([.. all]);
    }

    // The words of a language are put together when a text may be in it: most labels are in one or two.
    private static ImmutableArray<LanguageMeanings> MeaningsOf(IReadOnlyList<string> patterns) =>
        [.. SentenceGrammar.All.Select(g => new LanguageMeanings(g.Language,
            new(() => [.. patterns.Select(p => MeaningPattern.Of(p, g.Language, ClassesOf(g.Language))).OfType<MeaningPattern>()])))];

    private static ImmutableArray<ClaimWords> Joined(ImmutableArray<ClaimWords> all) =>
    [
        .. all.Select(entry => all.Where(o => o.Also.Contains(entry.Id)).Aggregate(entry, (e, o) => e with
        {
            Words = [.. e.Words, .. o.Words],
            Meanings = [.. e.Meanings, .. o.Meanings],
        })),
    ];

    private static readonly ConcurrentDictionary<string, Lazy<ImmutableDictionary<string, WordClass>>> Classes =
        new(StringComparer.Ordinal);

    // None where a language has no grammar.
    private static ImmutableDictionary<string, WordClass> ClassesOf(string language) =>
        Classes.GetOrAdd(language, l => new(() => SentenceGrammar.All.Any(g => g.Language == l)
            ? WordClass.Read(Records($"meanings-{l}"), Shared(l))
            : ImmutableDictionary<string, WordClass>.Empty)).Value;

    private static ILookup<string, string> Shared(string language) =>
        LanguageOf.SharedLists.SelectMany(l => WordClass.Shared(Records(l), language)).ToLookup(w => w.Class, w => w.Word);

    // The classes of meanings that say that something is done to something.
    private static readonly string[] Doing = ["acts", "builds"];

    // "For" and its like, which many classes hold, are said of anything.
    private const int ShortestAct = 5;

    /// <summary>Where words first say that something is made to go, eased, kept off or built up; null where they do not.</summary>
    internal static WordSpan? Acts(string words, string language)
    {
        var lower = FoldedText.Of(words);
        var classes = ClassesOf(language);
        WordSpan[] found = [.. Doing.Where(classes.ContainsKey).SelectMany(d => classes[d].In(lower))
            .Where(s => s.End - s.Start >= ShortestAct)];
        return found.Length > 0 ? found.Min() : null;
    }

    /// <summary>What everyday talk names as well as a physician does: "cough", "snake bite".</summary>
    internal static WordClass? Everyday(string language) =>
        ClassesOf(language).GetValueOrDefault("everyday");

    private static int Entry(ClaimWords[] all, YamlRecord record)
    {
        var id = record.Text("id", "the id of an entry of claims.yaml");
        return Array.FindIndex(all, c => c.Id == id) is var at and >= 0 ? at
            : throw record.RefuseAt("id", "claims.no-such-entry", ("id", id));
    }

    private const string English = "en";

    private static ClaimWords Claim(YamlRecord record)
    {
        record.OnlyKeys("id", "makes", "also", "words", "unless", "says", "instead", "markets", "figures");
        var makes = record.Text("makes", "drug, cosmetic, proof or unfair");
        return new(
            record.Text("id", "a name"),
            Enum.TryParse<Makes>(makes, ignoreCase: true, out var kind)
                ? kind
                : throw record.RefuseAt("makes", "claims.unknown-meaning", ("makes", makes)),
            [new(English, PhraseSet.Of(record.Texts("words", "[heals, healing]")))],
            [.. Unless(record)],
            record.Text("says", "what they say"),
            record.Text("instead", "a wording"))
        { Markets = [.. Texts(record, "markets")], Also = [.. Texts(record, "also")], Figures = record.Has("figures") };
    }

    private static IEnumerable<PhraseSet> Unless(YamlRecord record) =>
        record.Has("unless") ? [PhraseSet.Of(record.Texts("unless", "[appearance of]"))] : [];

    private static DenialWords Denial(YamlRecord record)
    {
        record.OnlyKeys("id", "nouns", "phrases", "roles", "flags", "names", "but", "perhaps", "instead");
        var (nouns, phrases) = (Texts(record, "nouns"), Texts(record, "phrases"));
        return new(
            record.Text("id", "a name"),
            new([.. nouns, .. phrases], _ => DenialPattern.For(nouns, phrases)),
            [.. Texts(record, "roles").Select(r => Enum.Parse<IngredientRole>(r.Replace("-", ""), ignoreCase: true))],
            Texts(record, "flags").Contains("animal"),
            Whole(record, "names"), Whole(record, "but"), Whole(record, "perhaps"),
            record.Has("instead") ? record.Text("instead", "a wording") : "");
    }

    private static Lazy<Regex>? Whole(YamlRecord record, string key) =>
        record.Has(key) && record.Texts(key, "[tallow]") is { } names ? new(() => PhrasePattern.Whole(names)) : null;

    private static IReadOnlyList<string> Texts(YamlRecord record, string key) => record.Has(key) ? record.Texts(key, "[fragrance]") : [];

    private static IReadOnlyList<YamlRecord> Records(string list)
    {
        var name = $"markets/Words/{list}.yaml";
        return YamlRecord.Embedded(name);
    }
}
