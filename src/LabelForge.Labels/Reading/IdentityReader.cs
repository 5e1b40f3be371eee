namespace LabelForge.Checks.Reading;

/// <summary>A statement of identity as it stands on a label.</summary>
/// <param name="Written">The line, or the part of it, that says what the product is.</param>
/// <param name="Kind">The kind of product it names.</param>
public sealed record IdentityRead(TextSpan Span, string Written, ProductKind Kind);

/// <summary>Finds the words that say what a product is.</summary>
public static partial class IdentityReader
{
    private const int SentenceWords = 5;
    private const int MostOfBroken = 4;

    private static readonly Lazy<IdentityWords<ProductKind>> Held = new(() => Load("identities", "identities-languages"));
    private static readonly Lazy<IdentityWords<ProductKind>> English = new(() => Load("identities"));

    // What begins with the words of another part says no more than that. English ones are told by the sentence they make:
    // "Massage oil" and "Spray deodorant" are what a product is.
    private static readonly Lazy<Regex> IsOther = new(() => new Regex(
        $@"^\W*(?:{LabelWords.Alternatives(LabelWords.Languages.Where(l => l != "en").SelectMany(l => new[] { LabelWord.Directions, LabelWord.Warnings, LabelWord.Responsible, LabelWord.MadeIn, LabelWord.BestBefore }.SelectMany(w => LabelWords.Of(w, l))))})(?![\p{{L}}])",
        RegexOptions.CultureInvariant, TimeSpan.FromSeconds(5)));

    /// <summary>The statement, the most telling of those found; null where nothing says what the product is.</summary>
    /// <param name="text">The label's text, ingredients, quantity and business blanked.</param>
    /// <param name="business">The business's name, in which "soap" names no product; or null.</param>
    public static IdentityRead? Read(string text, string? business)
    {
        IdentityRead? best = null;
        var bestLength = 0;
        var said = business is { Length: > 2 } ? WholeWords.Blanked(text, business) : text;
        foreach (var (start, part, broken) in Names(said).Select(p => (p.Start, p.Text, Broken: -1)).Concat(OverTwoLines(said)))
        {
            foreach (var (span, length, kind) in Held.Value.In(part))
            {
                if (length > bestLength && IsHead(part[span.End..]) && (broken < 0 || (span.Start < broken && span.End > broken)))
                {
                    best = new(new TextSpan(start, part.Length), Written(part), kind);
                    bestLength = length;
                }
            }
        }
        return best ?? ByParts(said);
    }

    // No list has the whole name: "Hårbalsam · havre" says by its parts what it is.
    private static IdentityRead? ByParts(string said)
    {
        foreach (var (start, part) in Names(said).Concat(OverTwoLines(said).Select(p => (p.Start, p.Text))))
        {
            if (IdentityParts.In(part) is var (span, kind) && IsHead(part[span.End..]))
                return new(new TextSpan(start, part.Length), Written(part), kind);
        }
        return null;
    }

    private static string Written(string part) => Spaces().Replace(part, " ").Trim(' ', '*', '#', '"', '.', ',', '-', '_', '·', '•', '~');

    // On a narrow label a name takes two lines: "Balsamo" over "labbra".
    private static IEnumerable<(int Start, string Text, int Broken)> OverTwoLines(string text)
    {
        var parts = Parts(text).ToArray();
        foreach (var ((start, first), (next, second)) in parts.Zip(parts.Skip(1)))
        {
            if (next == start + first.Length + 1 && text[next - 1] == '\n' && first.Trim().Length > 0 && second.Trim().Length > 0
                && Words(first) <= MostOfBroken && Words(second) <= MostOfBroken
                && $"{first} {second}" is var both && IsShort(both) && !IsOther.Value.IsMatch(FoldedText.Of(both)))
                yield return (start, both, first.Length);
        }
    }

    private static int Words(string part) => part.Split(' ', StringSplitOptions.RemoveEmptyEntries).Length;

    /// <summary>Whether a text says in English what a product is.</summary>
    public static bool IsInEnglish(string text) => Names(text).Any(p => English.Value.In(p.Text).Any(n => IsHead(p.Text[n.Span.End..])));

    /// <summary>Words that hint at what it is and hardly say it: <c>Charcoal Bar</c>, <c>Sleepy
    /// Potion</c>; null where nothing does.</summary>
    /// <param name="text">The label's text, ingredients, quantity and business blanked.</param>
    public static string? Hint(string text) => Parts(text).Select(p => p.Text)
        .Where(p => IsShort(p)
            && p.Split(' ', StringSplitOptions.RemoveEmptyEntries).Length <= 5
            && (Hinting().IsMatch(p) || IdentityParts.Hints(p))).Select(p => Spaces().Replace(p, " ").Trim()).FirstOrDefault();

