using LabelForge.Ingredients;

namespace LabelForge.Checks.Reading;

/// <summary>What words that belong to no part of a label look like.</summary>
public enum StrayKind
{
    /// <summary>Names of ingredients outside the list that was read.</summary>
    Ingredients,

    /// <summary>Words in a language that is not known here.</summary>
    OtherLanguage,

    /// <summary>Words that are not understood.</summary>
    Unknown,

    /// <summary>A sentence some of whose words are not known.</summary>
    Partly,

    /// <summary>Words of no language that stand as a name does, where no name was looked for.</summary>
    Name,

    /// <summary>A sentence in an official language: it was read for its parts, and may promise something.</summary>
    Sentence,
}

/// <summary>Words of a label that belong to none of its parts.</summary>
/// <param name="Span">Where they stand.</param>
/// <param name="Words">The words.</param>
/// <param name="Kind">What they look like.</param>
/// <param name="Language">The language they seem to be in, by ISO 639-1; null where none can be told.</param>
public sealed record StrayWords(TextSpan Span, string Words, StrayKind Kind, string? Language)
{
    /// <summary>Those of the words that are not known, where the others are.</summary>
    public ImmutableArray<string> Unknown { get; init; } = [];
}

/// <summary>Accounts for every word of a label that was read: each belongs to a part, or is a stray.</summary>
public static partial class WordAccount
{
    // A name, a scent or a motto of so few words may be made up; among the first lines it is the product's name.
    private const int MostWordsOfName = 6;
    private const int MostWordsOfTitle = 5;
    private const int MostWordsInCapitals = 3;
    private const int FirstLines = 3;
    private const int NearIdentity = 2;

    // Of the words of a sentence so many are articles, pronouns and their like in any language; of short ones any tells.
    private const double LeastKnown = 0.2;
    private const int FewestNames = 2;

    /// <summary>The strays of a label, in order.</summary>
    /// <param name="text">The label's text.</param>
    /// <param name="taken">What belongs to parts that were found.</param>
    /// <param name="identity">Where it says what the product is; or null.</param>
    /// <param name="trader">Where the business, its place and how to reach it stand: beside them stand names.</param>
    /// <param name="names">Names that may stand anywhere: the business, the product.</param>
    /// <param name="dictionary">The ingredients that are known.</param>
    /// <param name="read">The ingredients that were read.</param>
    public static ImmutableArray<StrayWords> Of(
        LabelText text, IEnumerable<TextSpan> taken, TextSpan? identity, IReadOnlyCollection<TextSpan> trader, IEnumerable<string> names,
        IngredientDictionary dictionary, IEnumerable<IngredientRead> read)
    {
        string[] own = [.. names.Where(n => n.Length > 2)];
        var left = own.Aggregate(text.Without(taken),
            WholeWords.Blanked);
        var isInCapitals = CapitalLetters.AreAll(text.Text);
        var parts = Parts(text.Text, left, identity, trader, isInCapitals).ToArray();
        string[] languages =
        [
            .. parts.Select(p => p.Text).Append(identity is { } named ? LineAt(text.Text, named.Start) : "")
                .SelectMany(p => p.Split('/', ':', '|', '—', '–', '•', '·', '"', '«', '»', '“', '”'))
                .Select(LanguageOf.Find).OfType<(string Language, double Share)>()
                .Where(l => l.Share >= LeastKnown && LabelWords.Languages.Contains(l.Language)).Select(l => l.Language),
        ];
        var known = new KnownWords(languages,
            [.. own, .. trader.Select(s => text.Text.Substring(s.Start, s.Length)), .. parts.Where(p => p.IsTitle).Select(p => p.Text)],
            dictionary);
        // Words that tell no language are in that of most others.
        var main = languages.GroupBy(l => l).OrderByDescending(g => g.Count()).Select(g => g.Key).FirstOrDefault(English);
        var account = new Account(known, main, dictionary, read.Select(r => r.Known?.Key).ToHashSet(), isInCapitals);
        return [.. parts.SelectMany(p => account.Of(p))];
    }

