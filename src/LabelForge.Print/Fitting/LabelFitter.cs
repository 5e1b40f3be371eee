using LabelForge.Declarations;
using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Lettering;
using LabelForge.Print.Looks;

namespace LabelForge.Print.Fitting;

/// <summary>
/// Fits content into a design: type as large as the room and the design allow, never below a floor; where that cannot
/// be, the answer says so, by how much, and what to do. Nothing is ever cut off.
/// </summary>
public static class LabelFitter
{
    /// <summary>Fits content into a design.</summary>
    /// <param name="design">The design.</param>
    /// <param name="content">What the label says.</param>
    /// <param name="barcode">The lot's barcode, or null for none.</param>
    /// <param name="extras">What few designs have a place for: barcodes of cartons, art; null for none.</param>
    /// <exception cref="InputException">The type has no letter for a character in the content.</exception>
    public static Fit Fit(LabelDesign design, LabelContent content, InkBlock? barcode = null, LabelExtras? extras = null)
    {
        var rules = PrintRules.For(content.Market, content.On);
        if (design.Look is not { } look)
            return FitPanels(design, content, barcode, extras ?? LabelExtras.None, rules);
        Fit.Fits? broken = null;
        foreach (var tried in Simpler(look))
        {
            if (FitPanels(design with { Look = tried }, content, barcode, extras ?? LabelExtras.None, rules) is not Fitting.Fit.Fits fits)
                continue;
            var found = tried.Frame == look.Frame && tried.Arrangement == look.Arrangement
                ? fits
                : new Fit.Fits(fits.Layout with { LeftOut = fits.Layout.LeftOut.Add(Instead(look, tried)) });
            // A business broken at a hyphen looks wrong on a front; it stays so only where it has no room anywhere else.
            if (!found.Layout.Lines.Any(l => l.Role == Role.Business && l.Text.Text.EndsWith('-')))
                return found;
            broken ??= found;
        }
        return broken ?? FitPanels(design with { Look = null }, content, barcode, extras ?? LabelExtras.None, rules) switch
        {
            Fitting.Fit.Fits plain =>
                new Fit.Fits(plain.Layout with
                {
                    LeftOut = plain.Layout.LeftOut
                    .Add($"No arrangement has room for these words on the design {design.Id}; they are set plainly, without ornament.")
                }),
            var refused => refused,
        };
    }

    /// <summary>A look, and after it what takes less room, in turn; the words come before the looks.</summary>
    internal static IEnumerable<Look> Simpler(Look look)
    {
        yield return look;
        yield return look with { LongName = true };
        if (look.Frame is not null)
            yield return look with { Frame = null, LongName = true };
        foreach (var arrangement in new[] { "stack", "ranged-left" }.Where(a => a != look.Arrangement))
            yield return look with { Frame = null, Arrangement = arrangement, LongName = true };
    }

    private static string Instead(Look asked, Look used) => used.Arrangement == asked.Arrangement
        ? $"The frame {asked.Frame!.Id} leaves no room for these words, and is left out."
        : $"The arrangement {asked.Arrangement} has no room for these words here; {used.Arrangement} is used.";

    // What a maker adds to a front, which not every arrangement has a place for.
    private static readonly Role[] MakersOwn = [Role.Words, Role.Claim, Role.Price];

    private static string NoRoom(PanelItem item, DesignPanel panel) =>
        $"The {item.RoleName} has no room on the panel {panel.Id} beside what must stand there, and is left out."
            + (item.Block is { } code && code.Width.Millimetres > 2 * code.Height.Millimetres
                ? " A Data Matrix takes the least room: write \"code: usual\" in look."
                : "");

