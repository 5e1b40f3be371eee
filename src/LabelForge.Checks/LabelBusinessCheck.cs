namespace LabelForge.Checks;

/// <summary>Checks who answers for the product, where, and how to reach them.</summary>
public static class LabelBusinessCheck
{
    private static readonly RuleBook Rules = RuleBook.Us;

    /// <summary>The findings.</summary>
    public static IEnumerable<Finding> Find(LabelFacts facts)
    {
        var business = facts.Reading.Business;
        if (business.Name is null)
            yield return Rules["business-name.missing/label"].Find(facts.Where);
        // "Made by" names the maker; "Distributed by" and "Manufactured for" do not (21 CFR 701.12(c)).
        if (business.LeadIn is { } lead && (lead.StartsWith("dist", StringComparison.OrdinalIgnoreCase) || lead.EndsWith("for", StringComparison.OrdinalIgnoreCase)))
            yield return Rules["business.role"].Find(business.Name ?? facts.Where, lead);
        var missing = new[] { ("city", business.City), ("state", business.State), ("ZIP code", business.Zip) }
            .Where(p => p.Item2 is null).Select(p => p.Item1).ToArray();
        if (business.Foreign is not null && business.Zip is null)
        {
            if (facts.Reading.Origin is null)
                yield return Rules["origin.missing"].Find(business.Place ?? facts.Where, business.Foreign);
        }
        else if (missing.Length > 0)
        {
            yield return Rules["business-place.missing/label"].Find(business.Place ?? facts.Where, $"no {string.Join(", no ", missing)}");
        }
        else if (business.Street is null)
        {
            yield return Rules["business-place.missing/street"].Find(business.Place ?? facts.Where);
        }
        // Section 609 speaks of cosmetics; a soap that is none is outside it.
        if (facts.IsCosmetic && !facts.Reading.Contact.Any && !business.HasMailAddress)
            yield return Rules["contact.missing/label"].Find(facts.Where);
    }
}
