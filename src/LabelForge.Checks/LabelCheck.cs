using System.Text.RegularExpressions;
using LabelForge.Checks.Reading;
using LabelForge.Markets;
using LabelForge.Measures;

namespace LabelForge.Checks;

/// <summary>Checks a label made elsewhere against the rules of a market.</summary>
public static class LabelCheck
{
    /// <summary>Checks a label; findings stand in order of gravity.</summary>
    /// <exception cref="InputException">The text is such that its words cannot be looked through in reasonable time: no label.</exception>
    public static CheckReport Run(LabelFacts facts, Market market)
    {
        try
        {
            var findings = market switch
            {
                var m when m == RuleBook.MarketUs => UsLabelCheck.Find(facts),
                var m when m == RuleBook.MarketCa => CaLabelCheck.Find(facts),
                _ => EuLabelCheck.Find(facts, market),
            };
            return new CheckReport(MarketText.Of(market), [.. findings.OrderBy(f => f.Severity)], Found(facts.Reading, market));
        }
        catch (RegexMatchTimeoutException)
        {
            throw new InputException(new Problem(facts.Where, 0, "This text takes too long to read; a label's does not.", "Give the words of one label, front and back."));
        }
    }

    /// <summary>What was read, as the report shows it.</summary>
    public static LabelFound Found(LabelReading reading, Market market)
    {
        var address = market == RuleBook.MarketUs || reading.Addresses.IsEmpty ? null : string.Join("; ", reading.Addresses.Select(a => a.Line));
        var name = market == RuleBook.MarketUs ? null : reading.Addresses.Select(a => a.Name).FirstOrDefault(n => n is not null);
        return new(reading.Identity?.Written, reading.NetQuantity?.Written, [.. reading.Names.Select(n => n.Name)],
            name ?? reading.Business.Name, address ?? reading.Business.Place, reading.Contact.Line, reading.Lot?.Code);
    }
}
