using System.Collections.Immutable;
using LabelForge.Ingredients;
using LabelForge.Markets;
using LabelForge.Recipes;

namespace LabelForge.Checks;

/// <summary>Checks what a recipe's label would say against the rules of the United States.</summary>
public static class UsRecipeCheck
{
    private static readonly RuleBook Rules = RuleBook.Us;

    /// <summary>The findings, in no order.</summary>
    public static IEnumerable<Finding> Find(RecipeFacts facts) =>
        RecipeBasics.Identity(facts, Rules)
            .Concat(NetQuantityCheck.Find(facts))
            .Concat(RecipeBasics.Ingredients(facts, Rules))
            .Concat(BusinessAndContact(facts.Workshop.Business))
            .Concat(RecipeBasics.Lot(facts, Rules))
            .Concat(FragranceCheck.Find(facts))
            .Concat(ColourCheck.Find(facts))
            .Concat(SubstanceCheck.Find(facts, SubstanceTable.For(facts.Declaration.Market)!))
            .Concat(PreservationCheck.Find(facts))
            .Concat(RecipeBasics.Heights(facts.Heights, Rules))
            .Concat(Words(facts));

    // Words and warnings, as on a label made elsewhere.
    private static IEnumerable<Finding> Words(RecipeFacts facts)
    {
        var text = RecipeBasics.Words(facts, withWarnings: true);
        return RecipeBasics.Claims(facts, text, RuleBook.MarketUs).Concat(WarningCheck.Find(text, RecipeBasics.Names(facts), facts.Kind));
    }

    private static IEnumerable<Finding> BusinessAndContact(Business business)
    {
        var place = business.Place;
        var missing = new[] { ("street", place.Street), ("city", place.City), ("region", place.Region), ("postcode", place.Postcode) }
            .Where(p => string.IsNullOrWhiteSpace(p.Item2)).Select(p => p.Item1).ToImmutableArray();
        if (!missing.IsEmpty)
            yield return Rules["business-place.missing"].Find("workshop.yaml", string.Join(", ", missing) + (missing.Length == 1 ? " is" : " are"));
        if (business.ContactLine is null && !missing.IsEmpty)
            yield return Rules["contact.missing"].Find("workshop.yaml");
    }
}
