using LabelForge.Ingredients;

namespace LabelForge.Checks.Reading;

/// <summary>One name of an ingredient list.</summary>
/// <param name="Name">As it stands on the label, without footnote marks.</param>
/// <param name="Known">What the dictionary knows it as, or null.</param>
/// <param name="MayContain">Whether it stands after "May contain".</param>
public sealed record IngredientRead(string Name, Ingredient? Known, bool MayContain)
{
    /// <summary>Whether it stands as the kitchen calls it (<c>lavender EO</c>), so that what it is was guessed from the name.</summary>
    public bool IsKitchenName { get; init; }
}

/// <summary>An ingredient list as it stands on a label.</summary>
/// <param name="Span">Its place, heading included.</param>
/// <param name="Heading">Its heading, or null where the list was found without one.</param>
/// <param name="Items">Its names in order.</param>
public sealed record IngredientListRead(TextSpan Span, string? Heading, ImmutableArray<IngredientRead> Items);

/// <summary>Finds the ingredient lists of a label: with a heading or without, over lines and
/// columns, parted by commas, bullets, strokes, dashes, dots or lines.</summary>
public static partial class IngredientListReader
{
    private const int FewestWithoutHeading = 3;

    // More than any label has: it bounds what a hostile text can cost.
    private const int MostHeadings = 12;

    private static readonly Lazy<Regex> Headings = new(() => HeadingPattern());

    /// <summary>Every list of the text, the one that is most surely a list first; empty where there is none.</summary>
    public static ImmutableArray<IngredientListRead> ReadAll(string text, IngredientDictionary dictionary)
    {
        var headed = WithHeading(text, dictionary);
        // "Ingredients above": where no heading has a list below it, one that is a list by its names may stand anywhere.
        return headed.All(l => l.Items.All(i => i.Known is null)) && WithoutHeading(text, dictionary) is { } bare ? [bare] : headed;
    }

    private static ImmutableArray<IngredientListRead> WithHeading(string text, IngredientDictionary dictionary)
    {
        var folded = FoldedText.Of(text);
        var extent = new ListExtent(text, folded, dictionary);
        var found = new List<(IngredientListRead List, int Rank)>();
        foreach (Match heading in Headings.Value.Matches(folded).Take(MostHeadings))
        {
            if (found.Any(f => f.List.Span.End > heading.Index)
                || (heading.Groups["bare"].Success && !char.IsUpper(text[heading.Index + heading.Length])))
                continue;
            var start = heading.Index + heading.Length;
            var end = extent.End(start, isHeaded: true);
            var items = ListNames.Read(text[start..end], dictionary);
            var word = heading.Groups["word"];
            // Below a heading that stands alone words of another part are no list.
            var isOther = items.Length < FewestWithoutHeading && items.All(i => i.Known is null) && heading.Value.Contains('\n');
            if (items.Length > 0 && !isOther)
                found.Add((new(new TextSpan(heading.Index, end - heading.Index), text.Substring(word.Index, word.Length), items),
                    Rank(word.Value)));
        }
        // "Contains:" may head a note on allergens, "Inhalt:" the net quantity: what holds names
        // that are known goes first, then a heading that says ingredients.
        return [.. found.Where(f => f.Rank < 2 || f.List.Items.Any(i => i.Known is not null))
            .OrderBy(f => f.List.Items.Count(i => i.Known is not null) == 0).ThenBy(f => f.Rank).Select(f => f.List)];
    }

    private static int Rank(string heading) => heading switch
    {
        _ when heading.StartsWith("active", StringComparison.Ordinal) => 1,
        _ when Loose.Contains(heading) || Other.Contains(heading) => 2,
        _ => 0,
    };

    // Words that head a list among other things: they do not say ingredients in any language.
    private static readonly ImmutableArray<string> Loose = ["contains", "made with", "made from", "what's in it", "what's inside",
        "what's in this"];

    // Words for a list or for the content of the package, by the language.
    private static readonly ImmutableArray<string> Other = ["indhold", "innehall", "sisalto", "inhalt inci", "zusammensetzung",
        "composition", "sastav", "sestava", "koostumus", "koostis"];

    /// <summary>Whether a heading says ingredients, in whatever language.</summary>
    public static bool SaysIngredients(string heading) => !Loose.Contains(FoldedText.Of(heading));

    // A paragraph of commas whose names are mostly in the dictionary is an ingredient list without its heading.
    private static IngredientListRead? WithoutHeading(string text, IngredientDictionary dictionary)
    {
        var extent = new ListExtent(text, FoldedText.Of(text), dictionary);
        IngredientListRead? best = null;
        for (var start = 0; start < text.Length; start = Lines.Next(text, start))
        {
            var line = Lines.At(text, start);
            if (!Separator().IsMatch(line)
                || ListNames.Split(AfterLabel(line)).Take(3).Count(n => ListNames.Known(n, dictionary) is not null) < 1)
                continue;
            var end = extent.End(start, isHeaded: false);
            var items = ListNames.Read(AfterLabel(text[start..end]), dictionary);
            var known = items.Count(i => i.Known is not null);
            if (known >= FewestWithoutHeading
                && !items.Any(i => Lye().IsMatch(i.Name))
                && known * 10 >= items.Length * 6
                && known > (best?.Items.Count(i => i.Known is not null) ?? 0))
                best = new(new TextSpan(start, end - start),
                    OwnHeading().Match(text[start..end]) is { Success: true } own && SaysSo().IsMatch(FoldedText.Of(own.Value))
                        ? own.Value.Trim(' ', ':')
                        : null, items);
        }
        return best;
    }

    // Words with a colon before a list that is one by its names: "What's in it: sugar, ...".
    private static string AfterLabel(string body) => OwnHeading().Replace(body, "");

    // "Ingredients / Ingrédients (INCI):" is one heading; "Ingredients" alone at a line's start is one before a line's end or a capital.
    private static Regex HeadingPattern()
    {
        var word = $@"(?:{LabelWords.Alternatives(LabelWord.Ingredients)})(?:\s*[(\[]?\s*inci\s*[)\]]?)?";
        var several = $@"{word}(?:\s*[/|•·&,–-]\s*{word}){{0,5}}(?:\s*[(\[]\s*{word}\s*[)\]])?";
        return new Regex(
            $@"(?:^|(?<=[\n.|;*#•·:]))[ *#_]*(?<word>{several})[ *_]*(?:\.?:|[.\n–—•|~>=»→-])\s*|(?<![\p{{L}}])(?<word>{several})(?:\s*\([^()\n]{{1,30}}\)(?=\s*:))?\s*[:–—]\s*|^[ *#_]*(?<word>(?:ingredients|inci)(?:\s*[/|•·-]\s*{word}){{0,5}})\s+(?<bare>(?=\p{{L}}))",
            RegexOptions.CultureInvariant | RegexOptions.Multiline, TimeSpan.FromSeconds(5));
    }

    [GeneratedRegex(@"[,;•·|/+]|\s[-–—]\s|\.\s")]
    private static partial Regex Separator();

    [GeneratedRegex(@"^[\p{L}'’ ]{3,60}[:»]\s*")]
    private static partial Regex OwnHeading();

    // "Olive oil, lard, lye": what goes into the kettle, told in a sentence, is no list of what is in the bar.
    [GeneratedRegex(@"^(?:and\s+)?lye$|\blye\b.*\band\b|\band\s+lye$", RegexOptions.IgnoreCase)]
    private static partial Regex Lye();

    [GeneratedRegex(@"\bingr[e\p{L}]*\b")]
    private static partial Regex SaysSo();
}
