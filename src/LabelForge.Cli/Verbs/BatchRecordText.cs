using LabelForge.Records.Books;

namespace LabelForge.Cli.Verbs;

/// <summary>The record of a batch on the screen. ISO 22716:2007, 7.2.5 and 17 name what such a record holds (from memory).</summary>
internal static class BatchRecordText
{
    public static JsonObject Json(IBooks books, Batch batch)
    {
        var frozen = FrozenRecipe.FromJson(batch.Frozen);
        var lines = Production.Compare(books, batch);
        var closing = books.ClosingOf(batch);
        var deviations = books.DeviationsOf(batch).ToArray();
        return new JsonObject
        {
            ["lot"] = batch.Lot,
            ["pot"] = batch.Pot,
            ["recipe"] = batch.Recipe,
            ["product"] = batch.Product,
            ["started"] = batch.On.ToJson(),
            ["by"] = batch.By,
            ["piecesPlanned"] = batch.PiecesPlanned,
            ["statement"] = frozen.Statement,
            ["materials"] = lines.ToJson(l => new JsonObject
            {
                ["material"] = l.Line.Material,
                ["planned"] = l.Line.Grams,
                ["weighed"] = l.Weighed,
                ["outOfTolerance"] = l.Off,
                ["from"] = books.WeighedInto(batch).Where(w => w.Material == l.Line.Material)
                    .ToJson(w => w.ReceiptId is { } id ? books.Bottle(id) : null)
            }),
            ["deviations"] = deviations.ToJson(d => new JsonObject { ["on"] = d.On.ToJson(), ["by"] = d.By, ["what"] = d.What }),
            ["closed"] = closing is null
                ? null
                : new JsonObject
                {
                    ["on"] = closing.On.ToJson(),
                    ["by"] = closing.By,
                    ["made"] = closing.Made,
                    ["rejected"] = closing.Rejected,
                    ["yieldGrams"] = closing.YieldGrams
                },
            ["piecesLeft"] = books.PiecesLeft(batch),
        };
    }

    public static void Write(IBooks books, Batch batch)
    {
        var lines = Production.Compare(books, batch);
        var closing = books.ClosingOf(batch);
        var deviations = books.DeviationsOf(batch).ToArray();
        Console.WriteLine(Invariant($"Lot {batch.Lot}: {batch.Product}, begun {batch.On:yyyy-MM-dd} by {batch.By}, {batch.PiecesPlanned} pieces planned{(batch.Pot is { } pot ? $", from pot {pot}" : "")}"));
        foreach (var (line, weighed, off) in lines)
        {
            var from = string.Join(", ",
                books.WeighedInto(batch).Where(w => w.Material == line.Material && w.ReceiptId is not null)
                    .Select(w => Invariant($"{books.Bottle(w.ReceiptId!.Value)} {w.Grams:0.###} g")));
            Console.WriteLine(Invariant($"  {line.Material,-22} planned {line.Grams,10:0.00} g  weighed {weighed,10:0.00} g{(off ? "  OFF" : "")}  {from}"));
        }
        foreach (var d in deviations)
            Console.WriteLine(Invariant($"  deviation, {d.On:yyyy-MM-dd}, {d.By}: {d.What}"));
        Console.WriteLine(closing is null
            ? "  still open"
            : Invariant($"  closed {closing.On:yyyy-MM-dd} by {closing.By}: {closing.Made} made, {closing.Rejected} rejected; {books.PiecesLeft(batch)} left"));
    }
}
