using System.Collections.Concurrent;

namespace LabelForge.Ingredients.Supplied;

/// <summary>How a supplier's name was found.</summary>
public enum MatchKind
{
    /// <summary>By a name of the label or its Colour Index number, letter case aside.</summary>
    Exact,

    /// <summary>By what people call it: castor oil, vitamin E.</summary>
    Everyday,

    /// <summary>By what no label carries: another language, an E number, a formula, an
    /// abbreviation, a colour's name in another spelling.</summary>
    Other,

    /// <summary>As a scanner's slip: letters of like shape for one another, and one ingredient
    /// alone can have been meant. To be held against the paper.</summary>
    Misread,

    /// <summary>Not at all: for the maker to settle.</summary>
    Unknown,
}

/// <summary>A supplier's name and what the dictionary says to it.</summary>
/// <param name="Written">What the supplier wrote.</param>
/// <param name="Kind">How it was found.</param>
/// <param name="Found">The ingredient; null where it is unknown. A near spelling is never taken for the name itself.</param>
/// <param name="Nearest">Where it is unknown, at most three to choose from, nearest first.</param>
public sealed record NameMatch(SuppliedName Written, MatchKind Kind, Ingredient? Found, ImmutableArray<Ingredient> Nearest);

/// <summary>Matches suppliers' names with a dictionary, without guessing.</summary>
public sealed class NameMatcher(IngredientDictionary dictionary)
{
    private const int MostOffered = 3;
    private const string Fragrance = "Fragrance";

    // Spelling distance grows with the square of the length, and nothing in the dictionary is as long as this.
    private const int LongestToCompare = 120;

    // Shorter names stand inside other words too often to be offered.
    private const int ShortestHeld = 4;

    // Every name of the dictionary with a space at either end, made once and only where a name is unknown.
    private readonly Lazy<(Ingredient Entry, string Spaced)[]> _whole = new(() =>
        [.. dictionary.Entries
            .SelectMany(e => e.Names.Select(NameText.Plain).Where(n => n.Length >= ShortestHeld).Select(n => (e, $" {n} ")))]);

    private readonly OtherNames _others = new(dictionary);

    private readonly ConcurrentDictionary<string, Ingredient?> _seen = new(StringComparer.Ordinal);

    /// <summary>Whether the text is the name of one ingredient as it stands.</summary>
    public bool Knows(string name) => Find(name) is not null;

    /// <summary>
    /// The ingredient of this name, or null. Stricter than the dictionary: where parentheses hold the names of other
    /// ingredients, <c>Soap (Sodium Palmate, Water)</c>, the text is a list and not a name.
    /// </summary>
    public Ingredient? Find(string name) => _seen.GetOrAdd(name, Unambiguous);

    /// <summary>What the dictionary says to each name of a list.</summary>
    public ImmutableArray<NameMatch> Match(SuppliedList list) => [.. list.Names.Select(Match)];

    private NameMatch Match(SuppliedName written)
    {
        if (Find(written.Text) is { } found)
            return new NameMatch(written,
                dictionary.Find(written.Text) is null
                    ? MatchKind.Other
                    : IsEveryday(written.Text, found)
                    ? MatchKind.Everyday
                    : MatchKind.Exact, found, []);
        if (_others.Misread(written.Text) is { } misread
            && (written.Cas is not { } number || misread.Cas.IsEmpty || misread.Cas.Contains(number)))
            return new NameMatch(written with { Remarks = written.Remarks.Add("read as a scanner's slip: hold it against the paper") },
                MatchKind.Misread, misread, []);
        var near = written.Text.Length > LongestToCompare
            ? []
            : dictionary.Suggest(written.Text, MostOffered).Concat(Holding(written.Text));
        var byNumber = dictionary.Entries.Where(e => written.Cas is { } cas && e.Cas.Contains(cas));
        return new NameMatch(written, MatchKind.Unknown, null, [.. byNumber.Concat(near).DistinctBy(i => i.Key).Take(MostOffered)]);
    }

    private Ingredient? Unambiguous(string name)
    {
        var found = dictionary.Find(name);
        if (found is null && name.IndexOfAny([',', ';']) < 0)
            return _others.Find(name);
        var plain = NameText.Plain(name);
        return found is null || IsWritten(found, plain) || (InsideAgrees(found, plain) && OutsideAgrees(found, plain)) ? found : null;
    }

    private static bool IsWritten(Ingredient found, string plain) => found.Names.Any(n => NameText.Plain(n) == plain);

    // Inside parentheses: a second name of the same thing, a word of no meaning here, one Colour Index number, the
    // allergens of a fragrance. Anything else that is known makes it a list.
    private bool InsideAgrees(Ingredient found, string plain)
    {
        var inside = plain.Split(['(', ')', '[', ']']).Skip(1).SelectMany(p => p.Split([',', ';', '/']))
            .Select(p => dictionary.Find(p)).OfType<Ingredient>().ToArray();
        return inside.Where(i => i.IsColourant).SelectMany(i => i.ColourIndex).Distinct().Count() <= 1
            && inside.All(i => ReferenceEquals(i, found)
                || (i.IsColourant && found.IsColourant)
                || (i.IsAllergen && found.Us == Fragrance));
    }

    // Outside them: no comma, and between slashes nothing but names of this one ingredient: Water/Aqua/Eau.
    private bool OutsideAgrees(Ingredient found, string plain)
    {
        var outside = NameText.WithoutParentheses(plain);
        if (outside.Contains(',') || outside.Contains(';'))
            return false;
        string[] parts = outside.Split('/');
        return parts.Length == 1
            || parts.All(p => dictionary.Find(p) is not null
                || found.Names.Any(n => n.Split('/').Any(w => NameText.Plain(w) == NameText.Plain(p))));
    }

    // Names that stand whole in what was written, the longest first: "Vegetable Glycerin pure" holds Glycerin.
    private IEnumerable<Ingredient> Holding(string written)
    {
        var words = $" {NameText.Plain(written)} ";
        return _whole.Value
            .Where(n => words.Contains(n.Spaced, StringComparison.Ordinal))
            .OrderByDescending(n => n.Spaced.Length).Select(n => n.Entry).Distinct();
    }

    private static bool IsEveryday(string written, Ingredient found)
    {
        var parts = NameText.Parts(written).Append(NameText.Plain(written)).ToHashSet();
        var proper = new[] { found.Us, found.Eu, found.Inci, found.Canada }.OfType<string>()
            .Concat(found.ColourIndex.Select(c => c.ToString()));
        return !proper.Any(p => parts.Contains(NameText.Plain(p)) || parts.Contains(NameText.WithoutParentheses(p)))
            && found.Everyday.Any(e => parts.Contains(NameText.Plain(e)));
    }
}
