using LabelForge.Records.Books;
using Microsoft.EntityFrameworkCore;

namespace LabelForge.Records.Tracing;

/// <summary>Follows the way by recursive queries: corrections are walked in the database, and only what lies on the way is read.</summary>
internal sealed class TraceQuery(BookQueries books, RecordsContext context)
{
    // Names in a heading; a material may have thousands of bottles.
    private const int MostNamed = 12;

    /// <summary>Traces from what a person wrote.</summary>
    /// <exception cref="InputException">The books know nothing of that name.</exception>
    public Trace Of(string from)
    {
        var name = from.Trim();
        if (Bottles(name) is { Length: > 0 } bottles)
        {
            var named =
                $"material lot {string.Join(", ", bottles.Take(MostNamed).Select(b => $"M{b}"))}{(bottles.Length > MostNamed ? Invariant($" and {bottles.Length - MostNamed} more") : "")}";
            return Read(named, new TraceSql(TraceSql.Forward(bottles)), bottles) with { Forward = true };
        }
        // A lot code is found however it is typed, and one that was corrected by what stood on the labels first.
        var code = Lots.PieceCode.LotOf(name) is { IsValue: true } read ? read.Value.ToString() : name;
        if (context.Batches.Where(b => b.Lot == code).Select(b => b.Id).ToArray() is { Length: > 0 } lots
            && lots.Any(id => books.BatchNow(id) is not null))
        {
            var now = lots.Select(id => books.BatchNow(id)).OfType<int>().First();
            return Read($"lot {context.BatchStock.Where(s => s.BatchId == now).Select(s => s.Lot).First()}",
                new TraceSql(TraceSql.Back("SELECT \"Id\" FROM \"Batches\" WHERE \"Lot\" = @p0"), code), null);
        }
        if (books.BatchesOfPot(code).Any())
            return Read($"pot {code}", new TraceSql(TraceSql.Back("SELECT \"Id\" FROM \"Batches\" WHERE \"Pot\" = @p0"), code), null);
        var spelt = Buyer(name);
        return Read($"what went to {spelt[0].Trim()}", new TraceSql(TraceSql.Back(
            $"SELECT DISTINCT s.\"BatchId\" FROM \"Sales\" s WHERE "
                + $"s.\"To\" IN ({string.Join(", ", spelt.Select((_, i) => TraceSql.Name(i)))}) AND {TraceSql.Stands(BookLists.Sale, "s")}"), spelt), null);
    }

    // The numbers on the bottles that a name means: one bottle, or all of a supplier's lot or of a material.
    private int[] Bottles(string name)
    {
        if (name.Length > 1
            && name[0] is 'M' or 'm'
            && int.TryParse(name.AsSpan(1), System.Globalization.CultureInfo.InvariantCulture, out var number)
            && books.First(BookLists.Receipt, number) is var first && context.ReceiptStock.Any(s => s.Bottle == first))
        {
            return [first];
        }
        // A name is found however it is typed; of two suppliers' lots that differ in their accents alone, the one that was typed is meant.
        var sought = ReceiptStock.Sought(name);
        string[] materials = [.. books.KeptMaterials().Where(m => ReceiptStock.Sought(m) == sought)];
        var lots = context.ReceiptStock.Where(s => s.SupplierLot == sought && sought != null)
            .Join(context.Receipts, s => s.ReceiptId, r => r.Id, (s, r) => new { s.Bottle, r.Id, r.SupplierLot }).ToArray();
        bool Meant(string lot) => string.Equals(lot.Trim(), name, StringComparison.OrdinalIgnoreCase);
        if (lots.Where(l => Meant(l.SupplierLot!)).ToArray() is { Length: > 0 } exact)
            lots = exact;
        var of = context.ReceiptStock.Where(s => materials.Contains(s.Material)).Select(s => new { s.Bottle, s.ReceiptId }).ToArray();
        return [.. lots.Select(l => (l.Bottle, l.Id)).Union(of.Select(s => (s.Bottle, Id: s.ReceiptId)))
            .OrderBy(b => b.Id).Select(b => b.Bottle)];
    }

    // A buyer, in every way that the books spell them.
    private string[] Buyer(string name)
    {
        var buyers = context.Sales.Select(s => s.To).Distinct().ToArray();
        string[] Spelt(string one) =>
        [.. buyers.Where(b => string.Equals(b.Trim(), one.Trim(), StringComparison.OrdinalIgnoreCase)).Where(Stand)];
        if (Spelt(name) is { Length: > 0 } exact)
            return exact;
        var near = name.Length < 2
            ? []
            : buyers.Where(b => b.Contains(name, StringComparison.OrdinalIgnoreCase)).Where(Stand)
                .DistinctBy(b => b.Trim(), StringComparer.OrdinalIgnoreCase).Take(9).ToArray();
        return near.Length == 1
            ? Spelt(near[0])
            : throw (near.Length > 1
                ? new InputException("trace.unknown", ("name", name),
                    ("list", string.Join("; ", near.Take(8).Select(b => b.Trim()))))
                : new InputException("trace.unknown-near", ("name", name)));
    }

    // Whether a sale to a buyer stands: one whose sales were all struck is nobody.
    private bool Stand(string buyer) =>
        context.Sales.Any(s => s.To == buyer && !context.Corrections.Any(c => c.List == BookLists.Sale && c.EntryId == s.Id));

    private Trace Read(string from, TraceSql sql, int[]? bottles)
    {
        static string? Text(System.Data.Common.DbDataReader row, int column) => row.IsDBNull(column) ? null : row.GetString(column);
        var uses = sql.Ask(context, TraceSql.Uses,
            r => new TracedUse(r.GetInt32(0), r.GetString(3), Text(r, 4), Text(r, 5), r.GetString(2), r.GetInt64(1) / Millionths.InOne));
        var batches = sql.Ask(context, TraceSql.Lots,
            r => new TracedBatch(r.GetString(0), r.GetString(1), r.GetFieldValue<DateOnly>(2), r.GetInt32(3), r.GetInt32(4), r.GetInt32(5),
                r.GetInt32(6), r.GetInt32(7) == 0));
        var deliveries = sql.Ask(context, TraceSql.Deliveries,
            r => new TracedDelivery(r.GetString(0), r.GetFieldValue<DateOnly>(1), r.GetInt32(2), r.GetString(3), r.GetInt64(4) == 0));
        int[] told = [.. sql.Ask(context, TraceSql.Complaints, r => r.GetInt32(0))];
        var stock = sql.Ask(context, bottles is null ? TraceSql.BottlesUsed : TraceSql.BottlesNamed,
            r => new TracedBottle(r.GetInt32(0), r.GetString(1), Text(r, 2), Text(r, 3), r.GetFieldValue<DateOnly>(4),
                r.GetInt64(5) / Millionths.InOne, r.GetInt64(6) / Millionths.InOne));
        return new Trace(from, stock, uses, batches, deliveries,
            told.Length == 0 ? [] : context.Complaints.AsNoTracking().Where(c => told.Contains(c.Id)).OrderBy(c => c.Id).ToArray());
    }
}
