using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Lettering;

namespace LabelForge.Print.Fitting;

/// <summary>Measures a finished layout against the rules: from what is drawn, not from what the fitter meant.</summary>
internal static class ConstraintMeasure
{
    // Letters that are narrow in any type say nothing of its proportion.
    private const string Narrow = "iIjlrtf1";

    public static IEnumerable<Constraint> Of(LabelLayout layout, PrintRules rules, Area? principal) =>
        Heights(layout).Concat(NetQuantity(layout, rules, principal)).Concat(Identity(layout, rules)).Concat(Whole(layout, rules));

    private static IEnumerable<Constraint> Heights(LabelLayout layout) => layout.Texts.Select(t => new Constraint(
        $"{Roles.NameOf(t.Role)}.letter-height", t.Role, t.LetterHeight.Millimetres, t.RequiredFloor.Millimetres, "mm", true, t.Source,
        true, new Problem("fit.letter-height", ("role", Roles.NameOf(t.Role)))));

    private static IEnumerable<Constraint> NetQuantity(LabelLayout layout, PrintRules rules, Area? principal)
    {
        if (layout.Texts.FirstOrDefault(t => t.Role == Role.NetQuantity) is not { } net)
            yield break;
        var panel = layout.Design.Panels.First(p => p.Elements.Any(e => e.Role == Role.NetQuantity));
        var lines = layout.Lines.Where(l => l.Role == Role.NetQuantity).ToList();
        if (rules.BottomShare is { } share && (principal ?? panel.Area).SquareInches > (rules.BottomExempt?.Figure ?? 0))
            yield return new Constraint("net-quantity.bottom-of-panel", Role.NetQuantity,
                Foot(layout.Design, panel) - net.Y.Millimetres, Tall(layout.Design, panel).Millimetres * share.Figure / 100m, "mm", false,
                share.Citation, true, new Problem("fit.bottom-of-panel", ("panel", panel.Id)));
        if (rules.ClearAboveBelow is { } clear && Nearest(layout, net, above: true) is { } above)
            yield return new Constraint("net-quantity.clear-above", Role.NetQuantity, above,
                clear.Figure * net.LetterHeight.Millimetres, "mm", true, clear.Citation, true, new Problem("fit.clear-above"));
        if (rules.ClearAboveBelow is { } under && Nearest(layout, net, above: false) is { } below)
            yield return new Constraint("net-quantity.clear-below", Role.NetQuantity, below,
                under.Figure * net.LetterHeight.Millimetres, "mm", true, under.Citation, true, new Problem("fit.clear-below"));
        if (rules.ClearBeside is { } sides && Beside(layout, net) is { } beside)
            yield return new Constraint("net-quantity.clear-beside", Role.NetQuantity, beside,
                Points.ToLength((double)sides.Figure * lines.Max(l => l.Text.Face.WidthOfN * l.Text.Size)).Millimetres, "mm", true,
                sides.Citation, true, new Problem("fit.clear-beside"));
        if (rules.Proportion is { } proportion)
            yield return new Constraint("net-quantity.letter-proportion", Role.NetQuantity,
                lines.SelectMany(l => l.Text.Text.Where(c => char.IsLetterOrDigit(c) && !Narrow.Contains(c))
                    .Select(c => l.Text.Face.InkHeight(c) / l.Text.Face.InkWidth(c))).Select(r => Math.Round((decimal)r, 3)).Max(),
                proportion.Figure, "times", false, proportion.Citation, true, new Problem("fit.letter-proportion"));
        if (rules.NetQuantityWeight is { } weight)
            yield return Weight("net-quantity.weight", Role.NetQuantity, lines, weight);
    }

    private static IEnumerable<Constraint> Identity(LabelLayout layout, PrintRules rules)
    {
        if (layout.Texts.FirstOrDefault(t => t.Role == Role.Identity) is not { } identity)
            yield break;
        var panel = layout.Design.Panels.First(p => p.Elements.Any(e => e.Role == Role.Identity));
        if (rules.IdentityShare is { } share)
            yield return new Constraint("identity.share-of-largest", Role.Identity,
                Math.Round(100m * identity.LetterHeight.Millimetres / layout.Texts
                    .Where(t => (layout.Design.Look is not null && layout.Design.Round) || On(t, panel))
                    .Max(t => t.LetterHeight.Millimetres), 1),
                share.Figure, "%", true, share.Citation, false, new Problem("fit.identity-beside-the-largest"));
        if (rules.IdentityWeight is { } weight)
            yield return Weight("identity.weight", Role.Identity, layout.Lines.Where(l => l.Role == Role.Identity), weight);
    }

