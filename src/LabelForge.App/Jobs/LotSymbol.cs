using LabelForge.Lots;
using LabelForge.Print.Barcodes;
using LabelForge.Print.Drawing;

namespace LabelForge.Print.Jobs;

/// <summary>The barcode that carries a lot: with the item's GTIN where the maker has one, else the lot alone.</summary>
public static class LotSymbol
{
    /// <summary>A GS1 DataMatrix with (01) and (10) where the recipe has an item number under the
    /// business's prefix, else Code 128 of the lot.</summary>
    /// <exception cref="InputException">The item number cannot stand under the prefix.</exception>
    /// <param name="options">Size and printer.</param>
    /// <param name="serial">The piece's own number: (21) in a GS1 DataMatrix, after a solidus in Code 128; null for none.</param>
    public static InkBlock For(Workshop workshop, Recipe recipe, LotCode lot, BarcodeOptions options, string? serial = null)
    {
        var drawn = ItemNumber(workshop, recipe) is { } gtin
            ? Barcode.Draw(BarcodeKind.Gs1DataMatrix, Gs1ElementString.ForItem(gtin, lot.ToString(), serial: serial).OrRefuse(recipe.File),
                options)
            : Barcode.Draw(BarcodeKind.Code128, serial is null ? lot.ToString() : $"{lot}/{serial}", options);
        return drawn.OrRefuse(recipe.File);
    }

    /// <summary>A series of symbols, one to each piece's own number, of the kind that the look wants; null for none.</summary>
    /// <param name="sample">A number as long as any of the series.</param>
    /// <returns>The symbol of the sample, drawn, and what makes the picture of each number's.</returns>
    /// <exception cref="InputException">The look names a kind that is not known, or the item
    /// number cannot stand under the prefix.</exception>
    internal static (InkBlock Drawn, Func<string, SymbolPicture> Of)? Series(Workshop workshop, Recipe recipe, LotCode lot, string sample)
    {
        string Text(string serial) => $"{lot}/{serial}";
        var kind = KindOf(workshop, recipe);
        if (kind is null)
            return null;
        if (kind == BarcodeKind.Gs1DataMatrix)
        {
            var gtin = ItemNumber(workshop, recipe)!;
            Gs1ElementString Item(string serial) => Gs1ElementString.ForItem(gtin, lot.ToString(), serial: serial).OrRefuse(recipe.File);
            var matrices = SymbolSeries.OfMatrix(Item(sample));
            return (For(workshop, recipe, lot, new BarcodeOptions(), sample), serial => matrices.Of(Item(serial)));
        }
        var texts = SymbolSeries.OfText(kind.Value, Text(sample));
        return (Barcode.Draw(kind.Value, Text(sample), new BarcodeOptions()).OrRefuse(recipe.File), serial => texts.Of(Text(serial)));
    }

    private static BarcodeKind? KindOf(Workshop workshop, Recipe recipe)
    {
        var code = recipe.Look.Over(workshop.Business.Look).Code;
        return code?.Text switch
        {
            null or "usual" => ItemNumber(workshop, recipe) is null ? BarcodeKind.Code128 : BarcodeKind.Gs1DataMatrix,
            "none" => null,
            "code128" => BarcodeKind.Code128,
            "qr" => BarcodeKind.Qr,
            var other => throw code.Refuse("label.code-kind", ("other", other)),
        };
    }

    /// <summary>The barcode as the look wants it: none, of another kind, or the usual one; null for none.</summary>
    /// <exception cref="InputException">The look names a kind that is not known, or the item
    /// number cannot stand under the prefix.</exception>
    public static InkBlock? Wished(Workshop workshop, Recipe recipe, LotCode lot) =>
        KindOf(workshop, recipe) switch
        {
            null => null,
            BarcodeKind.Gs1DataMatrix => For(workshop, recipe, lot, new BarcodeOptions()),
            var kind => Barcode.Draw(kind.Value, lot.ToString(), new BarcodeOptions()).OrRefuse(recipe.File),
        };

    /// <summary>The recipe's item number under the business's prefix; null where either is not given.</summary>
    /// <exception cref="InputException">The item number is none, or cannot stand under the prefix.</exception>
    internal static Gtin? ItemNumber(Workshop workshop, Recipe recipe)
    {
        if (workshop.Business.GtinPrefix is not { } prefix || recipe.Item is not { } item)
            return null;
        return int.TryParse(item, out var number) && number >= 0
            ? Gtin.FromPrefix(prefix, number).OrRefuse(recipe.File)
            : throw new InputException(recipe.File, 0, "label.item-number", ("item", item));
    }
}
