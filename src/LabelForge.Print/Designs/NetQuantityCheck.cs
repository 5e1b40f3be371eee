using LabelForge.Print.Drawing;
using LabelForge.Print.Lettering;

namespace LabelForge.Print.Designs;

/// <summary>Whether the net quantity stands where 21 CFR 701.13(f) puts it: low on the principal panel, with clear space around.</summary>
internal static class NetQuantityCheck
{
    public static Fit.DoesNotFit? Refusal(LabelDesign design, LabelLayout layout)
    {
        if (layout.Texts.FirstOrDefault(t => t.Role == Role.NetQuantity) is not { } net)
            return null;
        var panel = design.Panels.First(p => p.Elements.Any(e => e.Role == Role.NetQuantity));
        var place = NetQuantityPlace.Current;
        var allowedFrom = panel.Y.Millimetres + panel.Height.Millimetres * (1m - (decimal)place.BottomShare);
        if (panel.Area.SquareInches > place.ExemptSquareInches && net.Y.Millimetres < allowedFrom)
        {
            var excess = Measures.Length.FromMillimetres(allowedFrom - net.Y.Millimetres);
            return new Fit.DoesNotFit(panel.Id, Role.NetQuantity, excess,
                $"The net quantity reaches {excess} above the bottom {place.BottomShare * 100:0} % of the panel {panel.Id} ({NetQuantityPlace.Source}).",
                "In the design, give it \"place: bottom\", as the last element of its panel.");
        }
        var line = layout.Lines.First(l => net.Text.StartsWith(l.Text.Text.TrimEnd(), StringComparison.Ordinal));
        var beside = Points.ToLength(place.ClearBeside * line.Text.Face.WidthOfN * line.Text.Size);
        var near = layout.Texts.FirstOrDefault(t => t != net && SameRows(t, net) && Between(t, net) < beside.Millimetres);
        return near is null ? null : new Fit.DoesNotFit(panel.Id, Role.NetQuantity, beside,
            $"The {Roles.NameOf(near.Role)} stands nearer to the net quantity than {beside}, twice the width of its letter N ({NetQuantityPlace.Source}).",
            "In the design, give the panels more padding.");
    }

    private static bool SameRows(PlacedText a, PlacedText b) =>
        a.Y.Millimetres < b.Y.Millimetres + b.Height.Millimetres && b.Y.Millimetres < a.Y.Millimetres + a.Height.Millimetres;

    private static decimal Between(PlacedText a, PlacedText b) =>
        Math.Max(a.X.Millimetres - (b.X.Millimetres + b.Width.Millimetres), b.X.Millimetres - (a.X.Millimetres + a.Width.Millimetres));
}
