using LabelForge.Checks.Reading;

namespace LabelForge.Checks.Subjects;

/// <summary>Who answers for the product, where, how to reach them; and where they are outside the
/// market, who answers inside it and where the product was made.</summary>
internal static partial class BusinessChecks
{
    internal const string American = "american";

    public static void Check(CheckCase label)
    {
        if (label.Label.Own is { } own)
            OfWorkshop(label, own);
        else if (label.Market.Ways.AddressForm == American)
            InAmericanForm(label, label.Label.Business);
        else
            AnyCountry(label);
    }

    private static void OfWorkshop(CheckCase label, Business business)
    {
        if (label.Label.Business.Name is null || string.IsNullOrWhiteSpace(business.Name))
            label.Tell("business-name.missing", label.BusinessWhere);
        var place = business.Place;
        var missing = new[] { ("street", place.Street), ("city", place.City), ("region", place.Region), ("postcode", place.Postcode) }
            .Where(p => label.Market.Ways.Address.Contains(p.Item1) && string.IsNullOrWhiteSpace(p.Item2)).Select(p => p.Item1).ToArray();
        // An address that the layout leaves out is missing whole.
        if (label.Label.Business.Name is null)
            label.Tell("business-place.missing", label.BusinessWhere, "on this label all of it is");
        else if (missing is ["street"] && MayBeListed(label))
            label.Tell("business-place.missing/street-soap", label.BusinessWhere);
        else if (missing is ["street"] && label.Rules.Rule("business-place.missing/no-street") is not null)
            label.Tell("business-place.missing/no-street", label.BusinessWhere);
        else if (missing.Length > 0)
            label.Tell("business-place.missing", label.BusinessWhere, string.Join(", ", missing) + (missing.Length == 1 ? " is" : " are"));
        if (!label.Label.Contact.Any
            && (missing.Length > 0 || label.Label.Business.Name is null || label.Market.Ways.ContactBesideAddress))
            label.Tell("contact.missing", label.BusinessWhere);
        if (label.Rules.FigureIfAny("territory")?.Word.Split(' ') is not { } inside)
            return;
        if (place.Country?.Trim().ToUpperInvariant() is not { Length: 2 } country)
        {
            label.Tell("responsible-person.missing/unknown", label.BusinessWhere, label.Market.Ways.Territory);
            return;
        }
        if (inside.Contains(country))
            return;
        var words = label.Label.Cautions;
        var responsible = business.ResponsibleIn(label.Market) is not null || ResponsiblePerson().IsMatch(words);
        var origin = label.Label.Origin is not null || Origin().IsMatch(words);
        if (!responsible)
            label.Tell("responsible-person.missing", label.BusinessWhere, country, label.Market.Ways.Territory);
        if (!origin)
            label.Tell("origin.missing", label.Where, country);
        if (!responsible && !origin)
            label.Tell("importer.missing", label.BusinessWhere, country);
    }

    private static void InAmericanForm(CheckCase label, BusinessRead business)
    {
        if (business.Name is null)
            label.Tell("business-name.missing", label.Where);
        // "Made by" names the maker; "Distributed by" and "Manufactured for" do not (21 CFR 701.12(c)).
        if (business.LeadIn is { } lead
            && (lead.StartsWith("dist", StringComparison.OrdinalIgnoreCase) || lead.EndsWith("for", StringComparison.OrdinalIgnoreCase)))
            label.Tell("business.role", business.Name ?? label.Where, lead);
        var missing = new[] { ("city", business.City), ("state", business.State), ("ZIP code", business.Zip) }
            .Where(p => p.Item2 is null).Select(p => p.Item1).ToArray();
        if (business.Foreign is not null && business.Zip is null)
        {
            if (label.Label.Origin is null)
                label.Tell("origin.missing", business.Place ?? label.Where, business.Foreign);
        }
        else if (missing.Length > 0)
        {
            label.Tell("business-place.missing", business.Place ?? label.Where, $"no {string.Join(", no ", missing)}");
        }
        else if (business.Street is null)
        {
            label.Tell(MayBeListed(label) ? "business-place.missing/street-soap" : "business-place.missing/street",
                business.Place ?? label.Where);
        }
        if (!label.Label.Contact.Any && !business.HasMailAddress && label.SoldAs == SoldAs.Cosmetic)
            label.Tell("contact.missing", label.Where);
    }

