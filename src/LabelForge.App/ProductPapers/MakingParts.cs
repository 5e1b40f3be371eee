using LabelForge.Print.Documents;
using LabelForge.Records.Books;

namespace LabelForge.ProductPapers;

/// <summary>What a paper says of how a product is made: the maker's steps, and the record of its last batch.</summary>
internal static class MakingParts
{
    /// <summary>The steps, and the last batch as it was weighed.</summary>
    public static PaperSection Manufacture(PaperItem item, PaperCase of)
    {
        var steps = of.Product.Recipe.Steps;
        return new(item.Id, item.What, item.At)
        {
            Facts =
            [
                .. steps.IsEmpty
                    ? [PaperFact.Lacking("steps", "Steps",
                        $"{of.Product.Recipe.File}: steps: [ \"Melt at 70 °C\", {{ add: fragrance, note: below 60 °C }} ]")]
                    : steps.Select((s,
                        i) => PaperFact.Of(Invariant($"step-{i + 1}"),
                            Invariant($"Step {i + 1}"), Words(s), of.Product.Recipe.File)),
                of.LastBatch is { } last ? Made(last) : PaperFact.Lacking("last-batch", "Record of a batch", "None is in the books."),
            ],
            Table = of.LastBatch is { } batch ? Weighed(batch) : null,
        };
    }

    /// <summary>What went into a batch: planned, weighed, and out of which bottles.</summary>
    internal static PaperTable Weighed(BatchRecord batch) => new(
        [new("material", "Material", 3), new("planned", "planned, g", 1.3, true), new("weighed", "weighed, g", 1.3, true),
            new("off", "", 0.8), new("from", "from", 3)],
        [.. batch.Lines
            .Select(l => (ImmutableArray<PaperValue>)[new(l.Name), CompositionParts.Figure(l.Planned, 2),
                CompositionParts.Figure(l.Weighed, 2), new(l.IsOff ? "OFF" : "", l.IsOff),
                new(string.Join("; ", l.From.Select(f => f.Shown)), l.From.Select(f => f.Bottle))])]);

    private static PaperFact Made(BatchRecord batch) =>
        PaperFact.Of("last-batch", "The last batch",
            $"lot {batch.Lot}, begun {batch.On.ToIso()} by {batch.By}{(batch.Closing is { } c ? Invariant($", {c.Made} pieces made, {c.Rejected} rejected") : ", not finished")}{(batch.Deviations.Count > 0 ? $"; deviations: {string.Join("; ", batch.Deviations.Select(d => d.What))}" : "; no deviation is written")}", "the books", batch.Lot);

    private static string Words(Recipes.RecipeStep step) =>
        step.Adds is { } adds ? $"Add {adds}{(step.Text.Length > 0 ? $": {step.Text}" : "")}" : step.Text;
}

/// <summary>A bottle that something was weighed out of.</summary>
/// <param name="Bottle">Its number, as M3.</param>
/// <param name="Supplier">Who sold it; null where it is not written.</param>
/// <param name="SupplierLot">The supplier's lot; null where it is not written.</param>
/// <param name="Grams">How much was taken.</param>
public sealed record WeighedFrom(string Bottle, string? Supplier, string? SupplierLot, decimal Grams)
{
    /// <summary>In words.</summary>
    public string Shown =>
        string.Join(" ", new[] { Bottle, Supplier, SupplierLot is { } lot ? $"lot {lot}" : null }.Where(t => !string.IsNullOrEmpty(t)));
}

/// <summary>A material of a batch, as planned and as weighed.</summary>
public sealed record BatchRecordLine(string Name, decimal Planned, decimal Weighed, bool IsOff, ImmutableArray<WeighedFrom> From);

/// <summary>The record of a batch out of the books, read in one transaction.</summary>
public sealed record BatchRecord(string Lot, string Product, DateOnly On, string By, int Planned, string? Statement,
    ImmutableArray<BatchRecordLine> Lines, IReadOnlyList<Deviation> Deviations, Closing? Closing, int Left)
{
    /// <summary>Reads it.</summary>
    public static BatchRecord Of(IBooks books, Batch batch) => new(
        batch.Lot, batch.Product, batch.On, batch.By, batch.PiecesPlanned, FrozenRecipe.FromJson(batch.Frozen).Statement,
        [.. Production.Compare(books, batch)
            .Select(l => new BatchRecordLine(l.Line.Name, l.Line.Grams, l.Weighed, l.Off,
                [.. books.WeighedInto(batch).Where(w => w.Material == l.Line.Material).Select(w => From(books, w))]))],
        [.. books.DeviationsOf(batch)], books.ClosingOf(batch), books.PiecesLeft(batch));

    private static WeighedFrom From(IBooks books, Weighing weighing) =>
        weighing.ReceiptId is { } id
            && books.Current(BookLists.Receipt, id) is { } now
            && books.Find(BookLists.Receipt, now) is Receipt receipt
            ? new(books.Bottle(id), receipt.Supplier, receipt.SupplierLot, weighing.Grams)
            : new("no bottle", null, null, weighing.Grams);
}
