using LabelForge.Recipes.Files;

namespace LabelForge.Recipes;

/// <summary>The maker's words in one more language.</summary>
public sealed record TranslatedWords(string? Identity, string? Directions, ImmutableArray<string> Warnings);

/// <summary>What some markets ask for beside the usual words, from a recipe.</summary>
public sealed record MarketWords
{
    /// <summary>The months in which to use up what was opened, as <c>12M</c> (Regulation (EC) No 1223/2009, Article 19(1)(c)).</summary>
    public string? PeriodAfterOpening { get; init; }

    /// <summary>The month of minimum durability.</summary>
    public (int Year, int Month)? BestBefore { get; init; }

    /// <summary>The country it was made in.</summary>
    public string? Origin { get; init; }

    /// <summary>The maker's words by language.</summary>
    public ImmutableDictionary<string, TranslatedWords> In { get; init; } = ImmutableDictionary<string, TranslatedWords>.Empty;

    /// <summary>Reads them.</summary>
    /// <exception cref="InputException">A period, a month or a language cannot be read.</exception>
    public static MarketWords Read(MapNode file) => new()
    {
        PeriodAfterOpening = file.OptionalText("period after opening") is { } period ? Period(period) : null,
        BestBefore = file.OptionalText("best before") is { } month ? Month(month) : null,
        Origin = file.OptionalText("origin")?.Text,
        In = file.OptionalMap("in")?.OnlyKeys("The languages", [.. Phrases.Languages]) is { } languages
            ? languages.Entries.ToImmutableDictionary(e => e.Key, e => Translated(languages.OptionalMap(e.Key)!))
            : ImmutableDictionary<string, TranslatedWords>.Empty,
    };

    private static TranslatedWords Translated(MapNode map)
    {
        map.OnlyKeys("A language", "identity", "directions", "warnings");
        return new(map.OptionalText("identity")?.Text, map.OptionalText("directions")?.Text,
            [.. map.Texts("warnings").Select(t => t.Text)]);
    }

    private static string Period(TextNode node) =>
        PlainFigure.Whole(node.Text.Replace("months", "", StringComparison.Ordinal).TrimEnd('M', ' ')) is >= 1 and <= 60 and var months
            ? $"{months}M"
            : throw node.Refuse("recipe.period-after-opening", ("text", node.Text));

    private static (int, int) Month(TextNode node) =>
        IsoDay.Read(node.Text + "-01") is { } day
            ? (day.Year, day.Month)
            : throw node.Refuse("recipe.not-a-month", ("text", node.Text));
}
