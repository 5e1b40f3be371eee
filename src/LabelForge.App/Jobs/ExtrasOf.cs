using LabelForge.Lots;
using LabelForge.Print.Barcodes;
using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Fitting;

namespace LabelForge.Print.Jobs;

/// <summary>What a design wants beside the usual words: a carton's barcodes, the maker's art.</summary>
internal static class ExtrasOf
{
    public static LabelExtras Design(LabelDesign design, Workshop workshop, BatchFormula batch, LotCode? lot)
    {
        var roles = design.Panels.SelectMany(p => p.Elements).ToList();
        var symbols = ImmutableDictionary<Role, InkBlock>.Empty;
        if (lot is { } known && roles.Any(e => e.Role == Role.LotBarcode))
            symbols = symbols.Add(Role.LotBarcode, CartonSymbols.Lot(workshop, batch.Recipe, known));
        if (lot is { } made && roles.Any(e => e.Role == Role.DateBarcode))
            symbols = symbols.Add(Role.DateBarcode, CartonSymbols.Day(workshop, batch.Recipe, made));
        var wish = batch.Recipe.Look.Over(workshop.Business.Look);
        if (wish.Link is { } link)
            symbols = symbols.Add(Role.Link, Barcode.Draw(BarcodeKind.Qr, link.Text, new BarcodeOptions()).OrRefuse(link.File));
        var art = roles.Where(e => e.Role == Role.Art && e.File.Length > 0).Select(e => e.File).Distinct()
            .ToImmutableDictionary(f => f, f => ArtFile.Read(Path.Combine(workshop.Folder, "designs"), f));
        if (wish.Logo is { } logo)
            art = art.SetItem(LabelExtras.Logo, ArtFile.Read(Path.Combine(workshop.Folder, "designs"), logo.Text));
        if (wish.Picture is { } picture)
            art = art.SetItem(LabelExtras.Picture, ArtFile.Read(Path.Combine(workshop.Folder, "designs"), picture.Text));
        return new LabelExtras(symbols, art);
    }
}