    // Parts that go on over lines as sentences do; who made it, a lot and a quantity do not.
    private static readonly ImmutableArray<LabelWord> OfSentences =
        [LabelWord.Directions, LabelWord.Warnings, LabelWord.BestBefore, LabelWord.MadeIn, LabelWord.Ingredients, LabelWord.MayContain,
            LabelWord.Other];

    // A sentence or what a line holds of it.
    private readonly record struct Part(string Text, TextSpan Span, bool GoesOn, bool IsTitle);

    private static IEnumerable<Part> Parts(string text, string left, TextSpan? identity, IReadOnlyCollection<TextSpan> trader,
        bool isInCapitals)
    {
        var identityLine = identity is { } at ? LineOf(text, at.Start) : -1;
        var (line, seen, goesOn, start) = (0, 0, false, 0);
        foreach (var whole in left.Split('\n'))
        {
            if (text.AsSpan(start, whole.Length).Trim().Length == 0)
                goesOn = false;
            else
                seen++;
            // Names stand among the first lines, and beside what the product is.
            var isTitleLine = seen <= FirstLines || (identityLine >= 0 && Math.Abs(line - identityLine) <= NearIdentity);
            foreach (var part in LanguageOf.SentencesAt(whole))
            {
                var said = whole[part.Start..part.End];
                var words = LanguageOf.Words(said).Count();
                var span = new TextSpan(start + part.Start, part.Length);
                if (words == 0)
                    continue;
                // A sentence goes on over lines and semicolons; "Directions:" and what follows it are one.
                goesOn = LabelWords.BeginsAny(said.Trim(), OfSentences)
                    || (goesOn
                        && (part.Start == whole.Length - whole.TrimStart().Length || (part.Start > 0 && whole[part.Start - 1] == ';'))
                        && !EndsBefore(text, span.Start));
                if (identity?.Overlaps(span) != true && Countries.Code(said.Trim(' ', '.', ',')) is null)
                    yield return new(said, span, goesOn,
                        words <= MostWordsOfName && !EndsSentence(whole, part.End, said, isInCapitals)
                            && (isTitleLine || IsBeside(text, span, trader)));
            }
            start += whole.Length + 1;
            line++;
        }
    }

    // Of a label in capitals the words show nothing: a full stop ends more than one word.
    private static bool EndsSentence(string line, int end, string said, bool isInCapitals) =>
        end < line.Length && line[end] is '.' or '!'
            && said.TrimStart().Split(' ').Skip(1).Any(w => w.Length > 0 && (isInCapitals || char.IsLower(w[0])));

    // On the line of the address, or the one over or under it.
    private static bool IsBeside(string text, TextSpan span, IEnumerable<TextSpan> trader) =>
        trader.Any(t => text.AsSpan(Math.Min(span.End, t.End), Math.Max(0, Math.Max(span.Start, t.Start) - Math.Min(span.End, t.End)))
            .Count('\n') <= 1);

