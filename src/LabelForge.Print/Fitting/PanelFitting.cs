using LabelForge.Declarations;
using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Lettering;

namespace LabelForge.Print.Fitting;

/// <summary>Content set into the panels of a design, in its look where it wears one.</summary>
internal sealed class PanelFitting(LabelDesign design, LabelContent content, InkBlock? barcode, LabelExtras extras, PrintRules rules)
{
    // What a maker adds to a front, which not every arrangement has a place for.
    private static readonly Role[] MakersOwn = [Role.Words, Role.Claim, Role.Price];

    // What a design must have a place for where the label says it; the rest is the design's own choice.
    private static readonly Role[] Expected =
    [
        Role.Business, Role.Name, Role.Identity, Role.NetQuantity, Role.Ingredients, Role.Directions, Role.Warnings, Role.Responsible,
        Role.Contact, Role.Lot, Role.BestBefore, Role.Origin, Role.PeriodAfterOpening, Role.Barcode,
    ];

    private readonly LayoutAssembly _assembly = new(design);

    /// <summary>The label, or the first thing that has no room.</summary>
    /// <exception cref="InputException">The type has no letter for a character in the content.</exception>
    public Fit Fitted()
    {
        var has = design.Panels.SelectMany(p => p.Elements).Select(e => e.Role).ToHashSet();
        foreach (var role in Expected.Where(r => Says(r) && !has.Contains(r) && !design.SaidElsewhere.Contains(r)))
            _assembly.LeaveOut($"The design {design.Id} has no place for the {Roles.NameOf(role)}.");
        foreach (var panel in design.Panels)
        {
            if ((design.Look is { } look && FrontPanels.IsFront(panel) ? Front(panel, look) : Back(panel)) is { } refused)
                return refused;
        }
        if (design.Look is not null && content.ScentLine is not null && design.Panels.Any(FrontPanels.IsFront)
            && !_assembly.Has(Role.ScentLine))
            _assembly.LeaveOut("The line of scent has no room on the front here, and is left out.");
        if (design.Look is { WhiteInk: false, Palette: { Covers: true, Stock: var stock } } && stock != Colour.White)
            _assembly.LeaveOut(
                $"On stock as dark as {stock} nothing is read without white ink under it. Write \"white ink: true\" in look where your "
                    + $"printer has it; else take lighter stock.");
        var layout = _assembly.Finish();
        layout = layout with { Constraints = [.. ConstraintMeasure.Of(layout, rules, content.PrincipalPanel?.Area)] };
        return layout.Constraints.FirstOrDefault(c => c.Required && !c.Kept) is { } broken
            ? new Fit.DoesNotFit(PanelOf(broken.Role), broken.Role, broken.Shortfall, broken.Broken)
            : new Fit.Fits(layout);
    }

    private Fit.DoesNotFit? Front(DesignPanel panel, Look look)
    {
        var logo = extras.Art.GetValueOrDefault(LabelExtras.Logo);
        var photo = extras.Art.GetValueOrDefault(LabelExtras.Picture);
        if ((FrontPanels.Arrange(design, panel, look, content, rules, logo, photo)
            ?? FrontPanels.Arrange(design, panel, look, content, rules, null, photo)) is not { } front)
            return new Fit.DoesNotFit(panel.Id, null, default, new Problem("fit.no-room", ("arrangement", look.Arrangement)));
        _assembly.Add(front);
        var place = $"on the panel {panel.Id} in the arrangement {look.Arrangement}, and is left out.";
        if (logo is not null && front.Pictures.All(p => p.InWindow))
            _assembly.LeaveOut($"The logo has no room {place}");
        if (photo is not null && !front.Pictures.Any(p => p.InWindow))
            _assembly.LeaveOut($"The picture has no window {place}");
        foreach (var role in MakersOwn.Where(r => ElementText.WordsOf(r, content) is not null && front.Texts.All(t => t.Report.Role != r)))
            _assembly.LeaveOut($"The {Roles.NameOf(role)} has no place {place}");
        return null;
    }

