using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using LabelForge.Checks.Words;
using LabelForge.Ingredients;
using LabelForge.Markets;
using LabelForge.Recipes;

namespace LabelForge.Checks;

/// <summary>
/// Checks what a recipe's label would say against Article 19 of Regulation (EC) No 1223/2009 and its annexes. For the United
/// Kingdom the same rules are used, and each finding says that differences were not checked.
/// </summary>
public static partial class EuRecipeCheck
{
    private const string Regulation = "Regulation (EC) No 1223/2009";
    private static readonly RuleBook Rules = RuleBook.Eu;

    /// <summary>Checks a recipe's label; findings stand in order of gravity.</summary>
    /// <param name="facts">The recipe's facts, declared for the market.</param>
    /// <param name="market">eu or uk.</param>
    public static CheckReport Run(RecipeFacts facts, Market market)
    {
        var findings = Identity(facts)
            .Concat(NetQuantityCheck.Find(facts, Rules))
            .Concat(Ingredients(facts))
            .Concat(Business(facts, market))
            .Concat(Durability(facts))
            .Concat(Lot(facts))
            .Concat(AllergensUnknown.Find(facts, market))
            .Concat(FragranceCheck.Find(facts))
            .Concat(SubstanceCheck.Find(facts, SubstanceTable.Eu))
            .Concat(PreservationCheck.Find(facts))
            .Concat(Heights(facts))
            .Concat(Claims(facts, market))
            .Concat(Notes(facts, market))
            .OrderBy(f => f.Severity)
            .Select(f => In(market, f));
        return new CheckReport(MarketText.Of(market), [.. findings], RecipeCheck.Found(facts));
    }

    /// <summary>A finding by the EU's text as it is told for a market.</summary>
    internal static Finding In(Market market, Finding finding) => market == Market.Uk
        ? finding with { Source = finding.Source.Replace(Regulation, $"{Regulation} as retained in the UK (judged by the EU text; differences not checked)", StringComparison.Ordinal) }
        : finding;

    /// <summary>What no label shows.</summary>
    internal static IEnumerable<Finding> OutsideTheLabel(Market market)
    {
        if (market == Market.Eu)
            yield return Rules["language.note"].Find("label");
        yield return Rules["outside.safety-report"].Find("outside the label");
        yield return Rules["outside.product-file"].Find("outside the label");
        yield return Rules["outside.notification"].Find("outside the label", market == Market.Uk
            ? "in the United Kingdom's service for notifying cosmetic products"
            : "in the Commission's portal for notifying cosmetic products (CPNP)");
    }

    private static IEnumerable<Finding> Claims(RecipeFacts facts, Market market)
    {
        var recipe = facts.Batch.Recipe;
        var text = string.Join(".\n", new[] { recipe.Name, recipe.Identity, recipe.Directions }.Concat(recipe.Claims).Where(t => !string.IsNullOrWhiteSpace(t)));
        return WordCheck.Find(text, [.. facts.Declaration.Ingredients.Select(i => (i.Name, IngredientDictionary.Shipped.Find(i.Name)))], recipe.SoldAs, recipe.File, market);
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

    private static IEnumerable<Finding> Business(RecipeFacts facts, Market market)
    {
        var place = facts.Workshop.Business.Place;
        var missing = new[] { ("street", place.Street), ("city", place.City), ("postcode", place.Postcode) }
            .Where(p => string.IsNullOrWhiteSpace(p.Item2)).Select(p => p.Item1).ToImmutableArray();
        if (!missing.IsEmpty)
            yield return Rules["business-place.missing"].Find("workshop.yaml", string.Join(", ", missing) + (missing.Length == 1 ? " is" : " are"));
        var inside = LawBook.Shipped.Get($"territory.{MarketText.Of(market)}", facts.On).Word.Split(' ');
        var territory = market == Market.Uk ? "the United Kingdom" : "the Union";
        var country = place.Country?.Trim().ToUpperInvariant();
        if (country is not { Length: 2 })
        {
            yield return Rules["responsible-person.missing/unknown"].Find("workshop.yaml", territory);
            yield break;
        }
        if (inside.Contains(country))
            yield break;
        if (facts.Workshop.Business.ResponsibleIn(market) is null && !Says(facts, ResponsiblePerson()))
            yield return Rules["responsible-person.missing"].Find("workshop.yaml", country, territory);
        if (facts.Content.Origin is null && !Says(facts, Origin()))
            yield return Rules["origin.missing"].Find(facts.Batch.Recipe.File, country);
    }

    private static IEnumerable<Finding> Durability(RecipeFacts facts)
    {
        // The label draws the month and the open jar where the recipe gives them.
        if (facts.Content.BestBefore is not null || facts.Content.PeriodAfterOpening is not null)
            yield break;
        if (Words(facts).Select(w => Months().Match(w)).FirstOrDefault(m => m.Success) is { } months)
            yield return Rules["durability.sign"].Find(facts.Batch.Recipe.File, months.Value.Trim());
        else if (!Says(facts, BestBefore()))
            yield return Rules[facts.Kind.IsSolid ? "durability.missing/solid" : "durability.missing"].Find(facts.Batch.Recipe.File);
    }

    private static IEnumerable<Finding> Lot(RecipeFacts facts)
    {
        if (facts.Content.Lot is null)
            yield return Rules["lot.missing"].Find("label");
    }

    // No height is set for anything but the nominal content.
    private static IEnumerable<Finding> Heights(RecipeFacts facts) => facts.Heights
        .Where(h => h.Rule == "net-quantity.type-too-small" && h.MeasuredMillimetres < h.LeastMillimetres)
        .Select(h => Rules[h.Rule].Find(h.Element, Millimetres(h.MeasuredMillimetres), Millimetres(h.LeastMillimetres)));

    private static IEnumerable<Finding> Notes(RecipeFacts facts, Market market)
    {
        if (facts.Content.Warnings.IsEmpty)
            yield return Rules["precautions.none"].Find(facts.Batch.Recipe.File);
        foreach (var note in OutsideTheLabel(market))
            yield return note;
    }

    private static bool Says(RecipeFacts facts, Regex words) => Words(facts).Any(words.IsMatch);

    private static IEnumerable<string> Words(RecipeFacts facts) => facts.Content.Warnings.Append(facts.Content.Directions ?? "");

    private static string Millimetres(decimal value) => value.ToString("0.00", CultureInfo.InvariantCulture) + " mm";

    [GeneratedRegex(@"\bresponsible person\b|\b(EU|UK) RP\b", RegexOptions.IgnoreCase)]
    private static partial Regex ResponsiblePerson();

    [GeneratedRegex(@"\b(made|produced|manufactured) in\b|\b(product|country) of\b|\bcountry of origin\b", RegexOptions.IgnoreCase)]
    private static partial Regex Origin();

    [GeneratedRegex(@"\bbest (used )?before\b|\bexp(iry|\.)? ?(date)?\b", RegexOptions.IgnoreCase)]
    private static partial Regex BestBefore();

    [GeneratedRegex(@"\b\d{1,2} ?M\b")]
    private static partial Regex Months();
}
