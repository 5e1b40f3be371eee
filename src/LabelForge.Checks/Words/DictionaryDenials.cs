using System.Collections.Frozen;
using System.Runtime.CompilerServices;
using LabelForge.Checks.Reading;
using LabelForge.Ingredients;

namespace LabelForge.Checks.Words;

/// <summary>Something that a label denies and the dictionary knows, though no family of the word
/// lists names it: "neem-free", "no aloe".</summary>
/// <param name="Written">The words of the label.</param>
/// <param name="Denied">What they deny, as plain words.</param>
internal sealed record DeniedWord(string Written, string Denied)
{
    /// <summary>Whether an ingredient has these words, whole, in one of its names: "coco" is no part of "cocoa".</summary>
    public bool IsIn(string name, Ingredient? known) =>
        (known?.Names ?? []).Append(name).Any(n => $" {DictionaryDenials.Plain(n)} ".Contains($" {Denied} ", StringComparison.Ordinal));
}

/// <summary>Finds denials of what only the dictionary knows.</summary>
internal static partial class DictionaryDenials
{
    // Parts of plants and forms: of themselves they name no ingredient.
    private static readonly FrozenSet<string> Parts = new[]
    {
        "fruit", "seed", "leaf", "root", "flower", "bark", "peel", "kernel", "herb", "stem", "wood", "extract", "powder", "juice", "acid",
        "gum", "natural", "sodium", "potassium", "hydrogenated", "white", "red", "blue", "green", "yellow", "black", "pink", "fine",
        "light", "base", "active", "pure", "bean", "free", "de", "la", "le", "a", "i", "e", "o", "and", "or", "the", "in", "of", "plant",
        "stone", "cold", "water", "hand", "dead", "sweet", "bitter", "tree", "sun",
    }.ToFrozenSet(StringComparer.Ordinal);

    // The runs of words in any name of a dictionary.
    private static readonly ConditionalWeakTable<IngredientDictionary, FrozenSet<string>> Known = [];

    private static FrozenSet<string> RunsOf(IngredientDictionary dictionary) => Known.GetValue(dictionary, d =>
        d.Entries.SelectMany(e => e.Names).SelectMany(n => Runs(Plain(n).Split(' ', StringSplitOptions.RemoveEmptyEntries)))
            .ToFrozenSet(StringComparer.Ordinal));

    private static readonly Lazy<Regex> Pattern = new(() => new(
        $@"(?<![\p{{L}}0-9])(?:{DenialPattern.Lead}(?<x>[\p{{L}}][\p{{L}}0-9-]*(?:[ -][\p{{L}}0-9-]+){{0,2}})|(?<x>[\p{{L}}][\p{{L}}0-9-]*(?: "
            + $@"[\p{{L}}0-9-]+){{0,2}}){DenialPattern.Tail}(?!\p{{L}}))",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant, TimeSpan.FromSeconds(5)));

    /// <summary>The denials of a text that no family of the word lists has.</summary>
    public static IEnumerable<DeniedWord> Of(ClaimText text, IngredientDictionary dictionary)
    {
        var known = RunsOf(dictionary);
        foreach (Match match in Pattern.Value.Matches(text.Folded))
        {
            var place = text.At(match.Index, match.Length);
            if (WordContext.IsNot(place) || WordContext.IsAnsweredNo(place))
                continue;
            var item = match.Groups["x"];
            if (item.Index == match.Index)
            {
                if (!HasFamily(match.Value)
                    && !WordContext.IsNot(text.At(item.Index + item.Value.IndexOf(' ', StringComparison.Ordinal) + 1, 0))
                    && Name(Words(item.Value), fromEnd: true, known) is { } before)
                    yield return new(WordCheck.Plain(text.Written.Substring(match.Index, match.Length)), before);
                continue;
            }
            // The list goes on for as long as its members are ingredients: "no neem, aloe or nettle, just oats".
            var sentence = text.At(item.Index, item.Length);
            foreach (var part in DenialPattern.Joins.Split(text.Folded[item.Index..sentence.To]))
            {
                var family = HasFamily("no " + part);
                if (!family && Name(Words(part), fromEnd: false, known) is { } denied)
                    yield return new(WordCheck.Plain(text.Written[match.Index..item.Index] + part), denied);
                else if (!family)
                    break;
            }
        }
    }

    private static bool HasFamily(string denial) => WordLists.Denials.Any(d => d.Words.Begins(denial));

    private static string[] Words(string part) => Plain(part).Split(' ', StringSplitOptions.RemoveEmptyEntries);

    /// <summary>A name as plain words in the singular, parted by one space.</summary>
    internal static string Plain(string name) =>
        string.Join(' ', NotLetter().Split(FoldedText.KeepingCase(name).ToLowerInvariant()).Where(w => w.Length > 0).Select(Singular));

    private static string Singular(string word) => word is [_, _, .., not ('s' or 'u' or 'i'), 's'] ? word[..^1] : word;

    // The longest run of words, next to the word that denies, which some ingredient's name has.
    private static string? Name(string[] words, bool fromEnd, FrozenSet<string> known)
    {
        for (var n = Math.Min(3, words.Length); n > 0; n--)
        {
            var run = string.Join(' ', fromEnd ? words[^n..] : words[..n]);
            if (known.Contains(run) && !(n == 1 && Parts.Contains(run)))
                return run;
        }
        return null;
    }

    private static IEnumerable<string> Runs(string[] words)
    {
        for (var from = 0; from < words.Length; from++)
        {
            for (var to = from + 1; to <= Math.Min(from + 3, words.Length); to++)
                yield return string.Join(' ', words[from..to]);
        }
    }

    [GeneratedRegex(@"[^\p{L}0-9]+")]
    private static partial Regex NotLetter();
}
