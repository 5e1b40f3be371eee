using LabelForge.Print.Documents;

namespace LabelForge.Records.Tracing;

/// <summary>The words of a recall sheet, with the facts of a trace filled in.</summary>
public static class RecallLetters
{
    /// <summary>The sheet and its letters.</summary>
    /// <param name="trace">What was traced.</param>
    /// <param name="workshop">The workshop, which writes them.</param>
    public static RecallSheetContent Of(Trace trace, Workshop workshop, DateOnly on) => new(
        $"Recall sheet: {trace.From}",
        Invariant($"{workshop.Business.NameLine}, {on:yyyy-MM-dd}. {Pieces(trace.Deliveries.Sum(d => d.Pieces))} left the house, {trace.Batches.Sum(b => b.Left)} still in it."),
        [
            new("What to do", Steps, ToTick: true),
            new("Who has it", [.. trace.Deliveries
                .Select(d => Invariant($"{d.To}: {d.Pieces} of lot {d.Lot}, {d.On:yyyy-MM-dd}{(d.Gift ? ", given" : "")}"))],
                ToTick: true),
            new("What was told", [.. trace.Complaints.Select(c => Invariant(
                $"{c.On:yyyy-MM-dd}, {c.From}{(c.Serious ? ", SERIOUS" : "")}: {c.What}{(c.ReportBy is { } day ? Invariant($" (report by {day:yyyy-MM-dd})") : "")}"))]),
            new("What was made", [.. trace.Batches.Select(b => Invariant(
                $"Lot {b.Lot}, {b.Product}, begun {b.On:yyyy-MM-dd}: {(b.Open ? "not finished" : Invariant($"{b.Made} made, {b.Rejected} rejected, {b.Disposed} disposed of, {b.Left} in the house"))}."))]),
            new("What went into it", [
                .. trace.Bottles.Select(b => Invariant($"M{b.MaterialLot} {Named(workshop, b.Material)}{(b.Supplier is { } s ? $", from {s}" : "")}{(b.SupplierLot is { } l ? $", supplier's lot {l}" : "")}, came {b.On:yyyy-MM-dd}: {b.Left:0.##} of {b.Amount:0.##}{trace.UnitOf(b)} in the house.")),
                .. trace.Uses.GroupBy(u => (u.MaterialLot, u.Lot)).Select(g => Invariant(
                    $"{g.Sum(u => u.Grams):0.##} g of M{g.Key.MaterialLot} went into lot {g.Key.Lot}."))]),
        ],
        [.. trace.Deliveries.GroupBy(d => d.To).Select(g => Letter(g.Key, g, trace, workshop.Business, on))]);

    private static readonly ImmutableArray<string> Steps =
    [
        "Take the pieces in the house off sale, and mark them. Close the bottles named below, mark them, and finish no batch with them.",
        "Write to everyone below; note each answer and what came back. Where nobody knows who bought, as at a market, put the letter up "
            + "there and where your buyers look.",
        "Ask the supplier in writing what is known of the material lot.",
        "In the US: if somebody was seriously harmed, report within 15 business days (FD&C Act, section 605). Ask the authority "
            + "whether the recall must be reported.",
        "Write pieces that come back and are destroyed into the books (labelforge dispose).",
    ];

    private static string Pieces(int count) => count == 1 ? "1 piece" : Invariant($"{count} pieces");

    private static string Named(Workshop workshop, string material) => workshop.Materials.GetValueOrDefault(material)?.Name ?? material;

    private static ImmutableArray<string> Letter(string to, IEnumerable<TracedDelivery> had, Trace trace, Business business,
        DateOnly on) =>
    [
        $"{business.NameLine}   {business.Place.Line}   {business.ContactLine}",
        Invariant($"{on:yyyy-MM-dd}"),
        $"To: {to}",
        "Please stop using this product",
        .. had.Select(
            d =>
                Invariant($"On {d.On:yyyy-MM-dd} you had {d.Pieces} of {trace.Batches.First(b => b.Lot == d.Lot).Product} from us, lot {d.Lot}. The lot stands on the label.")),
        "We are taking this lot back. Reason: ______________________________________________",
        "Please do not use it any more and do not pass it on. Keep it apart until we have fetched it, or send it back at our cost. We "
            + "give you your money back or another piece, as you like.",
        $"If it harmed anyone, please see a doctor and tell us: {business.ContactLine}",
        $"{business.Name}",
    ];
}
