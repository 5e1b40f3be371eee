using LabelForge.Records.Spreadsheets;

namespace LabelForge.Records.Tracing;

/// <summary>A trace as one table: each line a step of the way.</summary>
public static class TraceTable
{
    /// <summary>The trace as CSV.</summary>
    public static string Csv(Trace trace) =>
        SafeCsv.Write(["step", "lot", "material lot", "material", "supplier", "supplier lot", "grams", "on", "pieces", "to or from",
            "what"],
        [
            .. trace.Bottles
                .Select(b => (IReadOnlyList<object?>)["left of it", null, $"M{b.MaterialLot}", b.Material, b.Supplier, b.SupplierLot,
                    b.Left, null, null, null, null]),
            .. trace.Uses
                .Select(u => (IReadOnlyList<object?>)["went in", u.Lot, $"M{u.MaterialLot}", u.Material, u.Supplier, u.SupplierLot,
                    u.Grams, null, null, null, null]),
            .. trace.Batches
                .Select(b => (IReadOnlyList<object?>)["made", b.Lot, null, null, null, null, null, b.On, b.Made, null, b.Product]),
            .. trace.Deliveries
                .Select(d => (IReadOnlyList<object?>)[d.Gift ? "given" : "sold", d.Lot, null, null, null, null, null, d.On, d.Pieces, d.To,
                    null]),
            .. trace.Batches.Where(b => b.Left > 0)
                .Select(b => (IReadOnlyList<object?>)["in the house", b.Lot, null, null, null, null, null, null, b.Left, null, b.Product]),
            .. trace.Complaints
                .Select(c => (IReadOnlyList<object?>)["complaint", null, null, null, null, null, null, c.On, null, c.From, c.What]),
        ]);
}
