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

    [GeneratedRegex(@"(?<![\p{L}\d.,@/#-])[\p{Lu}\d][\p{Lu}\d./_-]{2,15}(?![\p{L}\d%]|\s?(?:ml|g|oz|kg|°|%|x\s?\d))")]
    private static partial Regex Code();

    // Years, months after opening, days, colours' numbers, trade numbers of goods.
    [GeneratedRegex(@"^(?:(?:19|20)\d\d|\d{1,2}M|\d{1,2}[./-]\d{4}|\d{4}[./-]\d{1,2}|\d{1,2}[./-]\d{1,2}[./-]\d{2,4}|\d{4}-\d{2}-\d{2}|\d{1,2}/\d{2}|\d{8}|\d{12,14}|100|24/7)$")]
    private static partial Regex NoLot();

    [GeneratedRegex(@"(?<![\d./-])(?:(?:0?[1-9]|1[0-2])\s?[./-]\s?(?:20)?(?:2[6-9]|3\d)|20(?:2[6-9]|3\d)\s?[./-]\s?(?:0?[1-9]|1[0-2])(?:[./-]\d{1,2})?|\d{1,2}\.?[ ./-]+(?:0?[1-9]|1[0-2])[ ./-]+(?:20)?(?:2[6-9]|3\d))(?![\d/-]|\.\d)|\b\p{L}{3,10}\.?\s20(?:2[6-9]|3\d)\b")]
    private static partial Regex Day();

    [GeneratedRegex(@"\b(?:made|mfd|mfg|manufactured|cured?|poured|produced|packed|batch|lot|charge|partia|lote|lotto|hergestellt|gesiedet|fabrique|produit|produzione|hecho|elaborado|wyprodukowano|vyrobeno|vyrobene|gyartas\w*|tillverkad|since|seit|depuis|est)\b[^\n]{0,12}$")]
    private static partial Regex Made();

    [GeneratedRegex(@"(?<![\d./-])(?:[A-Z]{1,3}-)?(?:\d{4,6}|\d{3}\s\d{2}|\d{2}-\d{3}|\d{4}-\d{3})(?![\d./])|\b[A-Z]{1,2}\d[A-Z\d]?\s?\d[A-Z]{2}\b|\b[A-Z]\d[A-Z]\s?\d[A-Z]\d\b")]
    private static partial Regex PostalCode();

    [GeneratedRegex(@"\d+")]
    private static partial Regex Number();
}
