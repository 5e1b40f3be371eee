using LabelForge.Checks.Reading;

namespace LabelForge.Checks.Words;

/// <summary>
/// What a sentence makes of a word that would claim something. It claims nothing where
/// <list type="bullet">
/// <item>the sentence warns or directs: "if a rash occurs", "do not use on wounds";</item>
/// <item>a denial before it reaches it: up to a "but", a colon or dash, or a comma with no "or" after it ("does not treat
/// acne, eczema or psoriasis"; "not tested on animals, treats acne" claims); "not only" denies nothing; or a denial stands
/// right behind it, or behind the act: "heilt keine Krankheiten"; not where it tells since when a thing is no more: "since I
/// use it, I have no eczema";</item>
/// <item>it is asked, and the answer denies it: "Does it cure eczema? No.";</item>
/// <item>it is part of a place's or a business's name: "Acne Street";</item>
/// <item>the words beside it tell of research or charity, or of what people built for it: "a share goes to eczema research",
/// "beside the old fever hospital";</item>
/// <item>it says what a thing smells like, or is itself a scent or a name: "smells like a pharmacy", "Poison Ivy, a scent of
/// green leaf";</item>
/// <item>the clause tells what gave a thing its name: "named after the baker's toothache".</item>
/// </list>
/// </summary>
internal static partial class WordContext
{
    /// <summary>Whether the words claim nothing where they stand.</summary>
    public static bool ClaimsNothing(ClaimPlace place) =>
        place.Grammars.Any(g => Warns(place, g) || Denies(place, g) || AnsweredNo(place, g) || IsName(place, g) || Gives(place, g)
            || IsScent(place, g) || IsNamed(place, g))
            || RunsIntoAWarning(place);

    // A line below that begins a warning or directions goes on with nothing: "12M after opening / Keep away from the nose".
    private static bool RunsIntoAWarning(ClaimPlace place)
    {
        var text = place.Text.Folded;
        return Enumerable.Range(place.Start, place.End - place.Start)
            .Any(i => text[i] == '\n' && LabelWords.BeginsAny(text[(i + 1)..], [LabelWord.Warnings, LabelWord.Directions]));
    }

    /// <summary>Whether the sentence denies the words, or says that it lacks what they name.</summary>
    public static bool IsDenied(ClaimPlace place) => place.Grammars.Any(g => Denies(place, g)) || DenialPattern.Lacks(place);

    /// <summary>Whether the words right beside these say that it is not in there: "no propellant"; "never pierce an
    /// aerosol" does not.</summary>
    public static bool IsLacking(ClaimPlace place) => IsNot(place) || DenialPattern.Lacks(place);

    /// <summary>Whether what begins here is itself denied: "Not vegan" denies nothing.</summary>
    public static bool IsNot(ClaimPlace place) => place.Grammars.Any(g => g.NotBefore.IsMatch(place.Before));

    /// <summary>Whether it is asked, and the answer denies it: "Is it vegan? No."</summary>
    public static bool IsAnsweredNo(ClaimPlace place) => place.Grammars.Any(g => AnsweredNo(place, g));

    /// <summary>Whether what the words act on makes them a figure of speech: "heals the soul".</summary>
    public static bool IsFigure(ClaimPlace place) =>
        place.Grammars.Any(g => g.Figure.IsMatch(place.After) || g.Thing.IsMatch(place.Words));

    private static bool Warns(ClaimPlace place, SentenceGrammar grammar) =>
        (grammar.WarnsFirst.IsMatch(place.Sentence) || grammar.Warns.IsMatch(place.Sentence)) && !grammar.WarnsNot.IsMatch(place.Sentence);

    private static bool Denies(ClaimPlace place, SentenceGrammar grammar)
    {
        var (before, after) = (place.Before, place.After);
        var reach = Behind(grammar.Not, before);
        // "Since this soap I have no eczema" claims; "since this is soap, it treats no eczema" does not.
        if (grammar.Since.IsMatch(place.Sentence) && WordLists.Acts(reach + place.Words, grammar.Language) is null)
            return false;
        return grammar.NotAfter.IsMatch(after) || grammar.NotNear.IsMatch(before)
            || grammar.NotRightAfter.IsMatch(place.Words[FirstWord(place.Words)..])
            || (reach is not null && Reaches(reach, place.Words, after, grammar));
    }

