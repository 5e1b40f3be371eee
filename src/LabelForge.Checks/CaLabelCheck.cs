using System.Collections.Immutable;
using System.Text.RegularExpressions;
using LabelForge.Checks.Reading;
using LabelForge.Checks.Words;
using LabelForge.Markets;

namespace LabelForge.Checks;

/// <summary>
/// Checks a label made elsewhere against the Cosmetic Regulations (C.R.C., c. 869) and the Consumer Packaging and Labelling
/// Regulations (C.R.C., c. 417) of Canada. Soap is a cosmetic there, whatever it is sold as (Food and Drugs Act, s. 2).
/// </summary>
public static partial class CaLabelCheck
{
    private static readonly RuleBook Rules = RuleBook.Ca;

    /// <summary>The findings, in no order.</summary>
    public static IEnumerable<Finding> Find(LabelFacts facts) =>
        Identity(facts.Reading.Identity?.Written, facts.Reading.Rest, facts.Where)
            .Concat(MetricQuantityCheck.Find(facts, RuleBook.MarketCa))
            .Concat(facts.Reading.Ingredients is null ? [Rules["ingredients.missing"].Find(facts.Where)] : [])
            .Concat(LabelOrderCheck.Find(facts, Rules))
            .Concat(LabelNameCheck.Find(facts, RuleBook.MarketCa))
            .Concat(LabelAllergenCheck.Find(facts, RuleBook.MarketCa))
            .Concat(Business(facts))
            .Concat(facts.Reading.Lot is null ? [Rules["lot.missing"].Find(facts.Where)] : [])
            .Concat(Warnings(facts.Reading.Text.Text))
            .Concat(WordCheck.Find(facts.Reading.Rest, facts.Names, facts.SoldAs, "words", RuleBook.MarketCa))
            .Concat(OutsideTheLabel());

    /// <summary>Whether what the product is stands on the label, and in both languages.</summary>
    internal static IEnumerable<Finding> Identity(string? identity, string text, string where)
    {
        var french = FrenchWords.NamesProduct(text);
        if (identity is null && !french)
        {
            yield return IdentityReader.Hint(text) is { } hint ? Rules["identity.missing/unclear"].Find(hint, hint) : Rules["identity.missing"].Find(where);
            yield break;
        }
        if (identity is null || !IsInEnglish(identity, text))
            yield return Rules["identity.one-language"].Find(identity ?? where, identity ?? "The label", "French", "Write it in English too, for example: Bar soap / Pain de savon");
        else if (!french && !FrenchWords.IsSameInBoth(identity))
            yield return Rules["identity.one-language"].Find(identity, identity, "English", "Write it in French too, for example: Bar soap / Pain de savon");
    }

    // Where the identity is French, English may stand beside it, or anywhere else on the label.
    private static bool IsInEnglish(string identity, string text) =>
        FrenchWords.IsSameInBoth(identity) || identity.Split('/').Any(part => part.Any(char.IsLetter) && !FrenchWords.NamesProduct(part))
        || IdentityReader.Read(FrenchWords.WithoutProductNames(text), null) is not null;

    /// <summary>Warnings: in both languages, and whole for what is under pressure.</summary>
    internal static IEnumerable<Finding> Warnings(string text)
    {
        if (FrenchWords.EnglishWarningAlone(text) is { } warning)
            yield return Rules["warning.one-language"].Find("warnings", warning.Trim(' ', ':'));
        if (Pressure().IsMatch(text) && !Explode().IsMatch(text))
            yield return Rules["warning.missing/pressure"].Find("warnings", "that the container may explode if heated");
    }

    /// <summary>What no label shows.</summary>
    internal static IEnumerable<Finding> OutsideTheLabel() =>
        new[] { "outside.notification", "outside.hotlist", "outside.quebec" }.Select(r => Rules[r].Find("outside the label"));

    private static IEnumerable<Finding> Business(LabelFacts facts)
    {
        var addresses = facts.Reading.Addresses;
        var business = facts.Reading.Business;
        if ((addresses.Select(a => a.Name).FirstOrDefault(n => n is not null) ?? business.Name) is null)
            yield return Rules["business-name.missing"].Find(facts.Where);
        if (addresses.IsEmpty)
            yield return Rules["business-place.missing"].Find(facts.Where, business.Place is { } part ? $" (only {part})" : "");
        else if (addresses.All(a => a.Country is not null and not "CA") && !Imported().IsMatch(facts.Reading.Text.Text))
            yield return Rules["importer.missing"].Find(addresses[0].Line, Countries.Name(addresses[0].Country!));
        if (!facts.Reading.Contact.Any && !addresses.Any(a => a.HasStreet))
            yield return Rules["contact.missing"].Find(facts.Where);
    }

    [GeneratedRegex(@"\b(?:aerosol|contents under pressure|propellant|butane|isobutane|propane)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Pressure();

    [GeneratedRegex(@"\b(?:explode|exploser)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Explode();

    [GeneratedRegex(@"\b(?:imported (?:by|for)|importé (?:par|pour)|made in|fabriqué (?:au|en|aux)|product of|produit (?:de|du|des))\b", RegexOptions.IgnoreCase)]
    private static partial Regex Imported();
}
