namespace LabelForge.Checks.Reading;

/// <summary>
/// What a label says beside the parts that were found, and what of them it may be: a code that may be the lot, a day that may be
/// that of durability, a line that may be an address. With such words on the label a part is asked about, not called missing.
/// </summary>
public static partial class Leftovers
{
    /// <summary>A code that no word announces and that may be the lot; null where none is left.</summary>
    /// <param name="text">The label's text, all that was read blanked.</param>
    public static string? Lot(string text) =>
        Code().Matches(text).Select(m => m.Value.TrimEnd('.', '/', '-'))
            .FirstOrDefault(c => c.Count(char.IsDigit) > 1 && !NoLot().IsMatch(c));

    /// <summary>A day or month that no word announces and that may be that of durability; null where none is.</summary>
    /// <param name="text">The label's text.</param>
    public static string? Durability(string text) =>
        Day().Matches(text).Where(m => !Made().IsMatch(FoldedText.Of(text[Math.Max(0, m.Index - MostBefore)..m.Index])))
            .Select(m => m.Value).FirstOrDefault();

    /// <summary>A line with a postal code and a street or a house's number, which may be an address; null where none is.</summary>
    /// <param name="text">The label's text, ingredients, quantities and lot blanked.</param>
    public static string? Address(string text) =>
        text.Split('\n').Select(l => l.Trim(' ', ',', '.'))
            .FirstOrDefault(l => PostalCode().IsMatch(l) && (Number().Count(l) > 1 || l.Count(c => c == ',') > 0));

    private const int MostBefore = 24;

    [GeneratedRegex(@"(?<![\p{L}0-9.,@/#-])[\p{Lu}0-9][\p{Lu}0-9./_-]{2,15}(?![\p{L}0-9%]|\s?(?:ml|g|oz|kg|°|%|x\s?[0-9]))")]
    private static partial Regex Code();

    // Years, months after opening, days, colours' numbers, trade numbers of goods.
    [GeneratedRegex(@"^(?:(?:19|20)[0-9][0-9]|[0-9]{1,2}M|[0-9]{1,2}[./-][0-9]{4}|[0-9]{4}[./-][0-9]{1,2}|[0-9]{1,2}[./-][0-9]{1,2}[./-][0-9]{2,4}|[0-9]{4}-[0-9]{2}-[0-9]{2}|[0-9]{1,2}/[0-9]{2}|[0-9]{8}|[0-9]{12,14}|100|24/7)$")]
    private static partial Regex NoLot();

    [GeneratedRegex(@"(?<![0-9./-])(?:(?:0?[1-9]|1[0-2])\s?[./-]\s?(?:20)?(?:2[6-9]|3[0-9])|20(?:2[6-9]|3[0-9])\s?[./-]\s?(?:0?[1-9]|1[0-2])(?:[./-][0-9]{1,2})?|[0-9]{1,2}\.?[ ./-]+(?:0?[1-9]|1[0-2])[ ./-]+(?:20)?(?:2[6-9]|3[0-9]))(?![0-9/-]|\.[0-9])|\b\p{L}{3,10}\.?\s20(?:2[6-9]|3[0-9])\b")]
    private static partial Regex Day();

    [GeneratedRegex(@"\b(?:made|mfd|mfg|manufactured|cured?|poured|produced|packed|batch|lot|charge|partia|lote|lotto|hergestellt|gesiedet|fabrique|produit|produzione|hecho|elaborado|wyprodukowano|vyrobeno|vyrobene|gyartas\w*|tillverkad|since|seit|depuis|est)\b[^\n]{0,12}$")]
    private static partial Regex Made();

    [GeneratedRegex(@"(?<![0-9./-])(?:[A-Z]{1,3}-)?(?:[0-9]{4,6}|[0-9]{3}\s[0-9]{2}|[0-9]{2}-[0-9]{3}|[0-9]{4}-[0-9]{3})(?![0-9./])|\b[A-Z]{1,2}[0-9][A-Z0-9]?\s?[0-9][A-Z]{2}\b|\b[A-Z][0-9][A-Z]\s?[0-9][A-Z][0-9]\b")]
    private static partial Regex PostalCode();

    [GeneratedRegex(@"[0-9]+")]
    private static partial Regex Number();
}