    private static IdentityWords<ProductKind> Load(params string[] files)
    {
        var words = new IdentityWords<ProductKind>();
        foreach (var record in files.SelectMany(f => YamlRecord.Embedded($"markets/Words/{f}.yaml")))
        {
            var kind = ProductKinds.Find(record.Text("id", "a product kind")).Value!;
            foreach (var phrase in record.Texts("words", "[soap, bar soap]"))
                words.Add(phrase, kind);
        }
        return words;
    }

    /// <summary>The parts of a label that may be a name each: short, and telling nobody to do anything.</summary>
    internal static IEnumerable<(int Start, string Text)> Names(string text) =>
        Parts(text).SelectMany(Strokes)
            .Where(p => IsShort(p.Text) && !GoesOn(text, p.Start) && !IsOther.Value.IsMatch(FoldedText.Of(p.Text)));

    // "MASCARA / BLACK AS YOUR HEART": where the whole is a sentence, what stands between strokes may be a name.
    private static IEnumerable<(int Start, string Text)> Strokes((int Start, string Text) part)
    {
        if (IsShort(part.Text) || !part.Text.Contains(" / ", StringComparison.Ordinal))
            return [part];
        var start = part.Start;
        return part.Text.Split(" / ").Select(t =>
        {
            var at = start;
            start += t.Length + 3;
            return (at, t);
        }).ToArray();
    }

    // A small letter below a line of a sentence goes on with it: "... sunburn. Use" over "a sunscreen, wear protective clothing".
    private static bool GoesOn(string text, int start)
    {
        if (start < 2 || text[start - 1] != '\n' || start >= text.Length || !char.IsLower(text[start]))
            return false;
        var above = text[(text.LastIndexOf('\n', start - 2) + 1)..(start - 1)].TrimEnd();
        return Words(above) >= SentenceWords && above.Any(char.IsLower) && above is not [.., '.' or '!' or '?' or ':'];
    }

    private static IEnumerable<(int Start, string Text)> Parts(string text)
    {
        var start = 0;
        foreach (Match stop in Stop().Matches(text))
        {
            yield return (start, text[start..stop.Index]);
            start = stop.Index + stop.Length;
        }
        yield return (start, text[start..]);
    }

    // A name is short and tells nobody to do anything.
    private static bool IsShort(string part) =>
        part.Trim() is { Length: > 2 } t && t.Split(' ', StringSplitOptions.RemoveEmptyEntries).Length <= 14 && !Sentence().IsMatch(t);

    // In "lavender soap with oats" soap is what it is; in "soap dish", "soap free" and "Soap Company" it is not.
    private static bool IsHead(string after) => Follows().IsMatch(after);

    [GeneratedRegex(@"\n|\.\s|[|•·;]|\s[–—-]\s|,\s|(?<=!)\s|\.$")]
    private static partial Regex Stop();

    [GeneratedRegex(@"^(?:use|apply|lather|rinse|keep|store|add|massage|avoid|wet|rub|work|place|let|allow|enjoy|dissolve|pour|drop)\s+(?:the|your|a|an|bar|bars|soap|in|into|onto|on|to|with|between|gently|well|generously|over|from|out|water|it|this)\b|^(?:wash|rinse|dry)\s+(?:hands|hair|face|skin|thoroughly|afterwards)\b|^(?:our|this|these|each|we|if|for best|free of|no(?!\.\s?[0-9])|not a)\b|\b(?:is|are|was|dry between|your|you|will|should)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Sentence();

    [GeneratedRegex(@"^(?!['’]|\s*(?:co|company|works?|shop|studio|kitchen|makers?|making|dish|saver|base|nut|berry|barn|house|factory|lab|farm|llc|inc|guild|dry|free|residue|scum|well|is|into|onto|directly|away|off)\b)", RegexOptions.IgnoreCase)]
    private static partial Regex Follows();

    [GeneratedRegex(@"\b(?:bar|stick|butter|cream|cr[eè]me|oil|wash|polish|fizz|fizzy|bath|gel|mist|spray|powder|bomb|melt|rub|cleanse|clean|mask|tonic|potion|elixir|whip|glaze|tint)s?\s*$", RegexOptions.IgnoreCase)]
    private static partial Regex Hinting();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Spaces();
}
