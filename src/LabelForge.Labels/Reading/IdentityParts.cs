namespace LabelForge.Checks.Reading;

/// <summary>
/// What a product is, told by a word for its form and one for where it goes, near each other or in one word: <c>krem do rąk</c>,
/// <c>Kroppsbutter</c>. For names that no list has whole.
/// </summary>
internal static partial class IdentityParts
{
    // "Lotion for dry hands and tired feet": between the two stand few words.
    private const int MostBetween = 4;

    // What joins the two parts of a word: the s of Kroppsbutter, the en of Lippenbutter.
    private const int MostJoining = 3;

    private static readonly Lazy<Parts> Held = new(Load);

    /// <summary>Where a form and a use stand in a part of a label, and the kind they make; null where none do.</summary>
    public static (TextSpan Span, ProductKind Kind)? In(string part)
    {
        var words = Word().Matches(FoldedText.Of(part));
        if (words.Count == 0)
            return null;
        var parts = Held.Value;
        var forms = words.Select(w => parts.Forms.GetValueOrDefault(w.Value, [])).ToArray();
        var uses = words.Select(w => parts.Uses.GetValueOrDefault(w.Value, [])).ToArray();
        for (var i = 0; i < words.Count; i++)
        {
            if (Compound(words[i].Value, parts) is { } one)
                return (Span(words[i], words[i]), one);
            for (var j = Math.Max(0, i - MostBetween); j < Math.Min(words.Count, i + MostBetween + 1); j++)
            {
                if (forms[i].Length > 0 && j != i && Pair(forms[i], uses[j], parts) is { } kind)
                    return (Span(words[Math.Min(i, j)], words[Math.Max(i, j)]), kind);
            }
        }
        return null;
    }

    /// <summary>Whether a part of a label has a word for a form, as cream or oil, and so hints at what the product is.</summary>
    public static bool Hints(string part) => Word().Matches(FoldedText.Of(part)).Any(w => Held.Value.Forms.ContainsKey(w.Value));

    private static ProductKind? Compound(string word, Parts parts)
    {
        foreach (var (end, form) in parts.Ends.Where(e => word.Length > e.End.Length && word.EndsWith(e.End, StringComparison.Ordinal)))
        {
            foreach (var (stem, use) in parts.Stems.Where(s => word.StartsWith(s.Stem, StringComparison.Ordinal)))
            {
                if (word.Length - end.Length - stem.Length is >= 0 and <= MostJoining
                    && parts.Pairs.GetValueOrDefault((form, use)) is { } kind)
                    return kind;
            }
        }
        return null;
    }

    private static ProductKind? Pair(ImmutableArray<string> forms, ImmutableArray<string> uses, Parts parts) =>
        forms.SelectMany(f => uses.Select(u => parts.Pairs.GetValueOrDefault((f, u)))).FirstOrDefault(k => k is not null);

    private static TextSpan Span(Match first, Match last) => new(first.Index, last.Index + last.Length - first.Index);

    private static Parts Load()
    {
        var records = YamlRecord.Embedded("markets/Words/identity-parts.yaml");
        var words = records.Where(r => r.Has("words"))
            .SelectMany(r => r.Texts("words", "[cream, crème]")
                .Select(w => (Part: r.Text("part", "form"), Id: r.Text("id", "cream"), Word: FoldedText.Of(w)))).ToArray();
        var pairs = records.Where(r => r.Has("forms"))
            .SelectMany(r => r.Texts("forms", "[cream]")
                .SelectMany(f => r.Texts("uses", "[hand]")
                    .Select(u => (Form: f, Use: u, Kind: ProductKinds.Find(r.Text("id", "a product kind")).Value!))));
        return new(
            Whole(words, "form"), Whole(words, "use"),
            [.. words.Where(w => w.Part == "form" && w.Word.StartsWith('*')).Select(w => (w.Word[1..], w.Id))],
            [.. words.Where(w => w.Part == "use" && w.Word.EndsWith('*')).Select(w => (w.Word[..^1], w.Id))],
            pairs.DistinctBy(p => (p.Form, p.Use)).ToDictionary(p => (p.Form, p.Use), p => p.Kind));
    }

    private static Dictionary<string, ImmutableArray<string>> Whole(IEnumerable<(string Part, string Id, string Word)> words,
        string part) =>
        words.Where(w => w.Part == part).GroupBy(w => w.Word.Trim('*'))
            .ToDictionary(g => g.Key, g => g.Select(w => w.Id).Distinct().ToImmutableArray(), StringComparer.Ordinal);

    private sealed record Parts(
        Dictionary<string, ImmutableArray<string>> Forms, Dictionary<string, ImmutableArray<string>> Uses,
        ImmutableArray<(string End, string Form)> Ends, ImmutableArray<(string Stem, string Use)> Stems,
        Dictionary<(string Form, string Use), ProductKind> Pairs);

    [GeneratedRegex(@"\p{L}+")]
    private static partial Regex Word();
}
