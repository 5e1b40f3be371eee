using System.Collections.Immutable;
using System.Text.RegularExpressions;
using LabelForge.Checks.Reading;
using LabelForge.Checks.Words;
using LabelForge.Ingredients;
using LabelForge.Markets;

namespace LabelForge.Checks;

/// <summary>
/// Checks a label made elsewhere against Article 19 of Regulation (EC) No 1223/2009 and its annexes; the United Kingdom is
/// judged by the same rules, and each finding says that differences were not checked.
/// </summary>
public static partial class EuLabelCheck
{
    private static readonly RuleBook Rules = RuleBook.Eu;

    /// <summary>The findings, in no order.</summary>
    /// <param name="facts">The label's facts.</param>
    /// <param name="market">eu or uk.</param>
    public static IEnumerable<Finding> Find(LabelFacts facts, Market market) =>
        Identity(facts)
            .Concat(MetricQuantityCheck.Find(facts, market))
            .Concat(Ingredients(facts))
            .Concat(LabelOrderCheck.Find(facts, Rules))
            .Concat(LabelNameCheck.Find(facts, market))
            .Concat(LabelAllergenCheck.Find(facts, market))
            .Concat(LabelSubstanceCheck.Find(facts, SubstanceTable.For(market)!, Rules))
            .Concat(Responsible(facts, market))
            .Concat(Durability(facts))
            .Concat(facts.Reading.Lot is null ? [Rules["lot.missing/label"].Find(facts.Where)] : [])
            .Concat(WordCheck.Find(facts.Reading.Rest, facts.Names, facts.SoldAs, "words", market))
            .Concat(Notes(facts, market))
            .Select(f => EuRecipeCheck.In(market, f));

    private static IEnumerable<Finding> Identity(LabelFacts facts)
    {
        if (facts.Reading.Identity is not null)
            yield break;
        yield return IdentityReader.Hint(facts.Reading.Rest) is { } hint
            ? Rules["identity.missing/unclear"].Find(hint, hint)
            : Rules["identity.missing/label"].Find(facts.Where);
    }

    private static IEnumerable<Finding> Ingredients(LabelFacts facts)
    {
        if (facts.Reading.Ingredients is not { } list)
            yield return Rules["ingredients.missing/label"].Find(facts.Where);
        else if (list.Heading is null || !list.Heading.Contains("ingr", StringComparison.OrdinalIgnoreCase))
            yield return Rules["ingredients.heading"].Find("ingredients");
    }

    private static IEnumerable<Finding> Responsible(LabelFacts facts, Market market)
    {
        var addresses = facts.Reading.Addresses;
        var territory = market == RuleBook.MarketUk ? "the United Kingdom" : "the Union";
        var inside = market.On(facts.On).Figure("territory").Word.Split(' ').ToHashSet();
        var within = addresses.Where(a => a.Country is { } c && inside.Contains(c)).ToArray();
        if ((within.FirstOrDefault()?.Name ?? addresses.Select(a => a.Name).FirstOrDefault(n => n is not null) ?? facts.Reading.Business.Name) is null)
            yield return Rules["business-name.missing/label"].Find(facts.Where);
        if (addresses.IsEmpty)
        {
            yield return Rules["business-place.missing/label"].Find(facts.Where, facts.Reading.Business.Place is { } part ? $" (only {part})" : "");
            yield break;
        }
        var outside = addresses.Where(a => a.Country is { } c && !inside.Contains(c)).ToArray();
        if (within.Length == 0 && addresses.FirstOrDefault(a => a.Country is null) is { } open)
            yield return Rules["responsible-person.missing/country-unsaid"].Find(open.Line, territory);
        else if (within.Length == 0)
            yield return Rules["responsible-person.missing/label"].Find(outside[0].Line, Countries.Name(outside[0].Country!), territory);
        else if (within.Length > 1)
            yield return Rules["responsible-person.underline"].Find("addresses", string.Join("; ", within.Select(a => a.Line)));
        if (outside.Length > 0 && facts.Reading.Origin is null && !OriginWords().IsMatch(facts.Reading.Text.Text))
            yield return Rules["origin.missing/label"].Find(outside[0].Line, Countries.Name(outside[0].Country!));
    }

    private static IEnumerable<Finding> Durability(LabelFacts facts)
    {
        var text = facts.Reading.Text.Text;
        if (BestBefore().IsMatch(text))
            yield break;
        if (Months().Match(text) is { Success: true } months)
            yield return Rules["durability.sign/label"].Find(months.Value.Trim(), months.Value.Trim());
        else
            yield return Rules[facts.Kind?.IsSolid == true ? "durability.missing/label-solid" : "durability.missing/label"].Find(facts.Where);
    }

    private static IEnumerable<Finding> Notes(LabelFacts facts, Market market)
    {
        if (!Precaution().IsMatch(facts.Reading.Rest))
            yield return Rules["precautions.none/label"].Find(facts.Where);
        foreach (var note in EuRecipeCheck.OutsideTheLabel(market))
            yield return note;
    }

    [GeneratedRegex(@"\bbest\s+(?:used\s+)?(?:before|by)\b|\buse\s+by\b|\bexp(?:iry|ires|iration|\.)?\s*(?:date|end)?\s*[:.]?\s*(?:\d|see|voir)|\bBB[ED]?\b|à utiliser de préférence avant|mindestens haltbar bis|da usare preferibilmente|úsese preferentemente|ten minste houdbaar", RegexOptions.IgnoreCase)]
    private static partial Regex BestBefore();

    [GeneratedRegex(@"(?<![\w.])\d{1,2}\s?M(?![\w])|\bPAO\s*:?\s*\d{1,2}(?:\s*months?)?|\b(?:use|used) within \d{1,2} months(?: of opening)?", RegexOptions.None)]
    private static partial Regex Months();

    [GeneratedRegex(@"\b(?:country of origin|product of|made in|origin)\b|\bfabriqué en\b|\bhergestellt in\b|\bhecho en\b|\bprodotto in\b", RegexOptions.IgnoreCase)]
    private static partial Regex OriginWords();

    [GeneratedRegex(@"\b(?:avoid|warning|caution|keep|external use|do not|if irritation|stop us|discontinue|patch test|éviter|garder|nicht|vermeiden)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Precaution();
}
