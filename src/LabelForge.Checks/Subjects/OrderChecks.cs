using LabelForge.Checks.Reading;
using LabelForge.Ingredients;

namespace LabelForge.Checks.Subjects;

/// <summary>
/// The order of the ingredients: by what is proved of the composition where it is known, else as far as the names tell. What
/// can only be a trace does not stand first.
/// </summary>
/// <remarks>Ingredients go by descending predominance; colour additives, and what is 1 percent or
/// less, may follow in any order (21 CFR 701.3(a), (f)).</remarks>
internal static class OrderChecks
{
    private const int FewestForAlphabet = 6;

    // One may be there in traces itself; of two or more at least one is not.
    private const int EnoughBulk = 2;

    public static void Check(CheckCase label)
    {
        if (label.Product is { } product)
        {
            foreach (var pair in product.Declaration.Unsettled)
                label.Tell("ingredients.order", "ingredients", pair.First, pair.Second, pair.Ask);
            return;
        }
        var items = label.Label.Names.Where(i => !i.MayContain).ToArray();
        // A perfume is mostly scent, and a true soap needs no list (21 CFR 701.20).
        if (items.Length < 2 || label.SoldAs == SoldAs.Soap
            || (label.Kind is { } kind && ProductGroup.Covers(kind, ["perfume"]) == Applies.Yes))
            return;
        var listed = label.Dictionary.Colours;
        if ((Trace(items[0], listed, label.Kind) ?? Pigment(items[0], label.Kind)) is { } what && items.FirstOrDefault(IsBulk) is { } bulk)
            label.Tell("ingredients.order/first", "ingredients", items[0].Name, bulk.Name, what);
        else if (items.Skip(1).SkipLast(1).Select((item, at) => (item, at: at + 1))
            .FirstOrDefault(p => Trace(p.item, listed, label.Kind) is not null
                && items.Skip(p.at + 1).Count(IsBulk) >= EnoughBulk) is { item: { } early, at: var at })
            label.Tell("ingredients.order/early", "ingredients", early.Name, items.Skip(at + 1).First(IsBulk).Name,
                Trace(early, listed, label.Kind)!);
        else if (items.Length >= FewestForAlphabet
            && items.Zip(items.Skip(1)).All(p => string.Compare(p.First.Name, p.Second.Name, StringComparison.OrdinalIgnoreCase) < 0))
            label.Tell("ingredients.order/alphabet", "ingredients");
    }

    // What is there in traces: a certified dye, a preservative, an antioxidant, a chelator, a scent.
    private static string? Trace(IngredientRead item, ColourAdditives listed, ProductKind? kind)
    {
        if (ColourChecks.ColourOf(item.Name, item.Known, listed) is { Certified: true })
            return "a certified colour";
        return item.Known is not { Roles: [var main, ..] } ? null : main switch
        {
            IngredientRole.Fragrance or IngredientRole.EssentialOil => "a scent",
            IngredientRole.Preservative => "a preservative",
            // Citric acid is half of what fizzes in a bath.
            IngredientRole.Chelator when kind is null
                || ProductGroup.Covers(kind, ["bath-bomb", "bubble-bar"]) == Applies.No => "a chelator",
            IngredientRole.Antioxidant => "an antioxidant",
            _ => null,
        };
    }

    // A mineral that only colours, and does not fill as mica does: of make-up and powders it may be the most there is.
    private static string? Pigment(IngredientRead item, ProductKind? kind) =>
        item.Known is { IsColourant: true, Us: not "Mica", Roles: [IngredientRole.Colourant, ..] }
            && kind is { IsMakeup: false } && ProductGroup.Covers(kind, ["powder"]) == Applies.No ? "a colourant" : null;

    // What makes up the body of a product.
    private static bool IsBulk(IngredientRead item) => item.Known is { Roles: [var main, ..] } known
        && (known.Us == "Water" || main is IngredientRole.Base or IngredientRole.Soap or IngredientRole.Surfactant or IngredientRole.Wax
            || (main == IngredientRole.Emollient && known.Group == "oils-and-butters")
            || (main == IngredientRole.Humectant && known.Us == "Glycerin"));
}
