namespace LabelForge.Declarations;

/// <summary>A recipe's words as a market asks for them: in the workshop's language, or in each of the market's, as in Canada.</summary>
/// <remarks>Canada: Cosmetic Regulations, C.R.C., c. 869, s. 18 (both official languages); from memory.</remarks>
internal sealed record LocalWords(ImmutableArray<string> Languages, string Identity, string? Directions, ImmutableArray<string> Warnings,
    string? BestBefore, string? Origin)
{
    private const string Standard = "standard:";

    public static LocalWords For(Market market, string language, Recipe recipe)
    {
        string[] languages = market.Ways.EachLanguage ? [.. market.Ways.Languages] : [language];
        var words = recipe.Words;
        return new LocalWords(
            [.. languages],
            Both(languages, l => words.In.GetValueOrDefault(l)?.Identity ?? recipe.Identity, recipe) ?? "",
            Both(languages, l => words.In.GetValueOrDefault(l)?.Directions ?? recipe.Directions, recipe),
            [
                .. languages.SelectMany(l => (words.In.TryGetValue(l, out var own) && !own.Warnings.IsEmpty
                    ? own.Warnings
                    : recipe.Warnings).Select(w => Text(w, l, recipe))).Distinct()],
            words.BestBefore is { } end
                ? Both(languages, l => $"{Phrases.Find("best-before", l)} {end.Month:00}/{end.Year}", recipe)
                : null,
            words.Origin is { } origin ? Both(languages, l => $"{Phrases.Find("made-in", l)} {origin}", recipe) : null);
    }

    private static string? Both(string[] languages, Func<string, string?> words, Recipe recipe)
    {
        var all = languages.Select(words).Zip(languages, (text, l) => text is null ? null : Text(text, l, recipe))
            .Where(t => !string.IsNullOrWhiteSpace(t)).Distinct().ToList();
        return all.Count == 0 ? null : string.Join(" / ", all);
    }

    private static string Text(string written, string language, Recipe recipe)
    {
        if (!written.StartsWith(Standard, StringComparison.Ordinal))
            return written;
        var name = written[Standard.Length..].Trim();
        return Phrases.Find(name, language)
            ?? throw new InputException(recipe.File, 0, "declaration.no-such-phrase", ("name", name),
                ("list", string.Join(", ", Phrases.Names)));
    }
}