    private Fit.DoesNotFit? Back(DesignPanel panel)
    {
        var items = LabelFitter.Items(panel, design, content, barcode, extras).ToList();
        var held = design.Look is { } worn
            ? worn.Backs.GetValueOrDefault(panel.Id) ?? BackRange.Setting(panel, design, [items], rules.ClearAbove)
            : null;
        // A code that is wider than an edge has no room there with a plate or without: the words keep theirs.
        List<PanelItem> words = [.. items.Where(i => i.Block is null || !i.Element.Optional)];
        var whole = PlatePanel.Try(panel, design, items, rules.ClearAbove, held?.Step);
        var plate = whole ?? PlatePanel.Try(panel, design, words, rules.ClearAbove, held?.Step);
        foreach (var item in plate is not null && whole is null ? items.Except(words) : [])
            _assembly.LeaveOut(NoRoom(item, panel));
        if ((plate ?? BackStrip.Try(panel, design, items, rules.ClearAbove, held)) is { } filled)
        {
            foreach (var drawing in filled.Drawings)
                _assembly.Add(drawing, panel);
            _assembly.Add(panel, filled.Words);
            return null;
        }
        return Plain(panel, items, held);
    }

    private Fit.DoesNotFit? Plain(DesignPanel panel, List<PanelItem> items, BackSetting? held)
    {
        var arranger = PanelArranger.Of(panel, rules.ClearAbove);
        var least = arranger.Arrange(items, 0);
        while (!least.Fits && items.FindLastIndex(i => i.Element.Optional) is >= 0 and var at)
        {
            _assembly.LeaveOut(NoRoom(items[at], panel));
            items.RemoveAt(at);
            least = arranger.Arrange(items, 0);
        }
        if (!least.Fits)
            return Refusal(panel, least, content.Market.On(content.On));
        var set = arranger.Arrange(items, arranger.Step(items, held?.Step) ?? 0);
        if (BackStrip.Band(panel, design, set, held?.Band) is { } band)
        {
            _assembly.Add(band.Plate, panel);
            _assembly.Add(band.Ornament, panel);
        }
        _assembly.Add(panel, set);
        return null;
    }

    private bool Says(Role role) => role switch
    {
        Role.PeriodAfterOpening => !string.IsNullOrWhiteSpace(content.PeriodAfterOpening),
        Role.Barcode => barcode is not null,
        _ => ElementText.WordsOf(role, content) is not null,
    };

    private static string NoRoom(PanelItem item, DesignPanel panel) =>
        $"The {item.RoleName} has no room on the panel {panel.Id} beside what must stand there, and is left out."
            + (item.Block is { } code && code.Width.Millimetres > 2 * code.Height.Millimetres
                ? " A Data Matrix takes the least room: write \"code: usual\" in look."
                : "");

    private string PanelOf(Role? role) =>
        (design.Panels.FirstOrDefault(p => p.Elements.Any(e => e.Role == role)) ?? design.Panels[0]).Id;

    private static Fit.DoesNotFit Refusal(DesignPanel panel, Arrangement least, RulesOf law)
    {
        if (least.TooWide is { } wide)
        {
            var lacks = Points.ToLength(least.TooWideBy + 0.03);
            return new Fit.DoesNotFit(panel.Id, wide.Element.Role, lacks,
                new Problem("fit.too-wide", ("role", wide.RoleName), ("lacks", Shown(lacks)), ("panel", panel.Id),
                    ("height", Shown(wide.Text?.Floor ?? default)), ("ways", WaysOut.Of(panel, law))));
        }
        var missing = Points.ToLength(least.TooHigh + 0.03);
        var tallest = least.Items.Where(i => i.Set is not null).OrderByDescending(i => i.Height).Take(3)
            .Select(i => $"{i.Item.RoleName} {Shown(Points.ToLength(i.Height))}");
        return new Fit.DoesNotFit(panel.Id, null, missing,
            new Problem("fit.too-high", ("missing", Shown(missing)), ("panel", panel.Id), ("tallest", string.Join(", ", tallest)),
                ("ways", WaysOut.Of(panel, law))));
    }

    private static string Shown(Length length) => Invariant($"{length.Millimetres:0.0#} mm");
}
