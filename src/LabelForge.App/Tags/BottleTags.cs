using LabelForge.Declarations;
using LabelForge.Files;
using LabelForge.Print;
using LabelForge.Print.Barcodes;
using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Fitting;
using LabelForge.Print.Output;
using LabelForge.Print.Sheets;
using LabelForge.Quantities;
using LabelForge.Records.Books;

namespace LabelForge.Tags;

/// <summary>A label for a bottle or a bin in the workshop.</summary>
/// <param name="Code">What its code says when it is scanned: the bottle's number, or the material's id.</param>
/// <param name="Layout">The label.</param>
public sealed record BottleTag(string Code, LabelLayout Layout);

/// <summary>Labels for bottles and bins: the number, what is in it, when it came, how long it
/// keeps, and a code to scan. What they say is common practice.</summary>
public static class BottleTags
{
    /// <summary>The sizes, the larger one first.</summary>
    public static IReadOnlyList<string> Designs => Templates.Ids("tags");

    /// <summary>Labels of bottles and bins.</summary>
    /// <param name="named">Bottles (M3) and materials, whose bins are labelled; empty for every bottle that has something left.</param>
    /// <param name="design">One of <see cref="Designs"/>.</param>
    /// <exception cref="InputException">There is no such bottle, material or size, or nothing is in the house.</exception>
    public static ImmutableArray<BottleTag> Of(Workshop workshop, IBooks books, IReadOnlyList<string> named, string design, DateOnly on)
    {
        if (!Designs.Contains(design))
            throw Templates.Unknown("label for bottles", design, Designs);
        var drawn = DesignFile.Read(Templates.Tree($"tags/{design}.yaml"), DesignLook.Of(design), null);
        var market = workshop.Market;
        BottleTag[] tags = named.Count == 0
            ? [.. books.InStock().Select(s => Bottle(workshop, books, s.Receipt, drawn, market, on))]
            : [
                .. named.Select(n => IsBottle(n, out var number)
                    ? Bottle(workshop, books, books.ReceiptOf(number), drawn, market, on)
                    : Bin(workshop, workshop.Material(n.Trim(), "the call", 0), drawn, market, on))];
        return tags.Length > 0 ? [.. tags] : throw new InputException("tags.nothing");
    }

    /// <summary>The labels on sheets, one of each.</summary>
    /// <param name="tags">The labels, at least one.</param>
    /// <param name="stock">The stock asked for; null for what is at hand, else what fits.</param>
    /// <param name="first">The first free position of a part-used sheet, from 1.</param>
    public static SheetOrder Order(Workshop workshop, ImmutableArray<BottleTag> tags, string? stock = null, int first = 1) =>
        new()
        {
            Stock = StockShelf.Of(workshop.Folder).For(tags[0].Layout.Design, workshop.Business.LabelStock, stock),
            Runs = [.. tags.Select(t => new LabelRun(t.Layout, 1))],
            First = first,
        };

    /// <summary>Writes the sheets.</summary>
    public static void WritePdf(string path, Workshop workshop, SheetOrder order, DateOnly on) =>
        SheetWriter.WritePdf(path, order,
            new DocumentInfo($"Bottles, {workshop.Business.Name}", on));

    /// <summary>The number on a bottle's label, as it is scanned or typed: 3 of M3; null where the text is none.</summary>
    public static int? NumberOf(string text) => IsBottle(text, out var number) ? number : null;

    private static bool IsBottle(string text, out int number)
    {
        number = 0;
        var trimmed = text.Trim();
        return trimmed.Length > 1
            && trimmed[0] is 'M' or 'm'
            && int.TryParse(trimmed.AsSpan(1), NumberStyles.None, CultureInfo.InvariantCulture, out number);
    }

    private static BottleTag Bottle(Workshop workshop, IBooks books, Receipt receipt, LabelDesign design, Market market, DateOnly on)
    {
        var words = new[]
        {
            Invariant($"Received {receipt.On:yyyy-MM-dd}"),
            receipt.BestBefore is { } best ? Invariant($"best before {best:yyyy-MM-dd}") : null,
            receipt.SupplierLot is { } lot ? $"lot {lot}" : null,
        };
        return Tag(books.Bottle(receipt.Id), books.Bottle(receipt.Id),
            workshop.Materials.GetValueOrDefault(receipt.Material)?.Name ?? receipt.Material, string.Join(", ", words.OfType<string>()),
            workshop, design, market, on);
    }

    private static BottleTag Bin(Workshop workshop, Material material, LabelDesign design, Market market, DateOnly on) =>
        Tag(material.Id, material.Name, material.Kind.ToString().ToLowerInvariant(),
            material.Supplier is { } supplier ? $"from {supplier}" : "", workshop, design, market, on);

    private static BottleTag Tag(string code, string name, string identity, string words, Workshop workshop, LabelDesign design,
        Market market, DateOnly on)
    {
        var content = new LabelContent
        {
            BusinessName = workshop.Business.Name,
            ProductName = name,
            Identity = identity,
            OwnWords = words.Length > 0 ? words : null,
            NetQuantity = "",
            IngredientHeading = "",
            Ingredients = [],
            Responsible = "",
            Market = market,
            On = on,
            Floors = new LetterFloors(LetterFloor.None, LetterFloor.None, LetterFloor.None, LetterFloor.None),
            Link = code,
        };
        return new BottleTag(code, LabelFitter.Fit(design, content, null, Print.Jobs.TableLink.Drawn(code)).OrRefuse());
    }
}
