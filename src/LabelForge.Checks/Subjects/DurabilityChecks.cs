using System.Text.RegularExpressions;

namespace LabelForge.Checks.Subjects;

/// <summary>Whether the label says how long the product keeps, or how long it may be used once open; and whether it cautions at all.</summary>
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
        if (BestBefore().IsMatch(text))
            return;
        if (Months().Match(text) is { Success: true } months)
            label.Tell("durability.sign", months.Value.Trim(), months.Value.Trim());
        else
            label.Tell(label.Kind?.IsSolid == true ? "durability.missing/solid" : "durability.missing", label.Where);
    }

    private static bool HasPrecautions(CheckCase label) => label.Product is { } product
        ? !product.Content.Warnings.IsEmpty
        : Precaution().IsMatch(label.Label.Rest);

    [GeneratedRegex(@"\bbest\s+(?:used\s+)?(?:before|by)\b|\buse\s+by\b|\bexp(?:iry|ires|iration|\.)?\s*(?:date|end)?\s*[:.]?\s*(?:\d|see|voir)|\bBB[ED]?\b|à utiliser de préférence avant|mindestens haltbar bis|da usare preferibilmente|úsese preferentemente|ten\s?minste houdbaar|à consommer de préférence|mind\. haltbar|\bMHD\b|usare preferibilmente|consumir preferentemente|utilizar preferentemente|utilizar de preferência|najlepiej zużyć|należy zużyć|termin ważności|bäst före|bedst før|mindst holdbar|parasta ennen|parim enne|nejlépe spotřebovat|spotřebujte nejlépe|minimální trvanlivost|najlepšie (?:spotrebovať|použiť)|minőségét megőrzi|a se (?:utiliza|folosi),? de preferință|najbolje upotrijebiti|najbolje uporabiti|uporabno najmanj|ieteicams|geriaus(?:ias|ia) iki|tinkam\w+ iki|най-добър до|годен до|ανάλωση κατά προτίμηση", RegexOptions.IgnoreCase)]
    private static partial Regex BestBefore();

    [GeneratedRegex(@"(?<![\w.])\d{1,2}\s?M(?![\w])|\bPAO\s*:?\s*\d{1,2}(?:\s*months?)?|\b(?:use|used) within \d{1,2} months(?: of opening)?", RegexOptions.None)]
    private static partial Regex Months();

    [GeneratedRegex(@"\b(?:avoid|warning|caution|keep|external use|do not|if irritation|stop us|discontinue|patch test|éviter|garder|nicht|vermeiden)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Precaution();
}
