using LabelForge.Measures;
using LabelForge.Records.Books;

namespace LabelForge.Records.Tracing;

/// <summary>Pieces that left, and to whom.</summary>
public sealed record TracedDelivery(string Lot, DateOnly On, int Pieces, string To, bool Gift);

/// <summary>A material lot's way into a batch.</summary>
public sealed record TracedUse(int MaterialLot, string Material, string? Supplier, string? SupplierLot, string Lot, decimal Grams);

/// <summary>A batch on the way.</summary>
public sealed record TracedBatch(string Lot, string Product, DateOnly On, int Made, int Rejected, int Left, int Disposed);

/// <summary>The way from material lots through batches to people, or back.</summary>
/// <param name="From">What was asked for, as understood.</param>
/// <param name="Uses">Which material lots went into which batches.</param>
/// <param name="Batches">The batches.</param>
/// <param name="Deliveries">The pieces that left.</param>
/// <param name="Complaints">What was told of these lots.</param>
public sealed record Trace(string From, IReadOnlyList<TracedUse> Uses, IReadOnlyList<TracedBatch> Batches, IReadOnlyList<TracedDelivery> Deliveries, IReadOnlyList<Complaint> Complaints)
{
    /// <summary>Traces from a material lot (M3), a supplier's lot, a finished lot, a material's id, or a person.</summary>
    /// <remarks>From a material only its own uses are followed; from a finished lot or a person, everything that went in.</remarks>
    /// <exception cref="InputException">The books know nothing of that name.</exception>
    public static Trace Of(Ledger ledger, string from)
    {
        var receipts = ledger.Receipts.Where(r => Same($"M{r.Id}", from) || Same(r.SupplierLot, from) || Same(r.Material, from)).Select(r => r.Id).ToHashSet();
        if (receipts.Count > 0)
        {
            var uses = AllUses(ledger).Where(u => receipts.Contains(u.Use.MaterialLot)).ToArray();
            return Of(ledger, $"material lot {string.Join(", ", receipts.Select(r => $"M{r}"))}", [.. uses.Select(u => u.Use)], [.. uses.Select(u => u.Batch).Distinct()]);
        }
        // A lot code is found however it is typed.
        var code = Lots.LotCode.Parse(from);
        var lots = ledger.Batches.Where(b => Same(b.Lot, from) || (code.IsValue && b.Lot == code.Value.ToString())).ToArray();
        if (lots.Length == 0)
            lots = [.. ledger.Sales.Where(s => Same(s.To, from)).Select(s => ledger.BatchNow(s.BatchId)).Distinct().Select(id => ledger.Batches.First(b => b.Id == id))];
        return lots.Length > 0
            ? Of(ledger, Same(lots[0].Lot, from) || code.IsValue ? $"lot {lots[0].Lot}" : $"what went to {from}", [.. AllUses(ledger).Where(u => lots.Contains(u.Batch)).Select(u => u.Use)], lots)
            : throw new InputException(new Problem(null, 0, $"The books know nothing of \"{from}\".", "Write a material lot (M3), the supplier's lot, a lot code, a material's id, or a buyer as written in the books."));
    }

    private static Trace Of(Ledger ledger, string from, IReadOnlyList<TracedUse> uses, IReadOnlyList<Batch> batches) => new(from, uses,
        [.. batches.Select(b => new TracedBatch(b.Lot, b.Product, b.On, ledger.ClosingOf(b)?.Made ?? 0, ledger.ClosingOf(b)?.Rejected ?? 0, ledger.PiecesLeft(b), (int)ledger.Disposals.Where(d => ledger.BatchNow(d.BatchId) == b.Id).Sum(d => d.Amount)))],
        [.. batches.SelectMany(b => ledger.Sales.Where(s => ledger.BatchNow(s.BatchId) == b.Id).Select(s => new TracedDelivery(b.Lot, s.On, s.Pieces, s.To, s.Paid == 0)))],
        [.. ledger.Complaints.Where(c => batches.Any(b => ledger.BatchNow(c.BatchId) == b.Id))]);

    private static IEnumerable<(TracedUse Use, Batch Batch)> AllUses(Ledger ledger) =>
        from weighing in ledger.Weighings
        let batch = ledger.Batches.FirstOrDefault(b => b.Id == ledger.BatchNow(weighing.BatchId))
        let receipt = ledger.Receipts.FirstOrDefault(r => weighing.ReceiptId is { } id && r.Id == ledger.Current(BookLists.Receipt, id))
        where batch is not null && receipt is not null
        select (new TracedUse(receipt.Id, receipt.Material, receipt.Supplier, receipt.SupplierLot, batch.Lot, weighing.Grams), batch);

    private static bool Same(string? a, string b) => string.Equals(a?.Trim(), b.Trim(), StringComparison.OrdinalIgnoreCase);
}
