using System.Collections.Immutable;
using System.Text.RegularExpressions;
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

    /// <summary>The findings, in no order.</summary>
    /// <param name="facts">The recipe's facts, declared for the market.</param>
    /// <param name="market">eu or uk.</param>
    public static IEnumerable<Finding> Find(RecipeFacts facts, Market market) =>
        RecipeBasics.Identity(facts, Rules)
            .Concat(NetQuantityCheck.Find(facts, Rules))
            .Concat(RecipeBasics.Ingredients(facts, Rules))
            .Concat(Business(facts, market))
            .Concat(Durability(facts))
            .Concat(RecipeBasics.Lot(facts, Rules))
            .Concat(AllergensUnknown.Find(facts, market))
            .Concat(FragranceCheck.Find(facts))
            .Concat(SubstanceCheck.Find(facts, SubstanceTable.For(market)!))
            .Concat(PreservationCheck.Find(facts))
            // No height is set for anything but the nominal content.
            .Concat(RecipeBasics.Heights(facts.Heights.Where(h => h.Rule == "net-quantity.type-too-small"), Rules))
            .Concat(RecipeBasics.Claims(facts, RecipeBasics.Words(facts, withWarnings: false), market))
            .Concat(Notes(facts, market))
            .Select(f => In(market, f));

    /// <summary>A finding by the EU's text as it is told for a market.</summary>
    internal static Finding In(Market market, Finding finding) => market == RuleBook.MarketUk && !finding.Source.Contains("as retained", StringComparison.Ordinal)
        ? finding with { Source = finding.Source.Replace(Regulation, $"{Regulation} as retained in the UK (judged by the EU text; differences not checked)", StringComparison.Ordinal) }
        : finding;

    /// <summary>What no label shows.</summary>
    internal static IEnumerable<Finding> OutsideTheLabel(Market market)
    {
        if (market == RuleBook.MarketEu)
            yield return Rules["language.note"].Find("label");
        yield return Rules["outside.safety-report"].Find("outside the label");
        yield return Rules["outside.product-file"].Find("outside the label");
        yield return Rules["outside.notification"].Find("outside the label", market == RuleBook.MarketUk
            ? "in the United Kingdom's service for notifying cosmetic products"
            : "in the Commission's portal for notifying cosmetic products (CPNP)");
    }

    private static IEnumerable<Finding> Business(RecipeFacts facts, Market market)
    {
        var place = facts.Workshop.Business.Place;
        var missing = new[] { ("street", place.Street), ("city", place.City), ("postcode", place.Postcode) }
            .Where(p => string.IsNullOrWhiteSpace(p.Item2)).Select(p => p.Item1).ToImmutableArray();
        if (!missing.IsEmpty)
            yield return Rules["business-place.missing"].Find("workshop.yaml", string.Join(", ", missing) + (missing.Length == 1 ? " is" : " are"));
        var inside = market.On(facts.On).Figure("territory").Word.Split(' ');
        var territory = market == RuleBook.MarketUk ? "the United Kingdom" : "the Union";
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

    private static IEnumerable<Finding> Notes(RecipeFacts facts, Market market)
    {
        if (facts.Content.Warnings.IsEmpty)
            yield return Rules["precautions.none"].Find(facts.Batch.Recipe.File);
        foreach (var note in OutsideTheLabel(market))
            yield return note;
    }

    private static bool Says(RecipeFacts facts, Regex words) => Words(facts).Any(words.IsMatch);

    private static IEnumerable<string> Words(RecipeFacts facts) => facts.Content.Warnings.Append(facts.Content.Directions ?? "");

    [GeneratedRegex(@"\bresponsible person\b|\b(EU|UK) RP\b", RegexOptions.IgnoreCase)]
    private static partial Regex ResponsiblePerson();

    [GeneratedRegex(@"\b(made|produced|manufactured) in\b|\b(product|country) of\b|\bcountry of origin\b", RegexOptions.IgnoreCase)]
    private static partial Regex Origin();

    [GeneratedRegex(@"\bbest (used )?before\b|\bexp(iry|\.)? ?(date)?\b", RegexOptions.IgnoreCase)]
    private static partial Regex BestBefore();

    [GeneratedRegex(@"\b\d{1,2} ?M\b")]
    private static partial Regex Months();
}
