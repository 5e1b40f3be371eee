using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;

namespace LabelForge.Records.Books;

/// <content>What is in the house, over all batches and bottles.</content>
internal sealed partial class BookQueries
{
    public IReadOnlyList<BookEntry> Page(string list, int? before, int most) => EntryKind.Of(list)?.Page(context, before, most) ?? [];
    public IReadOnlyList<(Receipt Receipt, decimal Left)> InStock() =>
    [
        .. Held(context.ReceiptStock)
            .OrderBy(s => s.Receipt.Material, StringComparer.Ordinal).ThenBy(s => s.Receipt.BestBefore ?? DateOnly.MaxValue)
            .ThenBy(s => s.Receipt.On).ThenBy(s => s.Receipt.Id),
    ];
    // Bottles that are not empty.
    private IEnumerable<(Receipt Receipt, decimal Left)> Held(IQueryable<ReceiptStock> of) => of.Where(s => s.Left >= Millionths.Rest)
        .Join(context.Receipts, s => s.ReceiptId, r => r.Id, (s, r) => new { Receipt = r, s.Left })
        .AsNoTracking().AsEnumerable().Select(s => (s.Receipt, s.Left));
    public DateOnly? OpenedOn(Receipt receipt)
    {
        // A weighing names the bottle as the books stood then.
        var ids = new List<int> { First(BookLists.Receipt, receipt.Id) };
        while (StruckBy(BookLists.Receipt, ids[^1])?.InsteadId is { } next)
            ids.Add(next);
        return Standing(context.Weighings, BookLists.Weighing).Where(w => w.ReceiptId != null && ids.Contains(w.ReceiptId.Value))
            .Min(w => (DateOnly?)w.On);
    }
    public IReadOnlyList<string> KeptMaterials() =>
        [.. context.ReceiptStock.Select(s => s.Material).Distinct().AsEnumerable().Order(StringComparer.Ordinal)];
    public IReadOnlyList<(Batch Batch, int Left)> LotsInStock() =>
    [
        .. context.BatchStock.Where(s => s.Left > 0).Join(context.Batches, s => s.BatchId, b => b.Id, (s, b) => new { Batch = b, s.Left })
            .OrderBy(s => s.Batch.Id).AsNoTracking().AsEnumerable().Select(s => (s.Batch, s.Left)),
    ];
    public IReadOnlyList<LotInHand> LotsInHand(DateOnly from) =>
        InHand(context.BatchStock.Where(s => s.Closings == 0 || s.Left > 0), context.Batches.Where(b => b.On >= from),
            lots => lots.OrderBy(s => s.Batch.Id));

    private IReadOnlyList<LotInHand> InHand(IQueryable<BatchStock> stock, IQueryable<Batch> batches,
        Func<IQueryable<LotAndStock>, IQueryable<LotAndStock>> inOrder)
    {
        var lots = inOrder(stock.Join(batches, s => s.BatchId, b => b.Id, (s, b) => new LotAndStock { Batch = b, Stock = s }))
            .AsNoTracking().ToArray();
        string[] codes = [.. lots.Select(l => l.Batch.Lot)];
        var printed = Standing(context.Printings, BookLists.Printing).Where(p => codes.Contains(p.Lot))
            .GroupBy(p => p.Lot).Select(g => new { Lot = g.Key, Labels = g.Sum(p => p.Labels - p.Spoiled) })
            .ToDictionary(g => g.Lot, g => g.Labels);
        return [
            .. lots.Select(l => new LotInHand(l.Batch, l.Stock.Closings == 0, l.Stock.Made - l.Stock.Rejected, l.Stock.Left,
                printed.GetValueOrDefault(l.Batch.Lot)))];
    }

    private sealed class LotAndStock
    {
        public required Batch Batch { get; init; }

        public required BatchStock Stock { get; init; }
    }
    public IReadOnlyList<ProductMade> ProductsMade()
    {
        var made = LastOfEach();
        var left = context.BatchStock.Where(s => s.Left > 0)
            .Join(context.Batches, s => s.BatchId, b => b.Id, (s, b) => new { b.Recipe, b.Variant, s.Left })
            .GroupBy(b => new { b.Recipe, b.Variant }).Select(g => new { g.Key.Recipe, g.Key.Variant, Left = g.Sum(b => b.Left) })
            .ToDictionary(g => (g.Recipe, g.Variant), g => g.Left);
        return [.. context.Batches.Where(b => made.Contains(b.Id)).OrderBy(b => b.Id)
            .Select(b => new { b.Recipe, b.Variant, b.Product }).AsEnumerable()
            .Select(b => new ProductMade(b.Recipe, b.Variant, b.Product, left.GetValueOrDefault((b.Recipe, b.Variant))))];
    }

    // The numbers of the last batch that stands of each product. From name to name in the index of recipes and variants, not through
    // as many rows as there are batches. The last variant of a recipe is followed by none, so that each recipe's own batches, of no
    // variant, end its row. Ordered as the index is, that both stores read it from its end.
    private int[] LastOfEach()
    {
        const string last = """
            FROM "Batches" b WHERE b."Recipe" = p."Recipe" AND b."Variant" {0} AND EXISTS (SELECT 1 FROM "BatchStock" s WHERE s."BatchId" = b."Id")
            ORDER BY b."Recipe" DESC, b."Variant" DESC, b."Id" DESC LIMIT 1
            """;
        var statement = $"""
            WITH RECURSIVE recipe("Recipe") AS (
              SELECT MIN("Recipe") FROM "Batches"
              UNION ALL SELECT (SELECT MIN(b."Recipe") FROM "Batches" b WHERE b."Recipe" > r."Recipe") FROM recipe r WHERE r."Recipe" IS NOT NULL),
            product("Recipe", "Variant") AS (
              SELECT r."Recipe", (SELECT MIN(b."Variant") FROM "Batches" b WHERE b."Recipe" = r."Recipe" AND b."Variant" >= '') FROM recipe r
              WHERE r."Recipe" IS NOT NULL
              UNION ALL SELECT p."Recipe", (SELECT MIN(b."Variant") FROM "Batches" b WHERE b."Recipe" = p."Recipe" AND b."Variant" > p."Variant")
              FROM product p WHERE p."Variant" IS NOT NULL)
            SELECT CASE WHEN p."Variant" IS NULL THEN (SELECT b."Id" {string.Format(CultureInfo.InvariantCulture, last, "IS NULL")})
              ELSE (SELECT b."Id" {string.Format(CultureInfo.InvariantCulture, last, "= p.\"Variant\"")}) END FROM product p
            """;
        using var command = context.Database.GetDbConnection().CreateCommand();
        command.Transaction = context.Database.CurrentTransaction?.GetDbTransaction();
        command.CommandText = statement;
        using var reader = command.ExecuteReader();
        var numbers = new List<int>();
        while (reader.Read())
        {
            if (!reader.IsDBNull(0))
                numbers.Add(reader.GetInt32(0));
        }
        return [.. numbers];
    }
    public DateOnly? FirstPrinting() => context.Printings.Min(p => (DateOnly?)p.On);
    public IReadOnlyList<Complaint> ComplaintsSince(DateOnly day) =>
        [.. Standing(context.Complaints, BookLists.Complaint).Where(c => c.On >= day || c.ReportBy >= day).OrderBy(c => c.Id)];
}
