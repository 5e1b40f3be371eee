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
    /// <param name="content">What the label says.</param>
    /// <param name="barcode">The lot's barcode, or null for none.</param>
    /// <param name="extras">What few designs have a place for: barcodes of cartons, art; null for none.</param>
    /// <exception cref="InputException">The type has no letter for a character in the content.</exception>
    public static Fit Fit(LabelDesign design, LabelContent content, InkBlock? barcode = null, LabelExtras? extras = null)
    {
        var rules = PrintRules.For(content.Market, content.On);
        if (design.Look is not { } look)
            return Set(design);
        Fit.Fits? broken = null;
        foreach (var tried in Simpler(look))
        {
            if (Set(design with { Look = tried }) is not Fitting.Fit.Fits fits)
                continue;
            var found = tried.Frame == look.Frame && tried.Arrangement == look.Arrangement
                ? fits
                : new Fit.Fits(fits.Layout with { LeftOut = fits.Layout.LeftOut.Add(Instead(look, tried)) });
            // A business broken at a hyphen looks wrong on a front; it stays so only where it has no room anywhere else.
            if (!found.Layout.Lines.Any(l => l.Role == Role.Business && l.Text.Text.EndsWith('-')))
                return found;
            broken ??= found;
        }
        return broken ?? Set(design with { Look = null }) switch
        {
            Fitting.Fit.Fits plain =>
                new Fit.Fits(plain.Layout with
                {
                    LeftOut = plain.Layout.LeftOut
                    .Add($"No arrangement has room for these words on the design {design.Id}; they are set plainly, without ornament.")
                }),
            var refused => refused,
        };

        Fit Set(LabelDesign worn) => new PanelFitting(worn, content, barcode, extras ?? LabelExtras.None, rules).Fitted();
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
}
