using LabelForge.Checks.Reading;

namespace LabelForge.Checks.Subjects;

/// <summary>Whether the label says how long the product keeps, or how long it may be used once
/// open; and whether it cautions at all.</summary>
internal static partial class DurabilityChecks
{
    public static void Check(CheckCase label)
    {
        if (!HasPrecautions(label))
            label.Tell("precautions.none", label.Where);
        var statement = label.Label;
        if (statement.DrawsBestBefore || statement.DrawsOpenJar == true)
            return;
        var text = statement.Own is null ? statement.Text.Text : statement.Cautions;
        if (SaysBestBefore(text))
            return;
        if (MonthsOpen(text) is { } months)
            label.Tell("durability.sign", months, months);
        else if (!(statement.Own is null && Leftovers.Durability(text) is { } day && label.Tell("durability.missing/unclear", day, day)))
            label.Tell(label.Kind?.IsSolid == true ? "durability.missing/solid" : "durability.missing", label.Where);
    }

    private static bool HasPrecautions(CheckCase label) => label.Product is { } product
        ? !product.Content.Warnings.IsEmpty
        : Cautions(label.Label.Rest);

    // Months beside a word for opening, in whichever order a language puts them; or the letters of the symbol.
    private static string? MonthsOpen(string text)
    {
        if (Months().Match(text) is { Success: true } sign)
            return sign.Value.Trim();
        var folded = FoldedText.Of(text);
        return OpenFor.Value.Match(folded) is { Success: true } words
            ? text.Substring(words.Index, words.Length).Replace('\n', ' ').Trim()
            : null;
    }

    private static readonly Lazy<Regex> OpenFor = new(() =>
    {
        var opening = LabelWords.Alternatives(LabelWord.Opening);
        var months = $@"[0-9]{{1,2}}\s?(?:{LabelWords.Alternatives(LabelWord.Months)})(?![\p{{L}}])";
        return new Regex(
            $@"(?<![\p{{L}}])(?:{opening})(?![\p{{L}}])[^0-9.]{{0,40}}{months}|{months}[^0-9.]{{0,40}}(?<![\p{{L}}])(?:{opening})(?![\p{{L}}])", RegexOptions.CultureInvariant, TimeSpan.FromSeconds(5));
    });

    // Two or three letters say it only before a day: "BB 04/28", and not the lot "BB-14".
    private static bool SaysBestBefore(string text)
    {
        var folded = FoldedText.Of(text);
        return LabelWords.Pattern(LabelWord.BestBefore).Matches(folded)
            .Any(m => m.Length > ShortOnes || BeforeDay().IsMatch(folded[(m.Index + m.Length)..]));
    }

    private const int ShortOnes = 3;

    [GeneratedRegex(@"^[\s:./]{0,4}(?:[0-9]|\p{L}{3,10}\.?\s[0-9]|see|voir)")]
    private static partial Regex BeforeDay();

    [GeneratedRegex(@"(?<![\w.])[0-9]{1,2}\s?M(?![\w])|\bPAO\s*:?\s*[0-9]{1,2}(?:\s*(?:months?|mois|M))?|\b(?:use|used) within [0-9]{1,2} "
        + @"months(?: of opening)?", RegexOptions.None)]
    private static partial Regex Months();

    private static bool Cautions(string text) => LabelWords.Pattern(LabelWord.Warnings).IsMatch(FoldedText.Of(text));
}
