using LabelForge.Checks.Reading;
using LabelForge.Checks.Words;

namespace LabelForge.Checks.Subjects;

/// <summary>Whether the label says what the product is, and in each language that must stand on it.</summary>
internal static partial class IdentityChecks
{
    public static void Check(CheckCase label)
    {
        var identity = label.Label.Identity?.Written is { } written && !string.IsNullOrWhiteSpace(written) ? written : null;
        var text = label.Label.Own is null ? label.Label.Rest : $"{identity}\n{label.Product?.Content.ProductName}";
        var bilingual = label.Market.Ways.EachLanguage;
        var french = bilingual && FrenchWords.NamesProduct(ContentNote().Replace(text, " "));
        if (identity is null && !french)
        {
            if (IdentityReader.Hint(label.Label.Own is null ? label.Label.Rest : text) is { } hint && label.Label.Own is null)
                label.Tell("identity.missing/unclear", hint, hint);
            else
                label.Tell("identity.missing", label.Where);
            return;
        }
        if (!bilingual)
            return;
        if (identity is null || !IsInEnglish(identity, text))
            label.Tell("identity.one-language", identity ?? label.Where, identity ?? "The label", "French",
                "Write it in English too, for example: Bar soap / Pain de savon");
        else if (!french && !FrenchWords.IsSameInBoth(identity))
            label.Tell("identity.one-language", identity, identity, "English",
                "Write it in French too, for example: Bar soap / Pain de savon");
    }

    // Where the identity is French, English may stand beside it, or anywhere else on the label.
    private static bool IsInEnglish(string identity, string text) =>
        FrenchWords.IsSameInBoth(identity)
        || identity.Split('/')
            .Any(part => part.Any(char.IsLetter)
                && !FrenchWords.NamesProduct(part)
                && (IdentityReader.IsInEnglish(part) || IdentityReader.Read(part, null) is null))
        || IdentityReader.IsInEnglish(FrenchWords.WithoutProductNames(text));

    // "Contient de l'huile d'amande" says what is in it, "ni shampooing" what it is not.
    [GeneratedRegex(@"\bcontient\b[^.\n]*|\bni\s[^.,\n]*|\bsans\s[^.,\n]*", RegexOptions.IgnoreCase)]
    private static partial Regex ContentNote();
}