    private static Fit FitPanels(LabelDesign design, LabelContent content, InkBlock? barcode, LabelExtras extras, PrintRules rules)
    {
        var assembly = new LayoutAssembly(design);
        var has = design.Panels.SelectMany(p => p.Elements).Select(e => e.Role).ToHashSet();
        foreach (var role in Expected.Where(r => Says(content, r, barcode) && !has.Contains(r) && !design.SaidElsewhere.Contains(r)))
            assembly.LeaveOut($"The design {design.Id} has no place for the {Roles.NameOf(role)}.");
        foreach (var panel in design.Panels)
        {
            if (design.Look is { } look && FrontPanels.IsFront(panel))
            {
                var logo = extras.Art.GetValueOrDefault(LabelExtras.Logo);
                var photo = extras.Art.GetValueOrDefault(LabelExtras.Picture);
                if ((FrontPanels.Arrange(design, panel, look, content, rules, logo, photo)
                    ?? FrontPanels.Arrange(design, panel, look, content, rules, null, photo)) is not { } front)
                    return new Fit.DoesNotFit(panel.Id, null, default,
                        new Problem("fit.no-room", ("arrangement", look.Arrangement)));
                assembly.Add(front);
                if (logo is not null && front.Pictures.All(p => p.InWindow))
                    assembly.LeaveOut(
                        $"The logo has no room on the panel {panel.Id} in the arrangement {look.Arrangement}, and is left out.");
                if (photo is not null && !front.Pictures.Any(p => p.InWindow))
                    assembly.LeaveOut(
                        $"The picture has no window on the panel {panel.Id} in the arrangement {look.Arrangement}, and is left out.");
                foreach (var role in MakersOwn.Where(r => ElementText.WordsOf(r, content) is not null
                    && front.Texts.All(t => t.Report.Role != r)))
                    assembly.LeaveOut(
                        $"The {Roles.NameOf(role)} has no place "
                            + $"on the panel {panel.Id} in the arrangement {look.Arrangement}, and is left out.");
                continue;
            }
            var items = Items(panel, design, content, barcode, extras).ToList();
            var held = design.Look is { } worn
                ? worn.Backs.GetValueOrDefault(panel.Id) ?? BackRange.Setting(panel, design, [items], rules.ClearAbove)
                : null;
            // A code that is wider than an edge has no room there with a plate or without: the words keep theirs.
            List<PanelItem> words = [.. items.Where(i => i.Block is null || !i.Element.Optional)];
            var whole = PlatePanel.Try(panel, design, items, rules.ClearAbove, held?.Step);
            if ((whole ?? PlatePanel.Try(panel, design, words, rules.ClearAbove, held?.Step)) is { } filled)
            {
                foreach (var item in whole is null ? items.Except(words) : [])
                    assembly.LeaveOut(NoRoom(item, panel));
                foreach (var drawing in filled.Drawings)
                    assembly.Add(drawing, panel);
                assembly.Add(panel, filled.Words);
                continue;
            }
            if (BackStrip.Try(panel, design, items, rules.ClearAbove, held) is { } strip)
            {
                foreach (var drawing in strip.Drawings)
                    assembly.Add(drawing, panel);
                assembly.Add(panel, strip.Words);
                continue;
            }
            var arranger = PanelArranger.Of(panel, rules.ClearAbove);
            var least = arranger.Arrange(items, 0);
            while (!least.Fits && items.FindLastIndex(i => i.Element.Optional) is >= 0 and var at)
            {
                assembly.LeaveOut(NoRoom(items[at], panel));
                items.RemoveAt(at);
                least = arranger.Arrange(items, 0);
            }
            if (!least.Fits)
                return Refusal(panel, least, content.Market.On(content.On));
            var set = arranger.Arrange(items, arranger.Step(items, held?.Step) ?? 0);
            if (BackStrip.Band(panel, design, set, held?.Band) is { } band)
            {
                assembly.Add(band.Plate, panel);
                assembly.Add(band.Ornament, panel);
            }
            assembly.Add(panel, set);
        }
        if (design.Look is not null && content.ScentLine is not null && design.Panels.Any(FrontPanels.IsFront)
            && !assembly.Has(Role.ScentLine))
            assembly.LeaveOut("The line of scent has no room on the front here, and is left out.");
        if (design.Look is { WhiteInk: false, Palette: { Covers: true, Stock: var stock } } && stock != Colour.White)
            assembly.LeaveOut(
                $"On stock as dark as {stock} nothing is read without white ink under it. Write \"white ink: true\" in look where your "
                    + $"printer has it; else take lighter stock.");
        var layout = assembly.Finish();
        layout = layout with { Constraints = [.. ConstraintMeasure.Of(layout, rules, content.PrincipalPanel?.Area)] };
        return layout.Constraints.FirstOrDefault(c => c.Required && !c.Kept) is { } broken
            ? new Fit.DoesNotFit(PanelOf(design, broken.Role), broken.Role, broken.Shortfall, broken.Broken)
            : new Fit.Fits(layout);
    }

    // What a design must have a place for where the label says it; the rest is the design's own choice.
    private static readonly Role[] Expected =
    [
        Role.Business, Role.Name, Role.Identity, Role.NetQuantity, Role.Ingredients, Role.Directions, Role.Warnings, Role.Responsible,
        Role.Contact, Role.Lot, Role.BestBefore, Role.Origin, Role.PeriodAfterOpening, Role.Barcode,
    ];

    private static bool Says(LabelContent content, Role role, InkBlock? barcode) => role switch
    {
        Role.PeriodAfterOpening => !string.IsNullOrWhiteSpace(content.PeriodAfterOpening),
        Role.Barcode => barcode is not null,
        _ => ElementText.WordsOf(role, content) is not null,
    };

    internal static IEnumerable<PanelItem> Items(DesignPanel panel, LabelDesign design, LabelContent content, InkBlock? barcode,
        LabelExtras extras)
    {
        foreach (var element in panel.Elements)
        {
            // The maker's page goes where the lot's barcode goes.
            if (element.Role == Role.Barcode && extras.Symbols.TryGetValue(Role.Link, out var link))
                yield return new PanelItem(element with { Role = Role.Link, Caption = false, Optional = true }, null, link);
            if (element.Role == Role.Rule)
                yield return new PanelItem(element, null, null);
            else if (element.Role == Role.PeriodAfterOpening)
            {
                if (content.PeriodAfterOpening is { } period)
                    yield return new PanelItem(element, null, null, Symbols.OpenJar(period));
            }
            else if (element.Role == Role.Art)
            {
                if (extras.Art.TryGetValue(element.File, out var art))
                    yield return new PanelItem(element, null, null, art);
            }
            else if (extras.Symbols.TryGetValue(element.Role, out var symbol))
                yield return new PanelItem(element, null, symbol);
            else if (element.Role == Role.Barcode && barcode is not null)
                yield return new PanelItem(element, null, barcode);
            else if (ElementText.From(element, content, design.Id) is { } text)
                yield return new PanelItem(element, text, null);
        }
    }

    private static string PanelOf(LabelDesign design, Role? role) =>
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

    private static string Shown(Length length) => FormattableString.Invariant($"{length.Millimetres:0.0#} mm");
}
