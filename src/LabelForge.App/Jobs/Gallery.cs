using LabelForge.Lots;
using LabelForge.Print.Arrangements;
using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Fitting;
using LabelForge.Print.Looks;

namespace LabelForge.Print.Jobs;

/// <summary>A product in one arrangement.</summary>
/// <param name="Design">The design with its look, as it may be asked for: <c>bar-2x4+medallion</c>.</param>
/// <param name="Arrangement">What the arrangement is called.</param>
/// <param name="For">What it is good for.</param>
/// <param name="Layout">The label.</param>
public sealed record GalleryLabel(string Design, string Arrangement, string For, LabelLayout Layout);

/// <summary>A product's own words in every arrangement, each in a pair of types of its own, for a maker to choose from.</summary>
public static class Gallery
{
    /// <summary>The labels; arrangements that have no room for these words, or none for a label of this shape, are left out.</summary>
    /// <param name="design">The design's id; null for the usual one.</param>
    /// <param name="lot">The lot to show; null for none.</param>
    /// <param name="on">The day to judge by.</param>
    /// <exception cref="InputException">Something in the workshop, or the design's id, is wrong, or the design takes no look.</exception>
    public static ImmutableArray<GalleryLabel> Of(Product product, Market market, string? design, LotCode? lot, DateOnly on)
    {
        var (workshop, recipe) = (product.Workshop, product.Recipe);
        var id = (design ?? UsualDesign.For(ProductKindOf.Recipe(recipe).Id, workshop.Business.LabelStock, recipe.Package).Design)
            .Split('+')[0];
        if (!new DesignShelf(workshop.Folder).Load(id, recipe.Package).TakesLook)
            throw new InputException("design.takes-no-look", ("id", id));
        return [.. ArrangementFile.Known.Zip(Pairs).Select(p => One(p.First, $"{id}+{p.First}+{p.Second}")).OfType<GalleryLabel>()];

        // What fell back to another arrangement is shown under that one alone.
        GalleryLabel? One(string arrangement, string named)
        {
            if (LabelJob.Prepare(product, market, named, lot, on).Fit is not Fit.Fits { Layout: var layout }
                || layout.Design.Look?.Arrangement != arrangement)
                return null;
            var about = ArrangementFile.File(arrangement);
            return new GalleryLabel(named, about.Required("name", "Stack").Text, about.OptionalText("for")?.Text ?? "", layout);
        }
    }

    // One for each arrangement, so that a gallery shows what pairs there are too.
    private static readonly string[] Pairs = ["stylish", "bookish", "capitals", "soft", "round", "deco", "brush", "bookish"];
}
