namespace LabelForge.Checks.Reading;

/// <summary>A label's word for something that is neither soap nor a cosmetic.</summary>
/// <param name="Written">The line, or the part of it, that says so.</param>
/// <param name="Product">What it is.</param>
public sealed record OtherProductRead(string Written, OtherProduct Product);

/// <summary>Finds on a label that it is for a product of other rules: a candle, a sunscreen, a laundry soap.</summary>
public static partial class OtherProductReader
{
    private static readonly Lazy<IdentityWords<OtherProduct>> Held = new(Load);

    /// <summary>What the label says it is, where that is no soap and no cosmetic in the market; else null.</summary>
    /// <param name="text">The label's text, ingredients, quantity and business blanked.</param>
    /// <param name="business">The business's name, which names no product; or null.</param>
    /// <param name="market">The market, whose law says what is a cosmetic.</param>
    public static OtherProductRead? Read(string text, string? business, Market market)
    {
        var said = business is { Length: > 2 }
            ? WholeWords.Blanked(text, business)
            : text;
        var ours = new Lazy<IdentityRead?>(() => IdentityReader.Read(said, null));
        foreach (var (start, part) in IdentityReader.Names(said))
        {
            foreach (var (span, length, other) in Held.Value.In(part).OrderByDescending(n => n.Length))
            {
                if (other.WhoseIn(market) is null || !IsWhole(part, span, other) || other.Unless.Any(u => Has(part, u)))
                    continue;
                // A candle's name over "Bar soap" is a scent; "Sunscreen" over "Body lotion" is none.
                if (other.MayBeScent && ours.Value is { } identity && identity.Span.Start != start)
                    continue;
                return new(Spaces().Replace(part, " ").Trim(' ', '*', '"', '.', ',', '-'), other);
            }
        }
        return null;
    }

    private static bool Has(string part, string words) => $" {Plain(part)} ".Contains($" {Plain(words)} ", StringComparison.Ordinal);

    private static string Plain(string text) => string.Join(' ', NotWord().Split(FoldedText.Of(text)).Where(w => w.Length > 0));

    // In "Soy candle with lavender" candle is what it is; in "Candle Lane Soap" and "laundry day"
    // it is not. Nor in "no more bug spray" or "contains no sunscreen".
    private static bool IsWhole(string part, TextSpan span, OtherProduct other) =>
        (other.MayBeScent ? EndsScent() : Ends()).IsMatch(FoldedText.Of(part[span.End..]))
            && !Denied().IsMatch(FoldedText.Of(part[..span.Start])) && !AnsweredNo().IsMatch(FoldedText.Of(part[span.End..]));

    private static IdentityWords<OtherProduct> Load()
    {
        var words = new IdentityWords<OtherProduct>();
        foreach (var product in OtherProducts.All)
        {
            foreach (var phrase in product.Words)
                words.Add(phrase, product);
        }
        return words;
    }

    [GeneratedRegex(@"^\s*(?:$|[^\p{L}\s'-]|-\s|(?:with|for|by|in|no|spf|lsf|fps|[0-9]+|without|and|avec|pour|mit|fur|ohne|con|para|sin|per|senza|sans|a la|au|aux|all'|alla|al|de|di|von|spray|stick|lotion|cream|gel|liquid|balm|bar|powder|tablet|oil|mist|milk|wipe|soap|shampoo|creme|lait|huile|seife|jabon|sapone)s?\b)")]
    private static partial Regex Ends();

    [GeneratedRegex(@"^\s*(?:$|[^\p{L}\s'-]|-\s|(?:with|for|in|without|avec|pour|mit|fur|ohne|con|para|sin|per|senza|sans|a "
        + @"la|au|aux|all'|alla|al|spray|stick|liquid|powder|tablet|bar)s?\b)")]
    private static partial Regex EndsScent();

    [GeneratedRegex(@"\b(?:no|not|never|without|unlike|like|beats|contains?|warning|caution|keep|away|near|after|before|pas|sans|contient|comme|attention|apres|kein\w*|nicht|ohne|enthalt|wie|achtung|nach|non|senza|contiene|come|attenzione|dopo|sin|como|atencion|despues)\b")]
    private static partial Regex Denied();

    // "Dog balm? No: a balm for people."
    [GeneratedRegex(@"^[^?.!]{0,40}\?\s*(?:no|nope|not|nein|non|nee|nej|nie|nao)\b")]
    private static partial Regex AnsweredNo();

    [GeneratedRegex(@"[^\p{L}0-9]+")]
    private static partial Regex NotWord();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Spaces();
}
