namespace LabelForge.Checks.Reading;

/// <summary>Legal forms of businesses in the markets, by which a name is told to be a business's:
/// <c>Muster GmbH</c>, <c>SIA "Āpsis"</c>.</summary>
/// <remarks>The usual short forms of each country's company law, written down by us: common practice.</remarks>
internal static partial class LegalForms
{
    /// <summary>The first name with a legal form in a label's text; null where none is.</summary>
    public static string? NameIn(string text) =>
        Part().Split(text).Select(p => p.Trim(' ', ',', '.', ':', '©'))
            .FirstOrDefault(p => p.Length is > 3 and <= 60 && p.Any(char.IsUpper) && (After().IsMatch(p) || Before().IsMatch(p)));

    /// <summary>Whether words are a legal form and nothing else.</summary>
    public static bool IsForm(string words) => After().IsMatch("A " + words.Trim()) && !words.Trim().Contains(' ');

    /// <summary>A name without its legal form; the name where it has none.</summary>
    public static string Without(string name) =>
        Before().Replace(After().Replace(name, ""), "").Trim(' ', ',', '"', '„', '“', '”', '«', '»') is { Length: > 2 } bare ? bare : name;

    [GeneratedRegex(@"[\n;|•·]|\s[–—-]\s|,\s(?!Lda|Inc|LLC|Ltd|S\.)")]
    private static partial Regex Part();

    [GeneratedRegex(@",?\s+(?:GmbH(?:\s*&\s*Co\.?\s*KG)?|UG(?:\s*\(haftungsbeschränkt\))?|e\.?\s?K\.?|e\.?\s?U\.?|KG|OHG|GbR|AG|S\.?\s?à\s?r\.?\s?l\.?|SARL|SAS|SASU|EURL|SNC|S\.?n\.?c\.?|S\.?r\.?l\.?s?\.?|SRL|S\.?p\.?A\.?|S\.?a\.?s\.?|s\.\s?s\.(?:\s+agricola)?|S\.?L\.?(?:U\.?)?|S\.?A\.?|C\.?B\.?|Lda\.?|Unipessoal(?:,?\s+Lda\.?)?|B\.?V\.?(?:BA)?|V\.?O\.?F\.?|N\.?V\.?|CommV|sp\.?\s?z\s?o\.?\s?o\.?|sp\.?\s?j\.?|s\.?\s?c\.?|AB|HB|ApS|A/S|I/S|Oy|Ky|Tmi|O[ÜU]|SIA|UAB|MB|s\.?\s?r\.?\s?o\.?|a\.\s?s\.|Kft\.?|Bt\.?|Zrt\.?|e\.\s?v\.|PFA|ООД|ЕООД|АД|ЕТ|ΙΚΕ|Ι\.?Κ\.?Ε\.?|Ε\.?Π\.?Ε\.?|Α\.?Ε\.?|Ο\.?Ε\.?|j?\.?d\.?\s?o\.?\s?o\.?|obrt|s\.\s?p\.|Ltd\.?|Limited|LLP|Teo\.?|Teoranta|Inc\.?|LLC|Corp\.?)$")]
    private static partial Regex After();

    [GeneratedRegex(@"^(?:SIA|UAB|MB|AS|OÜ|IK|VšĮ)\s+(?=[„“""«]?\p{Lu})")]
    private static partial Regex Before();
}