    // Soap sold as soap may leave the street to a directory, a database or a web site (16 CFR 500.5(c)).
    private static bool MayBeListed(CheckCase label) =>
        label.SoldAs == SoldAs.Soap && label.Label.Contact.Any && label.Binding("business-place.missing/street-soap") is not null;

    // Over a whole address the words at the head of a label may be the name, or the product's.
    private static void NoName(CheckCase label, bool hasPlace)
    {
        if (hasPlace && label.Label.Brand is { } brand)
            label.Tell("business-name.missing/unclear", brand, brand);
        else
            label.Tell("business-name.missing", label.Where);
    }

    private static void AnyCountry(CheckCase label)
    {
        var addresses = label.Label.Addresses;
        var territory = label.Market.Ways.Territory;
        var inside = label.Rules.FigureIfAny("territory")?.Word.Split(' ').ToHashSet() ?? [];
        var within = addresses.Where(a => a.Country is { } c && inside.Contains(c)).ToArray();
        if ((within.FirstOrDefault()?.Name ?? addresses.Select(a => a.Name).FirstOrDefault(n => n is not null)
            ?? label.Label.Business.Name) is null)
            NoName(label, !addresses.IsEmpty);
        if (!label.Label.Contact.Any && !addresses.Any(a => a.HasStreet))
            label.Tell("contact.missing", label.Where);
        if (addresses.IsEmpty && label.Label.MayBeAddress is { } line && label.Tell("business-place.missing/unclear", line, line))
            return;
        if (addresses.IsEmpty)
        {
            label.Tell("business-place.missing", label.Where, label.Label.Business.Place is { } part ? $" (only {part})" : "");
            return;
        }
        var outside = addresses.Where(a => a.Country is { } c && !inside.Contains(c)).ToArray();
        if (within.Length == 0 && addresses.FirstOrDefault(a => a.Country is null) is { } open)
            label.Tell("responsible-person.missing/country-unsaid", open.Line, territory);
        else if (within.Length == 0 && outside.Length > 0)
            label.Tell("responsible-person.missing", outside[0].Line, Countries.Name(outside[0].Country!), territory);
        else if (within.Length > 1)
            label.Tell("responsible-person.underline", "addresses", string.Join("; ", within.Select(a => a.Line)));
        var says = label.Label.Origin is not null || OriginWords().IsMatch(label.Label.Text.Text);
        if (outside.Length > 0 && !says)
            label.Tell("origin.missing", outside[0].Line, Countries.Name(outside[0].Country!));
        if (outside.Length > 0 && within.Length > 0 && !says && !Imported().IsMatch(label.Label.Text.Text))
            label.Tell("importer.missing/words", within[0].Line, Countries.Name(outside[0].Country!));
        if (outside.Length > 0 && outside.Length == addresses.Length && !says && !Imported().IsMatch(label.Label.Text.Text))
            label.Tell("importer.missing", outside[0].Line, Countries.Name(outside[0].Country!));
    }

    [GeneratedRegex(@"\bresponsible person\b|\b(EU|UK) RP\b", RegexOptions.IgnoreCase)]
    private static partial Regex ResponsiblePerson();

    [GeneratedRegex(@"\b(made|produced|manufactured) in\b|\b(product|country) of\b|\bcountry of origin\b", RegexOptions.IgnoreCase)]
    private static partial Regex Origin();

    [GeneratedRegex(@"\b(?:country of origin|product of|made in|origin)\b|\bfabriqué en\b|\bhergestellt in\b|\bhecho en\b|\bprodotto in\b",
        RegexOptions.IgnoreCase)]
    private static partial Regex OriginWords();

    [GeneratedRegex(@"\b(?:imported (?:by|for)|importé (?:par|pour)|made in|fabriqué (?:au|en|aux)|product of|produit (?:de|du|des))\b",
        RegexOptions.IgnoreCase)]
    private static partial Regex Imported();
}