    private static IEnumerable<Constraint> Whole(LabelLayout layout, PrintRules rules)
    {
        var design = layout.Design;
        var (ink, ground) = layout.Lines.Select(l => (Ink: l.Ink ?? design.Ink, Ground: l.Ground ?? design.Ground))
            .Append((Ink: design.Ink, Ground: design.Ground))
            .Select(p => (Ink: design.Seen(p.Ink), Ground: design.Seen(p.Ground))).MinBy(p => Colour.Contrast(p.Ink, p.Ground));
        yield return new Constraint("print.contrast", null,
            Math.Floor((decimal)Colour.Contrast(ink, ground) * 100) / 100, rules.Contrast.Figure, "to 1", true, rules.Contrast.Citation,
            true, new Problem("fit.contrast", ("ink", ink), ("ground", ground)));
        if (rules.WarningsWeight is { } weight && layout.Lines.Where(l => l.Role == Role.Warnings).ToArray() is { Length: > 0 } warnings)
            yield return Weight("warnings.weight", Role.Warnings, warnings, weight);
        var edges = layout.Texts.Select(t => new[]
        {
            t.X.Millimetres, t.Y.Millimetres, design.Width.Millimetres - t.X.Millimetres - t.Width.Millimetres,
        design.Height.Millimetres - t.Y.Millimetres - t.Height.Millimetres,
        }.Min());
        yield return new Constraint("print.safe-margin", null,
            edges.DefaultIfEmpty(100m).Min(), rules.SafeMargin.Length.Millimetres, "mm", true, rules.SafeMargin.Citation, false,
            new Problem("fit.nearest-to-the-edge"));
    }

    private static Constraint Weight(string id, Role role, IEnumerable<PlacedLine> lines, LawEntry law) => new(
        id, role, lines.Min(l => l.Text.Face.Weight), law.Figure, "of 1000", true,
        law.Citation, false, new Problem("fit.weight-of-the-face", ("role", Roles.NameOf(role))));

    private static decimal Bottom(DesignPanel panel) => panel.Y.Millimetres + panel.Height.Millimetres;

    // An arranged front of a round label is the whole circle, not the square in it.
    private static Length Tall(LabelDesign design, DesignPanel panel) =>
        design.Look is not null && design.Round ? design.Height : panel.Height;

    private static decimal Foot(LabelDesign design, DesignPanel panel) =>
        design.Look is not null && design.Round ? design.Height.Millimetres : Bottom(panel);

    private static bool On(PlacedText t, DesignPanel panel) =>
        t.X.Millimetres >= panel.X.Millimetres && t.X.Millimetres < panel.X.Millimetres + panel.Width.Millimetres
        && t.Y.Millimetres >= panel.Y.Millimetres && t.Y.Millimetres < Bottom(panel);

    private static decimal? Nearest(LabelLayout layout, PlacedText net, bool above) => layout.Texts
        .Where(t => t != net && Shares(t.X, t.Width, net.X, net.Width))
        .Select(t => above
            ? net.Y.Millimetres - t.Y.Millimetres - t.Height.Millimetres
            : t.Y.Millimetres - net.Y.Millimetres - net.Height.Millimetres)
        .Where(d => d > -net.Height.Millimetres).Order().Select(d => (decimal?)d).FirstOrDefault();

    private static decimal? Beside(LabelLayout layout, PlacedText net) => layout.Texts
        .Where(t => t != net && Shares(t.Y, t.Height, net.Y, net.Height))
        .Select(t => Math.Max(t.X.Millimetres - (net.X.Millimetres + net.Width.Millimetres),
            net.X.Millimetres - (t.X.Millimetres + t.Width.Millimetres)))
        .Order().Select(d => (decimal?)d).FirstOrDefault();

    private static bool Shares(Length a, Length sizeA, Length b, Length sizeB) =>
        a.Millimetres < b.Millimetres + sizeB.Millimetres && b.Millimetres < a.Millimetres + sizeA.Millimetres;
}
