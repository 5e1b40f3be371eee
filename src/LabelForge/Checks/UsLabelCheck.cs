using System.Collections.Immutable;
using System.Text.RegularExpressions;
using LabelForge.Checks.Reading;
using LabelForge.Checks.Words;
using LabelForge.Ingredients;
using LabelForge.Measures;

namespace LabelForge.Checks;

/// <summary>Checks a label made elsewhere against the rules of the United States.</summary>
public static partial class UsLabelCheck
{
    private static readonly RuleBook Rules = RuleBook.Us;

    /// <summary>Checks a label; findings stand in order of gravity.</summary>
    /// <exception cref="InputException">The text is such that its words cannot be looked through in reasonable time: no label.</exception>
    public static CheckReport Run(LabelFacts facts)
    {
        try
        {
            return Judged(facts);
        }
        catch (RegexMatchTimeoutException)
        {
            throw new InputException(new Problem(facts.Where, 0, "This text takes too long to read; a label's does not.", "Give the words of one label, front and back."));
        }
    }

    private static CheckReport Judged(LabelFacts facts)
    {
        var findings = Identity(facts)
            .Concat(LabelQuantityCheck.Find(facts))
            .Concat(LabelHeightCheck.Find(facts))
            .Concat(LabelIngredientCheck.Find(facts))
            .Concat(LabelOrderCheck.Find(facts))
            .Concat(LabelColourCheck.Find(facts))
            .Concat(LabelBusinessCheck.Find(facts))
            .Concat(Lot(facts))
            .Concat(WordCheck.Find(facts.Reading.Rest, Names(facts), facts.SoldAs, "words"))
            .Concat(WarningCheck.Find(facts.Reading.Text.Text, Names(facts), facts.Kind))
            .Concat(WarningCheck.Prohibited(Names(facts)))
            .Concat(Professional(facts))
            .OrderBy(f => f.Severity);
        return new CheckReport("us", [.. findings], Found(facts.Reading));
    }

    /// <summary>What was read, as the report shows it.</summary>
    public static LabelFound Found(LabelReading reading) => new(
        reading.Identity?.Written, reading.NetQuantity?.Written, [.. reading.Names.Select(n => n.Name)],
        reading.Business.Name, reading.Business.Place, reading.Contact.Line, reading.Lot?.Code);

    private static IEnumerable<Finding> Identity(LabelFacts facts)
    {
        if (facts.Reading.Identity is not null)
            yield break;
        if (IdentityReader.Hint(facts.Reading.Rest) is { } hint)
            yield return Rules["identity.missing/unclear"].Find(hint, hint);
        else
            yield return Rules["identity.missing/label"].Find(facts.Where);
    }

    private static IReadOnlyList<(string Name, Ingredient? Known)> Names(LabelFacts facts) => [.. facts.Reading.Names.Select(n => (n.Name, n.Known))];

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
