using LabelForge.Declarations;
using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Fitting;
using LabelForge.Print.Sheets;

namespace LabelForge.Print.Jobs;

/// <summary>Where a label does not fit, names the known designs that would hold it, and stock for them.</summary>
internal static class Alternatives
{
    private const int MostNamed = 4;

    public static Fit Name(Fit fit, LabelDesign design, Recipe recipe, LabelContent content, InkBlock? symbol)
    {
        if (fit is not Fit.DoesNotFit not)
            return fit;
        var found = LabelDesign.Known.Where(id => id != design.Id).Select(id => Holds(id, recipe, content, symbol)).OfType<LabelDesign>()
            .OrderBy(d => d.Width.Millimetres * d.Height.Millimetres).Take(MostNamed)
            .Select(d => StockFor(d) is { } stock ? $"{d.Id} (on {stock})" : d.Id).ToList();
        return found.Count == 0
            ? fit
            : not with { Problem = new(null, 0, "fit.would-fit", ("inner", not.Problem), ("designs", string.Join(", ", found))) };
    }

    // A design counts where it says all that this one was to say, alone. The barcode is optional: the lot stands in letters.
    private static LabelDesign? Holds(string id, Recipe recipe, LabelContent content, InkBlock? symbol)
    {
        var design = LabelDesign.Load(id);
        if (design.Package is { } own && recipe.Package is { } package)
        {
            if (own.Shape != package.Shape)
                return null;
            design = LabelDesign.Load(id, package);
        }
        return design.With.IsEmpty && (LabelFitter.Fit(design, content, symbol) is Fit.Fits { Layout.LeftOut.IsEmpty: true }
            || LabelFitter.Fit(design, content) is Fit.Fits { Layout.LeftOut.IsEmpty: true }) ? design : null;
    }

    private static string? StockFor(LabelDesign design) => LabelStock.All
        .Where(s => (s.Shape == StockShape.Round) == design.Round
            && s.LabelWidth.CompareTo(design.Width) >= 0
            && s.LabelHeight.CompareTo(design.Height) >= 0)
        .OrderBy(s => s.LabelWidth.Millimetres * s.LabelHeight.Millimetres).FirstOrDefault()?.Id;
}
