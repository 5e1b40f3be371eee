using LabelForge.Print.Documents;

namespace LabelForge.Records.Tracing;

/// <summary>The words of a recall sheet, with the facts of a trace filled in.</summary>
public static class RecallLetters
{
    /// <summary>The sheet and its letters.</summary>
    public static RecallSheetContent Of(Trace trace, Business business, DateOnly on) => new(
        $"Recall sheet: {trace.From}",
        [
            FormattableString.Invariant(
                $"{business.NameLine}, {on:yyyy-MM-dd}. {trace.Deliveries.Sum(d => d.Pieces)} pieces left the house, {trace.Batches.Sum(b => b.Left)} are still in it."),
            .. trace.Bottles
                .Select(
                    b =>
                        FormattableString.Invariant(
                            $"M{b.MaterialLot} {b.Material}{(b.Supplier is { } s ? $", from {s}" : "")}{(b.SupplierLot is { } l ? $", supplier's lot {l}" : "")}, came {b.On:yyyy-MM-dd}: {b.Left:0.##} of {b.Amount:0.##}{trace.UnitOf(b)} are still in the house.")),
            .. trace.Uses.GroupBy(u => (u.MaterialLot, u.Lot))
                .Select(
                    g => FormattableString.Invariant($"{g.Sum(u => u.Grams):0.##} g of M{g.Key.MaterialLot} went into lot {g.Key.Lot}.")),
            .. trace.Batches
                .Select(
                    b =>
                        FormattableString.Invariant(
                            $"Lot {b.Lot}, {b.Product}, begun {b.On:yyyy-MM-dd}: {(b.Open ? "not finished" : FormattableString.Invariant($"{b.Made} made, {b.Rejected} rejected, {b.Disposed} disposed of, {b.Left} in the house"))}.")),
            .. trace.Complaints
                .Select(
                    c =>
                        FormattableString.Invariant(
                            $"Told on {c.On:yyyy-MM-dd} by {c.From}{(c.Serious ? ", SERIOUS" : "")}: {c.What}{(c.ReportBy is { } day ? FormattableString.Invariant($" (report by {day:yyyy-MM-dd})") : "")}")),
            .. trace.Deliveries.Select(d => FormattableString.Invariant($"{d.Pieces} of lot {d.Lot} to {d.To}, {d.On:yyyy-MM-dd}.")),
        ],
        [
            "Take the pieces in the house off sale, and mark them. Close the bottles named above, mark them, and finish no "
                + "batch with them.",
            "Write to everyone below; note each answer and what came back.",
            "Ask the supplier in writing what is known of the material lot.",
            "In the US: if somebody was seriously harmed, report within 15 business days (FD&C Act, section 605). Ask the authority "
                + "whether the recall must be reported.",
            "Write pieces that come back and are destroyed into the books (labelforge dispose).",
        ],
        [.. trace.Deliveries.GroupBy(d => d.To).Select(g => Letter(g.Key, g, trace, business, on))]);

    private static ImmutableArray<string> Letter(string to, IEnumerable<TracedDelivery> had, Trace trace, Business business,
        DateOnly on) =>
    [
        $"{business.NameLine}   {business.Place.Line}   {business.ContactLine}",
        FormattableString.Invariant($"{on:yyyy-MM-dd}"),
        $"To: {to}",
        "Please stop using this product",
        .. had.Select(
            d =>
                FormattableString.Invariant(
                    $"On {d.On:yyyy-MM-dd} you had {d.Pieces} of {trace.Batches.First(b => b.Lot == d.Lot).Product} from us, lot {d.Lot}. The lot stands on the label.")),
        "We are taking this lot back. Reason: ______________________________________________",
        "Please do not use it any more and do not pass it on. Keep it apart until we have fetched it, or send it back at our cost. We "
            + "give you your money back or another piece, as you like.",
        $"If it harmed anyone, please see a doctor and tell us: {business.ContactLine}",
        $"{business.Name}",
    ];
}
