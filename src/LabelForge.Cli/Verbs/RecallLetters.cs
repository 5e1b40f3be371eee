using System.Collections.Immutable;
using LabelForge.Print.Bench;
using LabelForge.Recipes;
using LabelForge.Records.Tracing;

namespace LabelForge.Cli.Verbs;

/// <summary>The words of a recall sheet, with the facts of a trace filled in.</summary>
internal static class RecallLetters
{
    public static RecallSheetContent Of(Trace trace, Business business, DateOnly on) => new(
        $"Recall sheet: {trace.From}",
        [
            FormattableString.Invariant($"{business.NameLine}, {on:yyyy-MM-dd}. {trace.Deliveries.Sum(d => d.Pieces)} pieces left the house, {trace.Batches.Sum(b => b.Left)} are still in it."),
            .. trace.Batches.Select(b => FormattableString.Invariant($"Lot {b.Lot}, {b.Product}, made {b.On:yyyy-MM-dd}: {b.Made} made, {b.Rejected} rejected, {b.Left} in the house.")),
            .. trace.Uses.Select(u => $"M{u.MaterialLot} {u.Material}, {u.Supplier} {u.SupplierLot}, went into lot {u.Lot}."),
            .. trace.Deliveries.Select(d => FormattableString.Invariant($"{d.Pieces} of lot {d.Lot} to {d.To}, {d.On:yyyy-MM-dd}.")),
        ],
        [
            "Take what is left in the house off sale, and mark it.",
            "Write to everyone below; note each answer and what came back.",
            "Ask the supplier in writing what is known of the material lot.",
            "In the US: if somebody was seriously harmed, report within 15 business days (FD&C Act, section 605). Ask the authority whether the recall must be reported.",
            "Write pieces that come back and are destroyed into the books (labelforge dispose).",
        ],
        [.. trace.Deliveries.GroupBy(d => d.To).Select(g => Letter(g.Key, g, trace, business, on))]);

    private static ImmutableArray<string> Letter(string to, IEnumerable<TracedDelivery> had, Trace trace, Business business, DateOnly on) =>
    [
        $"{business.NameLine}   {business.Place.Line}   {business.ContactLine}",
        FormattableString.Invariant($"{on:yyyy-MM-dd}"),
        $"To: {to}",
        "Please stop using this product",
        .. had.Select(d => FormattableString.Invariant($"On {d.On:yyyy-MM-dd} you had {d.Pieces} of {trace.Batches.First(b => b.Lot == d.Lot).Product} from us, lot {d.Lot}. The lot stands on the label.")),
        "We are taking this lot back. Reason: ______________________________________________",
        "Please do not use it any more and do not pass it on. Keep it apart until we have fetched it, or send it back at our cost. We give you your money back or another piece, as you like.",
        $"If it harmed anyone, please see a doctor and tell us: {business.ContactLine}",
        $"{business.Name}",
    ];
}
