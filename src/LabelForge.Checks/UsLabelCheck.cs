using System.Collections.Immutable;
using System.Text.RegularExpressions;
using LabelForge.Checks.Reading;
using LabelForge.Checks.Words;
using LabelForge.Ingredients;
using LabelForge.Markets;

namespace LabelForge.Checks;

/// <summary>Checks a label made elsewhere against the rules of the United States.</summary>
public static partial class UsLabelCheck
{
    private static readonly RuleBook Rules = RuleBook.Us;

    /// <summary>Checks a label; findings stand in order of gravity.</summary>
    /// <exception cref="Measures.InputException">The text is such that its words cannot be looked through in reasonable time: no label.</exception>
    public static CheckReport Run(LabelFacts facts) => LabelCheck.Run(facts, RuleBook.MarketUs);

    /// <summary>What was read, as the report shows it.</summary>
    public static LabelFound Found(LabelReading reading) => LabelCheck.Found(reading, RuleBook.MarketUs);

    /// <summary>The findings, in no order.</summary>
    public static IEnumerable<Finding> Find(LabelFacts facts) =>
        Identity(facts)
            .Concat(LabelQuantityCheck.Find(facts))
            .Concat(LabelHeightCheck.Find(facts))
            .Concat(LabelIngredientCheck.Find(facts))
            .Concat(LabelOrderCheck.Find(facts))
            .Concat(LabelColourCheck.Find(facts))
            .Concat(LabelBusinessCheck.Find(facts))
            .Concat(Lot(facts))
            .Concat(WordCheck.Find(facts.Reading.Rest, facts.Names, facts.MeantAs, "words", RuleBook.MarketUs))
            .Concat(WarningCheck.Find(facts.Reading.Text.Text, facts.Names, facts.Kind))
            .Concat(WarningCheck.Prohibited(facts.Names))
            .Concat(Professional(facts));

    private static IEnumerable<Finding> Identity(LabelFacts facts)
    {
        if (facts.Reading.Identity is not null)
            yield break;
        if (IdentityReader.Hint(facts.Reading.Rest) is { } hint)
            yield return Rules["identity.missing/unclear"].Find(hint, hint);
        else
            yield return Rules["identity.missing/label"].Find(facts.Where);
    }

    private static IEnumerable<Finding> Professional(LabelFacts facts)
    {
        if (ProfessionalUse().IsMatch(facts.Reading.Text.Text))
            yield return Rules["professional.ingredients"].Find(facts.Where);
    }

    [GeneratedRegex(@"\bfor\s+professional\s+(?:salon\s+)?use\b|\bprofessional\s+use\s+only\b|\blicensed\s+professionals?\b", RegexOptions.IgnoreCase)]
    private static partial Regex ProfessionalUse();

    private static IEnumerable<Finding> Lot(LabelFacts facts)
    {
        if (facts.Reading.Lot is null)
            yield return Rules["lot.missing/label"].Find(facts.Where);
    }
}
