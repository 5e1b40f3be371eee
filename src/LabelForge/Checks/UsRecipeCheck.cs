using System.Collections.Immutable;
using System.Globalization;
using LabelForge.Checks.Words;
using LabelForge.Ingredients;
using LabelForge.Recipes;

namespace LabelForge.Checks;

/// <summary>Checks what a recipe's label would say against the rules of the United States.</summary>
public static class UsRecipeCheck
{
    private static readonly RuleBook Rules = RuleBook.Us;

    /// <summary>Checks a recipe's label; findings stand in order of gravity.</summary>
    public static CheckReport Run(RecipeFacts facts)
    {
        var findings = Identity(facts)
            .Concat(NetQuantityCheck.Find(facts))
            .Concat(Ingredients(facts))
            .Concat(BusinessAndContact(facts.Workshop.Business))
            .Concat(Lot(facts))
            .Concat(FragranceCheck.Find(facts))
            .Concat(ColourCheck.Find(facts))
            .Concat(SubstanceCheck.Find(facts, SubstanceTable.Us))
            .Concat(PreservationCheck.Find(facts))
            .Concat(Heights(facts))
            .Concat(Words(facts))
            .OrderBy(f => f.Severity);
        var business = facts.Workshop.Business;
        return new CheckReport("us", [.. findings], new LabelFound(
            facts.Content.Identity, facts.Content.NetQuantity, facts.Content.Ingredients,
            business.NameLine, business.Place.Line, business.ContactLine, facts.Content.Lot));
    }

    private static IEnumerable<Finding> Identity(RecipeFacts facts)
    {
        if (string.IsNullOrWhiteSpace(facts.Batch.Recipe.Identity))
            yield return Rules["identity.missing"].Find(facts.Batch.Recipe.File);
    }

    private static IEnumerable<Finding> Ingredients(RecipeFacts facts)
    {
        if (facts.Declaration.Ingredients.IsEmpty)
            yield return Rules["ingredients.missing"].Find(facts.Batch.Recipe.File);
        foreach (var finding in facts.Declaration.Findings)
            yield return finding;
        foreach (var pair in facts.Declaration.Unsettled)
            yield return Rules["ingredients.order"].Find("ingredients", pair.First, pair.Second, pair.Ask);
    }

    // Words and warnings, as on a label made elsewhere. Each claim is a sentence of its own.
    private static IEnumerable<Finding> Words(RecipeFacts facts)
    {
        var recipe = facts.Batch.Recipe;
        var text = string.Join(".\n", new[] { recipe.Name, recipe.Identity, recipe.Directions }.Concat(recipe.Claims).Concat(recipe.Warnings).Where(t => !string.IsNullOrWhiteSpace(t)));
        var names = facts.Declaration.Ingredients.Select(i => (i.Name, Known: IngredientDictionary.Shipped.Find(i.Name))).ToArray();
        return WordCheck.Find(text, names, recipe.SoldAs, recipe.File)
            .Concat(WarningCheck.Find(text, names, facts.Kind));
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

    private static IEnumerable<Finding> Lot(RecipeFacts facts)
    {
        if (facts.Content.Lot is null)
            yield return Rules["lot.missing"].Find("label");
    }

    private static IEnumerable<Finding> Heights(RecipeFacts facts) => facts.Heights
        .Where(h => h.MeasuredMillimetres < h.LeastMillimetres)
        .Select(h => Rules[h.Rule].Find(h.Element, Millimetres(h.MeasuredMillimetres), Millimetres(h.LeastMillimetres)));

    private static string Millimetres(decimal value) => value.ToString("0.00", CultureInfo.InvariantCulture) + " mm";
}
