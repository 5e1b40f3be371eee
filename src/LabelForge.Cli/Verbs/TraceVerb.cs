using LabelForge.Cli.Handover;
using LabelForge.Files;
using LabelForge.Print.Documents;
using LabelForge.Print.Output;
using LabelForge.Records.Spreadsheets;
using LabelForge.Records.Tracing;

namespace LabelForge.Cli.Verbs;

/// <summary><c>trace</c>: from a bottle to the people who have what was made of it, and back.</summary>
internal static class TraceVerb
{
    public static Command Build()
    {
        var verb = new Verb("trace", "From a material lot to batches to people, and back");
        var from = verb.Argument<string>("FROM", "A material lot (M3), a supplier's lot, a material, a finished lot, or a buyer");
        var options = new BookOptions().AddReadingTo(verb, dated: true);
        var output = OutputOption.Optional("A file to write: .csv, .svg (a picture), or .pdf (a recall sheet with letters)", FileKind.Csv,
            FileKind.Svg, FileKind.Pdf).AddTo(verb);
        return verb.OpensBooks(r =>
        {
            var path = output.PathOrNone(r);
            var workshop = options.Workshop(r);
            var trace = Trace.Of(BookOptions.Book(workshop), r.GetValue(from)!);
            if (path is not null)
                Save(path, trace, workshop, options.On(r));
            if (options.Json(r))
                Json(trace);
            else
                Text(trace);
            return Exit.Done;
        });
    }

    private static void Save(string path, Trace trace, Workshop workshop, DateOnly on)
    {
        switch (Path.GetExtension(path).ToLowerInvariant())
        {
            case ".csv":
                AtomicFile.Write(path, s => s.Write(SafeCsv.File(TraceTable.Csv(trace))));
                break;
            case ".svg":
                AtomicFile.Write(path, TracePicture.Svg(trace));
                break;
            case ".pdf":
                RecallSheetWriter.WritePdf(path, RecallLetters.Of(trace, workshop, on),
                    new DocumentInfo($"Recall, {trace.From}", on));
                break;
            default:
                throw new InputException(path, 0, "call.trace-file-kind");
        }
    }

    private static void Json(Trace trace) => JsonOut.Write(new JsonObject
    {
        ["from"] = trace.From,
        ["bottles"] = trace.Bottles
            .ToJson(b => new JsonObject
            {
                ["materialLot"] = $"M{b.MaterialLot}",
                ["material"] = b.Material,
                ["supplier"] = b.Supplier,
                ["supplierLot"] = b.SupplierLot,
                ["on"] = b.On.ToJson(),
                ["amount"] = b.Amount,
                ["left"] = b.Left
            }),
        ["materialLots"] = trace.Uses
            .ToJson(u => new JsonObject
            {
                ["materialLot"] = $"M{u.MaterialLot}",
                ["material"] = u.Material,
                ["supplier"] = u.Supplier,
                ["supplierLot"] = u.SupplierLot,
                ["lot"] = u.Lot,
                ["grams"] = u.Grams
            }),
        ["batches"] = trace.Batches
            .ToJson(b => new JsonObject
            {
                ["lot"] = b.Lot,
                ["product"] = b.Product,
                ["on"] = b.On.ToJson(),
                ["made"] = b.Made,
                ["rejected"] = b.Rejected,
                ["left"] = b.Left,
                ["disposed"] = b.Disposed,
                ["open"] = b.Open
            }),
        ["deliveries"] = trace.Deliveries.ToJson(d => new JsonObject
        {
            ["lot"] = d.Lot,
            ["on"] = d.On.ToJson(),
            ["pieces"] = d.Pieces,
            ["to"] = d.To,
            ["gift"] = d.Gift,
        }),
        ["complaints"] = trace.Complaints
            .ToJson(c => new JsonObject
            {
                ["on"] = c.On.ToJson(),
                ["from"] = c.From,
                ["what"] = c.What,
                ["serious"] = c.Serious,
                ["reportBy"] = c.ReportBy?.ToJson(),
            }),
    });

    private static string Supply(string? supplier, string? lot) => (supplier, lot) switch
    {
        (null, null) => "",
        (null, _) => $" (lot {lot})",
        (_, null) => $" ({supplier})",
        _ => $" ({supplier}, lot {lot})",
    };

    private static void Text(Trace trace)
    {
        Console.WriteLine($"From {trace.From}");
        foreach (var b in trace.Bottles)
            Console.WriteLine(Invariant($"  M{b.MaterialLot} {b.Material}{Supply(b.Supplier, b.SupplierLot)}, came {b.On:yyyy-MM-dd}: {b.Left:0.###} of {b.Amount:0.###}{trace.UnitOf(b)} left in the house"));
        foreach (var u in trace.Uses)
            Console.WriteLine(Invariant($"  M{u.MaterialLot} {u.Material}: {u.Grams:0.###} g into lot {u.Lot}"));
        foreach (var b in trace.Batches)
        {
            Console.WriteLine(Invariant($"  lot {b.Lot}, {b.Product}, {b.On:yyyy-MM-dd}: {(b.Open ? "not finished" : Invariant($"{b.Made} made, {b.Rejected} rejected, {b.Disposed} disposed of, {b.Left} in the house"))}"));
            foreach (var d in trace.Deliveries.Where(d => d.Lot == b.Lot))
                Console.WriteLine(Invariant($"    {d.Pieces} to {d.To}, {d.On:yyyy-MM-dd}{(d.Gift ? ", given" : "")}"));
        }
        foreach (var c in trace.Complaints)
            Console.WriteLine(Invariant($"  complaint, {c.On:yyyy-MM-dd}, {c.From}: {c.What}{(c.ReportBy is { } by ? Invariant($" (SERIOUS: report by {by:yyyy-MM-dd})") : "")}"));
        Console.WriteLine(Invariant($"{Counted(trace.Deliveries.Sum(d => d.Pieces), "piece is", "pieces are")} with {Counted(trace.Deliveries.Select(d => d.To).Distinct().Count(), "buyer", "buyers")}, {trace.Batches.Sum(b => b.Left)} in the house."));
    }

    private static string Counted(int count, string one, string many) =>
        Invariant($"{count} {(count == 1 ? one : many)}");
}
