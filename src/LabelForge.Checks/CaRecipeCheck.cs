using System.Collections.Immutable;
using System.Globalization;
using LabelForge.Checks.Words;
using LabelForge.Ingredients;
using LabelForge.Markets;

namespace LabelForge.Checks;

/// <summary>Checks what a recipe's label would say against the rules of Canada. Its ingredients' names and allergens are the declaration's work.</summary>
public static class CaRecipeCheck
{
    private static readonly RuleBook Rules = RuleBook.Ca;

    /// <summary>The findings, in no order.</summary>
    public static IEnumerable<Finding> Find(RecipeFacts facts)
    {
        var content = facts.Content;
        var warnings = string.Join("\n", content.Warnings.Append(content.Directions ?? ""));
        return CaLabelCheck.Identity(string.IsNullOrWhiteSpace(content.Identity) ? null : content.Identity, $"{content.Identity}\n{content.ProductName}", facts.Batch.Recipe.File)
            .Concat(NetQuantityCheck.Find(facts, Rules))
            .Concat(RecipeBasics.Ingredients(facts, Rules))
            .Concat(AllergensUnknown.Find(facts, RuleBook.MarketCa))
            .Concat(Business(facts))
            .Concat(RecipeBasics.Lot(facts, Rules))
            .Concat(FragranceCheck.Find(facts))
            .Concat(PreservationCheck.Find(facts))
            .Concat(CaLabelCheck.Warnings(warnings))
            .Concat(RecipeBasics.Claims(facts, RecipeBasics.Words(facts, withWarnings: true), RuleBook.MarketCa))
            .Concat(RecipeBasics.Heights(facts.Heights, Rules))
            .Concat(CaLabelCheck.OutsideTheLabel());
    }

    private static IEnumerable<Finding> Business(RecipeFacts facts)
    {
        var business = facts.Workshop.Business;
        if (string.IsNullOrWhiteSpace(business.Name))
            yield return Rules["business-name.missing"].Find("workshop.yaml");
        var missing = new[] { ("city", business.Place.City), ("postcode", business.Place.Postcode) }.Where(p => string.IsNullOrWhiteSpace(p.Item2)).Select(p => p.Item1).ToArray();
        if (missing.Length > 0)
            yield return Rules["business-place.missing"].Find("workshop.yaml", $" ({string.Join(" and ", missing)} not written under place:)");
        var country = business.Place.Country?.Trim().ToUpperInvariant();
        if (country is { Length: 2 } and not "CA" && business.ResponsibleIn(RuleBook.MarketCa) is null && facts.Content.Origin is null)
            yield return Rules["importer.missing"].Find("workshop.yaml", country);
        if (business.ContactLine is null)
            yield return Rules["contact.missing"].Find("workshop.yaml");
    }
}
