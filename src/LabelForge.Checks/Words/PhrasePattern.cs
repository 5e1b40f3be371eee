namespace LabelForge.Checks.Words;

/// <summary>
/// Word patterns as the word lists write them: <c>*</c> stands for the rest of a word, <c>...</c> for up to three words
/// between, a space for a space, hyphen or line end. Letter case does not count.
/// </summary>
internal static class PhrasePattern
{
    private static readonly TimeSpan Limit = TimeSpan.FromSeconds(5);

    /// <summary>A pattern that finds any of the phrases as whole words.</summary>
    public static Regex Any(IEnumerable<string> phrases) => new(
        $@"(?<![\p{{L}}0-9])(?:{string.Join('|', phrases.OrderByDescending(p => p.Length).Select(Body))})(?![\p{{L}}0-9])",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant, Limit);

    /// <summary>A pattern that a whole name must fit.</summary>
    public static Regex Whole(IEnumerable<string> names) => new(
        $"^(?:{string.Join('|', names.Select(n => Regex.Escape(n).Replace(@"\*", ".*").Replace(@"\ ", @"[\s-]+")))})$",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant, Limit);

    /// <summary>A pattern that finds a phrase in small letters, in a text of small letters.</summary>
    public static Regex Lower(string phrase) =>
        new($@"(?<![\p{{L}}0-9]){Body(phrase)}(?![\p{{L}}0-9])", RegexOptions.CultureInvariant, Limit);

    /// <summary>A phrase's pattern without the word borders.</summary>
    public static string Body(string phrase) =>
        string.Join(@"[\s-]+", phrase.Split(' ', '-').Where(w => w.Length > 0).Select(Word))
            .Replace(@"[\s-]+(?<gap>)[\s-]+", @"(?:[\s-]+[\p{L}0-9%'’]+(?:[.,][0-9]+%?)?){0,3}?[\s-]+");

    private static string Word(string word) => word switch
    {
        "..." => "(?<gap>)",
        _ => Regex.Escape(word).Replace("'", "['’]").Replace(@"\*", @"[\p{L}0-9'’]*"),
    };
}
