using LabelForge.Checks.Reading;
using LabelForge.Checks.Subjects;

namespace LabelForge.Checks;

/// <summary>Checks a label against the rules of a market: one's own as it is laid out, or somebody's as it was read.</summary>
public static class LabelCheck
{
    private static readonly Action<CheckCase>[] Subjects =
    [
        IdentityChecks.Check, NetQuantityChecks.Check, LetterHeightChecks.Check, IngredientChecks.Check, OrderChecks.Check,
        AllergenChecks.Check, ColourChecks.Check, SubstanceChecks.Check, PreservationChecks.Check, BusinessChecks.Check,
        DurabilityChecks.Check, LotChecks.Check, WarningChecks.Check, LanguageChecks.Check, TotalChecks.Check, SoapChecks.Check,
        ClaimChecks.Check, ReadingChecks.Check, OutsideChecks.Check,
    ];

    private static readonly Action<CheckCase>[] OfNames =
        [IngredientChecks.Check, OrderChecks.Check, AllergenChecks.Check, ColourChecks.Check, SubstanceChecks.Check, ClaimChecks.Check];

    /// <summary>Checks a label that was read; findings stand in order of gravity.</summary>
    /// <exception cref="InputException">The text is such that its words cannot be looked through in reasonable time: no label.</exception>
    public static CheckReport Run(LabelFacts facts, Market market) => Run(new CheckCase(facts.Reading, market.On(facts.On))
    {
        Kind = facts.Kind,
        KindGiven = facts.KindGiven,
        Facts = facts.Facts,
        SoldAs = facts.SoldAs,
        MeantAs = facts.MeantAs,
        Panel = facts.Panel,
        PanelGiven = facts.PanelGiven,
    });

    /// <summary>Runs every subject on a case.</summary>
    /// <exception cref="InputException">The text is such that its words cannot be looked through in reasonable time: no label.</exception>
    public static CheckReport Run(CheckCase label)
    {
        try
        {
            if (!ProductChecks.IsOther(label))
            {
                foreach (var subject in Subjects)
                    subject(label);
                foreach (var other in label.Label.OtherLists)
                    OfList(label, other);
                ProductChecks.Differs(label);
            }
            return new CheckReport(label.Market.Id, [.. label.Found], Shown(label));
        }
        catch (RegexMatchTimeoutException)
        {
            throw new InputException(label.Where, 0, "reading.too-slow");
        }
    }

    // Of another product on the same label: its names, and what the words deny of them.
    private static void OfList(CheckCase label, IngredientListRead list)
    {
        var before = label.Label.OtherLists.Append(label.Label.Ingredients!).Select(l => l.Span.End).Where(e => e <= list.Span.Start)
            .DefaultIfEmpty(0).Max();
        var kind = IdentityReader.Read(label.Label.Text.Text[before..list.Span.Start], null)?.Kind;
        var other = label.As(kind, label.Label with { Ingredients = list, OtherLists = [label.Label.Ingredients!] });
        foreach (var subject in OfNames)
            subject(other);
        label.TakeNew(other);
    }

    // What stands on the label, as the report shows it.
    private static LabelFound Shown(CheckCase label)
    {
        var says = label.Label;
        if (label.Product is { } product)
        {
            var business = product.Workshop.Business;
            return new(product.Content.Identity, product.Content.NetQuantity, product.Content.Ingredients, business.NameLine,
                business.Place.Line, business.ContactLine, product.Content.Lot);
        }
        var american = label.Market.Ways.AddressForm == BusinessChecks.American;
        var address = american || says.Addresses.IsEmpty ? null : string.Join("; ", says.Addresses.Select(a => a.Line));
        var name = american ? null : says.Addresses.Select(a => a.Name).FirstOrDefault(n => n is not null);
        return new(says.Identity?.Written, says.NetQuantity?.Written, [.. says.Names.Select(n => n.Name)],
            name ?? says.Business.Name, address ?? says.Business.Place, says.Contact.Line, says.Lot?.Code);
    }
}
