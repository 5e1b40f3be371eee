using LabelForge.Checks.Reading;

namespace LabelForge.Checks.Words;

/// <summary>A label's words as they are looked through for claims: without accents, sentence by
/// sentence, each in the language that it seems to be in.</summary>
internal sealed class ClaimText
{
    private readonly Lazy<ImmutableArray<int>> ofAll;
    private string? lower;
    private readonly Dictionary<int, ImmutableArray<SentenceGrammar>> grammars = [];
    private readonly Dictionary<WordClass, ImmutableArray<WordSpan>> spans = [];
    private readonly Dictionary<ClaimWords, ImmutableArray<ClaimHit>> hits = [];
    private HashSet<string>? languages;

    /// <summary>A text.</summary>
    public ClaimText(string text)
    {
        Written = text;
        Folded = FoldedText.KeepingCase(text);
        ofAll = new(() => Scores(Folded));
    }

    /// <summary>As it was written.</summary>
    public string Written { get; }

    /// <summary>Without accents, letter for letter.</summary>
    public string Folded { get; }

    /// <summary>Without accents, in small letters.</summary>
    public string Lower => lower ??= Folded.ToLowerInvariant();

    /// <summary>Where words of a class stand in it.</summary>
    public ImmutableArray<WordSpan> Of(WordClass words)
    {
        if (!spans.TryGetValue(words, out var known))
            spans.Add(words, known = words.In(Lower));
        return known;
    }

    /// <summary>The words of it that make a claim; the same in every market, so looked for once.</summary>
    public ImmutableArray<ClaimHit> Hits(ClaimWords claim)
    {
        if (!hits.TryGetValue(claim, out var known))
            hits.Add(claim, known = [.. WordCheck.Hits(this, claim)]);
        return known;
    }

    /// <summary>Whether any sentence may be in a language.</summary>
    public bool MayBe(string language) =>
        (languages ??= [.. Sentences().SelectMany(s => GrammarsOf(s.Start, s.End)).Select(g => g.Language)]).Contains(language);

    private IEnumerable<WordSpan> Sentences()
    {
        for (var from = 0; from < Folded.Length;)
        {
            var place = At(from, 0);
            yield return new(place.From, place.To);
            from = Math.Max(place.To, from) + 1;
        }
    }

    /// <summary>The sentence around a place.</summary>
    public ClaimPlace At(int start, int length)
    {
        var from = start;
        while (from > 0 && !Ends(from - 1))
            from--;
        var to = start + length;
        while (to < Folded.Length && !Ends(to))
            to++;
        return new(this, from, to, start, start + length);
    }

    /// <summary>The grammars of the languages that a sentence may be in: those whose small words
    /// it has most of; where it has none, those that the whole text has many of, for a label may be in two languages, or any where its
    /// words are not English.</summary>
    public ImmutableArray<SentenceGrammar> GrammarsOf(int from, int to)
    {
        if (grammars.TryGetValue(from, out var known))
            return known;
        var own = Scores(Folded[from..to]);
        var best = Best(SentenceGrammar.All, own);
        ImmutableArray<int> whole = [.. best.Select(g => ofAll.Value[SentenceGrammar.All.IndexOf(g)])];
        return grammars[from] = best.Length == 1 ? best
            : own.Max() > 0 ? Best(best, whole)
            : IsOfAnother(Written[from..to]) ? best
            : [.. best.Where((_, i) => whole[i] == whole.Max() || (whole[i] >= FewestSmall && whole[i] * MostTimesLess >= whole.Max()))];
    }

    // Words that are not English and say something beside a name, as "dermatologisch getest" on a label in English, may be in any.
    private static bool IsOfAnother(string sentence) =>
        sentence.Split(' ', StringSplitOptions.RemoveEmptyEntries) is [_, _, ..] words && words.Skip(1).Any(w => char.IsLower(w[0]))
            && !LanguageOf.IsMostlyEnglish(sentence);

    // So many small words tell of a second language on a label, where it has no more than so many times as many of the first.
    private const int FewestSmall = 2;
    private const int MostTimesLess = 3;

    private static ImmutableArray<SentenceGrammar> Best(ImmutableArray<SentenceGrammar> all, ImmutableArray<int> scores) =>
        [.. all.Where((_, i) => scores[i] == scores.Max())];

    private static ImmutableArray<int> Scores(string text) => [.. SentenceGrammar.All.Select(g => g.Small.Count(text))];

    // A line that starts anew with a capital ends a sentence too.
    private bool Ends(int at) => LanguageOf.EndsSentence(Folded, at) || (Folded[at] == '\n' && NextIsCapital(at + 1));

    private bool NextIsCapital(int at)
    {
        while (at < Folded.Length && Folded[at] == ' ')
            at++;
        return at >= Folded.Length || !char.IsLower(Folded[at]);
    }
}

/// <summary>Words of a text, in their sentence.</summary>
/// <param name="Text">The text.</param>
/// <param name="From">Where the sentence begins.</param>
/// <param name="To">Where it ends.</param>
/// <param name="Start">Where the words begin.</param>
/// <param name="End">Where they end.</param>
internal readonly record struct ClaimPlace(ClaimText Text, int From, int To, int Start, int End)
{
    /// <summary>The sentence, without accents.</summary>
    public string Sentence => Text.Folded[From..To];

    /// <summary>What stands before the words in it.</summary>
    public string Before => Text.Folded[From..Start];

    /// <summary>The words.</summary>
    public string Words => Text.Folded[Start..End];

    /// <summary>What stands after the words in it.</summary>
    public string After => Text.Folded[End..To];

    /// <summary>Whether one of two words is listed beside the other: with a comma or an "and" between them, and nothing else.</summary>
    public bool Lists(WordSpan one, WordSpan other)
    {
        var (end, start) = one.Start < other.Start ? (one.End, other.Start) : (other.End, one.Start);
        if (start <= end || start - end > MostOfJoin)
            return false;
        var between = Text.Folded[end..start].Trim();
        return between == "," || Grammars.Any(g => g.And.Contains(between.TrimStart(',', ' '), StringComparer.OrdinalIgnoreCase));
    }

    private const int MostOfJoin = 7;

    /// <summary>Whether it is asked.</summary>
    public bool IsAsked => To < Text.Folded.Length && Text.Folded[To] == '?';

    /// <summary>What follows the sentence.</summary>
    public string Next => To + 1 < Text.Folded.Length ? Text.Folded[(To + 1)..Math.Min(Text.Folded.Length, To + 60)] : "";

    /// <summary>The grammars of its language.</summary>
    public ImmutableArray<SentenceGrammar> Grammars => Text.GrammarsOf(From, To);
}
