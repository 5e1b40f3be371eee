using LabelForge.Lots;
using LabelForge.Print.Barcodes;
using LabelForge.Print.Drawing;

namespace LabelForge.Print.Jobs;

/// <summary>The wide barcodes of a carton: GS1-128 where the product has an item number under the
/// business's prefix, else Code 128.</summary>
internal static class CartonSymbols
{
    /// <summary>The item and the lot: (01) and (10).</summary>
    public static InkBlock Lot(Workshop workshop, Recipe recipe, LotCode lot) =>
        Draw(workshop, recipe, gtin => $"(01){gtin.Fourteen}(10){lot}", lot.ToString());

    /// <summary>The item and the day of making: (01) and (11), year, month and day.</summary>
    public static InkBlock Day(Workshop workshop, Recipe recipe, LotCode lot) =>
        Draw(workshop, recipe, gtin => $"(01){gtin.Fourteen}(11){lot.Made:yyMMdd}",
            lot.Made.ToIso());

    private static InkBlock Draw(Workshop workshop, Recipe recipe, Func<Gtin, string> elements, string plain)
    {
        var drawn = LotSymbol.ItemNumber(workshop, recipe) is { } gtin
            ? Barcode.Draw(BarcodeKind.Gs1Code128, elements(gtin))
            : Barcode.Draw(BarcodeKind.Code128, plain);
        return drawn.OrRefuse(recipe.File);
    }
}