    // What stands behind the last of some words; null where none of them does.
    private static string? Behind(Regex words, string text) =>
        words.Matches(text).LastOrDefault() is { } last ? text[(last.Index + last.Length)..] : null;

    private static bool Reaches(string between, string words, string after, SentenceGrammar grammar)
    {
        if (grammar.But.IsMatch(between) || Turn().IsMatch(between))
            return false;
        var comma = between.LastIndexOf(',');
        return comma < 0
            || (grammar.Or.IsMatch(between[(comma + 1)..] + words + after) && !StartsAnew(between[(comma + 1)..], words, after, grammar));
    }

    // "Not tested on animals, treats acne or eczema": in English a verb in -s after the comma starts anew; "acne, hives or burns" goes on.
    private static bool StartsAnew(string between, string words, string after, SentenceGrammar grammar) =>
        grammar.Language == English && Anew().IsMatch((between + words + after).TrimStart());

    private const string English = "en";

    private static bool AnsweredNo(ClaimPlace place, SentenceGrammar grammar) => place.IsAsked && grammar.Answers.IsMatch(place.Next);

    private static bool IsName(ClaimPlace place, SentenceGrammar grammar) => char.IsUpper(place.Words[0])
        && (grammar.PlaceAfter.IsMatch(place.After)
            || grammar.PlaceAfter.IsMatch(place.Words[FirstWord(place.Words)..])
            || grammar.PlaceBefore.IsMatch(place.Before)
            || grammar.HouseAfter.IsMatch(place.After)
            || grammar.HouseBefore.IsMatch(place.Before)
            || (grammar.Language != English && IsOfName(place)));

    /// <summary>Whether the words end a name, as in "La Salina de Remedios": behind another name and what joins the two.</summary>
    public static bool IsOfName(ClaimPlace place) => char.IsUpper(place.Words[0]) && OfName().IsMatch(place.Before);

    [GeneratedRegex(@"\p{Lu}\p{Ll}+\s(?:de|del|de la|do|da|dos|das|di|della|du|des)\s$")]
    private static partial Regex OfName();

    private static int FirstWord(string words) => words.TakeWhile(char.IsLetter).Count();

    private static bool IsScent(ClaimPlace place, SentenceGrammar grammar) =>
        grammar.Sensed.IsMatch(place.Before) || grammar.Scent.IsMatch(place.After);

    // "Named after the baker's toothache", "the toothache gave it its name"; "named for my daughter, it cures toothache" claims, and
    // what is done to an ill does wherever a name is told.
    private static bool IsNamed(ClaimPlace place, SentenceGrammar grammar) =>
        WordLists.Acts(place.Words, grammar.Language) is null
            && ((Behind(grammar.Names, place.Before) is { } between && IsOneClause(between, grammar))
                || (grammar.Names.Match(place.After) is { Success: true } after && IsOneClause(place.After[..after.Index], grammar)));

    private static bool IsOneClause(string between, SentenceGrammar grammar) =>
        !between.Any(c => c is ',' or ';' or '(') && !Turn().IsMatch(between) && !grammar.But.IsMatch(between)
            && between.Split(' ', StringSplitOptions.RemoveEmptyEntries).Length <= MostBesideName;

    private const int MostBesideName = 6;

    private static bool Gives(ClaimPlace place, SentenceGrammar grammar) =>
        grammar.GivesBefore.IsMatch(place.Before) || grammar.GivesAfter.IsMatch(place.After)
        || grammar.InstitutionAfter.IsMatch(place.After) || grammar.InstitutionBefore.IsMatch(place.Before);

    [GeneratedRegex(@":|\s[–—-]\s")]
    private static partial Regex Turn();

    [GeneratedRegex(@"^(?:[\p{L}]+(?:[^siu\W]s|ing)\b(?!\s+n?or\b|\s*,)|great|good|perfect|ideal|for\b|it\b)", RegexOptions.IgnoreCase)]
    private static partial Regex Anew();
}
