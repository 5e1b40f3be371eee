using LabelForge.Measures;
using LabelForge.Records.Books;
using LabelForge.Records.Tracing;
using Trace = LabelForge.Records.Tracing.Trace;

namespace LabelForge.Records.Tests.Tracing;

/// <summary>The same way followed through all entries in memory: what the queries' answers are held against.</summary>
internal static class LedgerTrace
{
    /// <summary>Traces from a material lot (M3), a supplier's lot, a finished lot, a pot, a material's id, or a person.</summary>
    /// <remarks>From a material only its own uses are followed; from a finished lot or a person, everything that went in.</remarks>
    /// <exception cref="InputException">The books know nothing of that name.</exception>
    public static Trace Of(ReckonedBooks snapshot, string from)
    {
        var receipts = snapshot.Receipts.Where(r => Same($"M{r.Id}", from) || Same(snapshot.Bottle(r.Id), from)).ToArray();
        if (receipts.Length == 0)
        {
            var sought = ReceiptStock.Sought(from);
            var named = snapshot.Receipts.Where(r => ReceiptStock.Sought(r.SupplierLot) == sought && sought is not null).ToArray();
            named = named.Where(r => Same(r.SupplierLot, from)).ToArray() is { Length: > 0 } exact ? exact : named;
            receipts = [.. named.Union(snapshot.Receipts.Where(r => ReceiptStock.Sought(r.Material) == sought)).OrderBy(r => r.Id)];
        }
        if (receipts.Length > 0)
        {
            var ids = receipts.Select(r => snapshot.First(BookLists.Receipt, r.Id)).ToHashSet();
            var uses = AllUses(snapshot).Where(u => ids.Contains(u.Use.MaterialLot)).ToArray();
            return Of(snapshot, $"material lot {string.Join(", ", ids.Select(r => $"M{r}"))}", receipts, [.. uses.Select(u => u.Use)],
                [.. uses.Select(u => u.Batch).Distinct()]) with
            { Forward = true };
        }
        // A lot code is found however it is typed, and one that was corrected by what stood on the labels first.
        var code = Lots.LotCode.Parse(from) is { IsValue: true } read ? read.Value.ToString() : from;
        var lots = snapshot.AllBatches.Where(b => Same(b.Lot, code)).Select(b => snapshot.BatchNow(b.Id)).Distinct()
            .SelectMany(id => snapshot.Batches.Where(b => b.Id == id)).ToArray();
        if (lots.Length > 0)
            return Back(snapshot, $"lot {lots[0].Lot}", lots);
        if (snapshot.BatchesOfPot(code).ToArray() is { Length: > 0 } poured)
            return Back(snapshot, $"pot {code}", poured);
        var buyer = Buyer(snapshot, from);
        var batches = snapshot.Batches.ToDictionary(b => b.Id);
        return Back(snapshot, $"what went to {buyer}",
            [.. snapshot.Sales.Where(s => Same(s.To, buyer)).Select(s => snapshot.BatchNow(s.BatchId)).OfType<int>().Distinct()
                .Select(id => batches[id])]);
    }

    private static string Buyer(ReckonedBooks snapshot, string from)
    {
        var buyers = snapshot.Sales.Select(s => s.To.Trim()).Distinct(StringComparer.OrdinalIgnoreCase).ToArray();
        if (buyers.FirstOrDefault(b => Same(b, from)) is { } exact)
            return exact;
        var near = from.Trim().Length < 2 ? [] : buyers.Where(b => b.Contains(from.Trim(), StringComparison.OrdinalIgnoreCase)).ToArray();
        return near.Length == 1 ? near[0] : throw new InputException(null, 0, "trace.unknown", ("name", from));
    }

    private static Trace Back(ReckonedBooks snapshot, string from, Batch[] lots)
    {
        var asked = lots.ToHashSet();
        TracedUse[] uses = [.. AllUses(snapshot).Where(u => asked.Contains(u.Batch)).Select(u => u.Use)];
        var bottles = uses.Select(u => u.MaterialLot).Distinct().Select(snapshot.ReceiptOf).ToArray();
        return Of(snapshot, from, bottles, uses, lots);
    }

    private static Trace Of(ReckonedBooks snapshot, string from, IReadOnlyList<Receipt> bottles, IReadOnlyList<TracedUse> uses,
        IReadOnlyList<Batch> batches) => new(from,
        [
            .. bottles.Select(r => new TracedBottle(snapshot.First(BookLists.Receipt, r.Id), r.Material, r.Supplier, r.SupplierLot, r.On,
                r.Amount, snapshot.Left(r)))],
        uses,
        [.. batches.Select(b => Traced(snapshot, b))],
        [.. batches.SelectMany(b => snapshot.SalesOf(b).Select(s => new TracedDelivery(b.Lot, s.On, s.Pieces, s.To, s.Paid == 0)))],
        ComplaintsOf(snapshot, [.. batches.Select(b => b.Id)]));

    private static Complaint[] ComplaintsOf(ReckonedBooks snapshot, HashSet<int> batches) =>
        [.. snapshot.Complaints.Where(c => snapshot.BatchNow(c.BatchId) is { } batch && batches.Contains(batch))];

    private static TracedBatch Traced(ReckonedBooks snapshot, Batch batch)
    {
        var closing = snapshot.ClosingOf(batch);
        return new TracedBatch(batch.Lot, batch.Product, batch.On, closing?.Made ?? 0, closing?.Rejected ?? 0, snapshot.PiecesLeft(batch),
            (int)snapshot.DisposalsOf(batch).Sum(d => d.Amount), closing is null);
    }

    private static IEnumerable<(TracedUse Use, Batch Batch)> AllUses(ReckonedBooks snapshot)
    {
        var batches = snapshot.Batches.ToDictionary(b => b.Id);
        var receipts = snapshot.Receipts.ToDictionary(r => r.Id);
        foreach (var weighing in snapshot.Weighings)
        {
            if (snapshot.BatchNow(weighing.BatchId) is { } batch
                && weighing.ReceiptId is { } id
                && snapshot.Current(BookLists.Receipt, id) is { } now)
                yield return (new TracedUse(snapshot.First(BookLists.Receipt, now), receipts[now].Material, receipts[now].Supplier,
                    receipts[now].SupplierLot, batches[batch].Lot, weighing.Grams), batches[batch]);
        }
    }

    private static bool Same(string? a, string b) => string.Equals(a?.Trim(), b.Trim(), StringComparison.OrdinalIgnoreCase);
}