    private sealed class Account(KnownWords known, string main, IngredientDictionary dictionary, HashSet<string?> read,
        bool isInCapitals)
    {
        public IEnumerable<StrayWords> Of(Part part)
        {
            var words = LanguageOf.Words(part.Text).ToArray();
            // One alone may be praised; after a colon it is listed: "Oat also: Avena Sativa (Oat) Kernel Flour".
            var colon = part.Text.LastIndexOf(':') + 1;
            if (ListNames.Split(part.Text).Count(n => IsFormal(n, dictionary, read)) >= FewestNames
                || (colon > 0 && ListNames.Split(part.Text[colon..]).All(n => IsFormal(n, dictionary, read))))
                return [Stray(part, StrayKind.Ingredients, null)];
            var language = LanguageOf.Find(part.Text);
            var isKnownLanguage = language is { Share: >= LeastKnown };
            if (isKnownLanguage && !part.GoesOn && !LabelWords.Languages.Contains(language!.Value.Language))
                return part.IsTitle || IsName(part.Text, words.Length)
                    ? []
                    : [Stray(part, StrayKind.OtherLanguage, language.Value.Language)];
            if (part.IsTitle)
                return [];
            var unknown = known.Unknown(part.Text).Where(w => !RomanNumber().IsMatch(w)).ToArray();
            // A capital begins a name, but for that of the sentence.
            var names =
                unknown.Where(w => char.IsUpper(w[0])
                    && !w.All(char.IsUpper)
                    && !part.Text.TrimStart(' ', '/', '—', '–', '-', '(', '"').StartsWith(w, StringComparison.Ordinal)).ToArray();
            var isLost = unknown.Length > 1 && unknown.Length * 2 >= words.Length;
            if (unknown.Length > 0 && IsName(part.Text, words.Length))
                return [Stray(part, StrayKind.Name, null)];
            var tongue = isKnownLanguage ? language!.Value.Language : main;
            var odd = tongue == German ? unknown : [.. unknown.Except(names)];
            var isWhole = KnownWords.IsWhole(tongue);
            // Where all words have capitals these tell no names: one odd word may be one.
            // One odd word in directions, or in what a maker tells of herself, is her own more often than not: it is shown alone.
            var mayBeOwn = words.Length >= FewestAroundOdd
                && (part.GoesOn || isInCapitals || LabelWords.Has(LabelWord.Maker, tongue, part.Text)
                    || (tongue == English && BeginsWithName(part.Text, odd)));
            if (isLost || (isWhole ? odd.Length > (mayBeOwn ? 1 : 0)
                : unknown.Length > 1 && unknown.Length * MostUnknown >= words.Length))
                return [Stray(part, StrayKind.Unknown, language?.Language)];
            if (unknown.Length > 0 && ((isWhole && odd.Length > 0) || (tongue != English && !part.GoesOn)))
                return [Stray(part, StrayKind.Partly, tongue) with { Unknown = [.. unknown] }];
            if (part.GoesOn || IsName(part.Text, words.Length) || !isKnownLanguage || language!.Value.Language == English
                || words.Length <= MostWordsOfName)
                return [];
            return [Stray(part, StrayKind.Sentence, language.Value.Language)];
        }

        // "Aoife tested the lid on three toddlers": who did it stands first.
        private static bool BeginsWithName(string text, string[] odd) =>
            odd is [var one] && char.IsUpper(one[0]) && one.Any(char.IsLower)
                && text.TrimStart().StartsWith(one, StringComparison.Ordinal);

        private static StrayWords Stray(Part part, StrayKind kind, string? language) =>
            new(part.Span, Spaces().Replace(part.Text, " ").Trim(), kind, language);

        // Few words with capitals.
        private bool IsName(string text, int words) =>
            words <= (isInCapitals ? MostWordsInCapitals : MostWordsOfTitle)
                && text.Split(' ', StringSplitOptions.RemoveEmptyEntries).All(w => !char.IsLower(w[0]));
    }

    private const string English = "en";

    // Its nouns have capitals, so that these tell no name.
    private const string German = "de";

    // Fewer words around one that nobody knows do not say what the sentence is about.
    private const int FewestAroundOdd = 6;

    // Of a sentence in a language that is known in part one word may be missing from the lists, and of more less than a third.
    private const int MostUnknown = 3;

    // Shea butter and honey stand in any praise; names of the nomenclature do not.
    private static bool IsFormal(string name, IngredientDictionary dictionary, HashSet<string?> read) =>
        ListNames.Bare(name) is var bare
            && bare.Contains(' ') | bare.Length > 6
            && dictionary.Find(bare) is { } known
            && !read.Contains(known.Key) && !known.Everyday.Any(e => string.Equals(e, bare, StringComparison.OrdinalIgnoreCase));

    private static bool EndsBefore(string text, int at) => text[..at].TrimEnd(' ', '\n') is [.., '.' or '!' or '?'];

    private static string LineAt(string text, int at) => Lines.At(text, text.LastIndexOf('\n', Math.Max(0, at - 1)) + 1);

    private static int LineOf(string text, int at) => text.AsSpan(0, Math.Min(at, text.Length)).Count('\n');

    [GeneratedRegex("^[MDCLXVI]+$")]
    private static partial Regex RomanNumber();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Spaces();
}
