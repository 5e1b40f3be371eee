using LabelForge.Checks;
using LabelForge.Checks.Reading;
using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Lettering;

namespace LabelForge.Print.Findings;

/// <summary>Pictures of a label with the places of its findings.</summary>
public static class MarkedPages
{
    /// <summary>A recipe's label as it would be printed.</summary>
    public static ImmutableArray<MarkedPage> Of(LabelLayout label, CheckReport report)
    {
        var marks = report.Findings.SelectMany((f, i) => label.Texts.Where(t => Concerns(f, t.Role))
            .Select(t => new Mark(i + 1, f.Severity, Points.Of(t.X), Points.Of(t.Y), Points.Of(t.Width), Points.Of(t.Height))));
        return [new(Points.Of(label.Design.Width), Points.Of(label.Design.Height), label, [], [.. marks])];
    }

    /// <summary>A label drawn elsewhere: its words where they stand; empty for a label that came as text.</summary>
    public static ImmutableArray<MarkedPage> Of(LabelStatement reading, CheckReport report)
    {
        var text = reading.Text;
        var places = report.Findings.SelectMany((f, i) => FindingPlaces.Of(f, reading).Select(s => (Finding: f, Number: i + 1, Span: s)))
            .ToArray();
        return
        [
            .. text.Pages.Select((size, at) => new MarkedPage(size.Width, size.Height, null,
                [.. text.Places.Where(p => p.Page == at + 1)
                    .Select(p => new DrawnWord(text.Text.Substring(p.Span.Start, p.Span.Length), p.X, p.Y, p.Width, p.Height))],
                [
                    .. places.SelectMany(f => text.Places.Where(p => p.Page == at + 1 && p.Span.Overlaps(f.Span))
                        .Select(p => new Mark(f.Number, f.Finding.Severity, p.X, p.Y, p.Width, p.Height)))])),
        ];
    }

    private static bool Concerns(Finding finding, Role role) => finding.Rule.Split('.')[0] switch
    {
        "identity" => role == Role.Identity,
        "net-quantity" => role == Role.NetQuantity,
        "ingredients" or "allergen" or "colour" or "substance" => role == Role.Ingredients,
        "business-name" or "business-place" or "responsible-person" or "importer" => role == Role.Responsible,
        "contact" => role == Role.Contact,
        "lot" => role == Role.Lot,
        "durability" => role is Role.BestBefore or Role.PeriodAfterOpening,
        "origin" => role == Role.Origin,
        "warning" => role == Role.Warnings,
        "claim" => role is Role.Directions or Role.Name,
        _ => false,
    };
}
