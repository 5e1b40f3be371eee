using LabelForge.Cli.Handover;
using LabelForge.Files;
using LabelForge.Pouring;
using LabelForge.Print.Documents;
using LabelForge.Print.Output;
using LabelForge.Records.Books;

namespace LabelForge.Cli.Verbs;

/// <summary>Several products out of one pot: <c>batch begin</c>, <c>batch sheet</c>, and what
/// weighing and closing mean for a pot.</summary>
internal static class PotVerbs
{
    public static Command Begin()
    {
        var verb = new Verb("begin", "Begins what is poured out of one pot: one lot each, the shared base weighed once");
        var products = verb.Argument<string[]>("PRODUCT=SIZE",
            "What is poured, in the order of work: bramble-bar=6 \"meadow-bar/Moss Lane=6\" tideline-bar=680g \"hayloft-bar=12 x 113 "
                + "g\"; a recipe alone stands for all its products; without a size, the moulds in workshop.yaml are filled", ArgumentArity.OneOrMore);
        var output = OutputOption.Optional("The bench sheet to write, a PDF", FileKind.Pdf).AddTo(verb);
        var options = new BookOptions().AddAskingTo(verb);
        return verb.OpensBooks(r =>
        {
            var path = output.PathOrNone(r);
            var workshop = options.Workshop(r);
            var on = options.On(r);
            var wishes = PourWish.ReadAll(workshop, r.GetValue(products)!);
            options.Ask(r,
                Slips.OfBatch(wishes.Sum(w => w.Formula.Total.Grams), wishes.Sum(w => w.Formula.Recipe.Pieces), on, BookOptions.Today));
            var poured = Pour.Begin(BookOptions.Book(workshop), workshop, wishes, on, options.By(r), options.Note(r));
            if (path is not null)
                Write(path, workshop, poured);
            if (options.Json(r))
                JsonOut.Write(Json(poured));
            else
                Tell(poured, path);
            return Exit.Done;
        });
    }

    public static Command Sheet()
    {
        var verb = new Verb("sheet", "The bench sheet of a pot again: cautions, the shared base, a block for each product");
        var pot = verb.Argument<string>("POT", "The pot's number");
        var output = new OutputOption("The PDF to write", FileKind.Pdf).AddTo(verb);
        var options = new BookOptions().AddReadingTo(verb, dated: true);
        return verb.OpensBooks(r =>
        {
            var path = output.Path(r);
            var workshop = options.Workshop(r);
            var poured = BookOptions.Book(workshop)
                .Ask(books => Pour.Of(workshop, books, BookOptions.Lot(r.GetValue(pot)!), options.On(r)));
            Write(path, workshop, poured);
            if (options.Json(r))
                JsonOut.Write(Json(poured));
            return Exit.Done;
        });
    }

    /// <summary>Whether a code is a pot's number.</summary>
    public static bool IsPot(OpenBooks book, string code) => book.Ask(books => books.BatchesOfPot(code).Any());

    /// <summary>Weighs something into a pot, for all its batches at once.</summary>
    public static int Weigh(ParseResult r, BookOptions options, OpenBooks book, string pot, Material material, decimal grams, int? bottle)
    {
        options.Ask(r, book.Ask(books => Slips.OfPotWeighing(books, pot, material.Id, grams, options.On(r), BookOptions.Today)));
        var written = Pots.Weigh(book, pot, material.Id, grams, bottle, options.On(r), options.By(r), options.Note(r));
        var (lines, bottles) = book.Ask(books => (
            books.BatchesOfPot(pot)
                .Select(b => (Batch: b, Line: Production.Compare(books, b).FirstOrDefault(l => l.Line.Material == material.Id)))
                .Where(l => l.Line.Line is not null).ToArray(),
            written.Select(w => w.ReceiptId is { } id ? books.Bottle(id) : null).Distinct().ToArray()));
        var flagged = lines.Any(l => l.Line.Off);
        var planned = lines.Sum(l => l.Line.Line.Grams);
        if (options.Json(r))
        {
            JsonOut.Write(new JsonObject
            {
                ["pot"] = pot,
                ["material"] = material.Id,
                ["from"] = bottles.ToJson(),
                ["planned"] = Math.Round(planned, 3),
                ["weighed"] = grams,
                ["outOfTolerance"] = flagged,
                ["lots"] = lines.ToJson(l => new JsonObject { ["lot"] = l.Batch.Lot, ["weighed"] = l.Line.Weighed }),
            });
            return flagged ? Exit.FindingStands : Exit.Done;
        }
        var from = string.Join(", ", bottles.OfType<string>());
        Console.WriteLine(Invariant($"{grams:0.###} g of {material.Name}{(from.Length > 0 ? $" from {from}" : "")} into pot {pot}"));
        foreach (var (batch, line) in lines)
            Console.WriteLine(Invariant($"  {batch.Lot}  {line.Weighed,10:0.###} g  {batch.Product}{(line.Off ? "  FLAG" : "")}"));
        if (flagged)
            Console.WriteLine(Invariant($"FLAG: {lines.Sum(l => l.Line.Weighed):0.###} g stand where the recipes have {planned:0.###} g. Weigh the rest, or note why: labelforge batch note LOT \"...\""));
        return flagged ? Exit.FindingStands : Exit.Done;
    }

    /// <summary>Closes each batch of a pot that is still open, with the same count.</summary>
    public static int Close(ParseResult r, BookOptions options, Workshop workshop, OpenBooks book, string pot, int made, int rejected,
        decimal? yieldGrams)
    {
        if (yieldGrams is not null)
            throw new InputException("call.yield-of-one-batch", ("made", made));
        var open = book.Ask(books => books.BatchesOfPot(pot).Where(b => books.ClosingOf(b) is null).ToArray());
        if (open.Length == 0)
            throw new InputException("call.pot-closed", ("pot", pot));
        options.Ask(r,
            book.Ask(books => open.SelectMany(b => Slips.OfClosing(books, b.Lot, made, options.On(r), BookOptions.Today)).Distinct()
                .ToArray()));
        var closed = Production.CloseAll(book, [.. open.Select(b => b.Lot)], made, rejected, options.On(r), options.By(r),
            options.Note(r));
        foreach (var packed in ClosePacking.Use(workshop, book, open.Zip(closed, (b, c) => (b.Lot, c.Made - c.Rejected)), options.On(r),
            options.By(r)))
            Console.Error.WriteLine($"Note: {packed}");
        return options.Told(r, new JsonObject
        {
            ["pot"] = pot,
            ["closed"] = open.Zip(closed).ToJson(b => new JsonObject
            {
                ["lot"] = b.First.Lot,
                ["made"] = b.Second.Made,
                ["rejected"] = b.Second.Rejected,
                ["forSale"] = b.Second.Made - b.Second.Rejected,
            })
        }, $"Pot {pot}: {closed.Count} batches closed, {closed.Sum(c => c.Made - c.Rejected)} pieces for sale, {closed.Sum(c => c.Rejected)} rejected.");
    }

    private static void Write(string path, Workshop workshop, Poured poured) =>
        AtomicFile.Write(path, s => PotSheet.WritePdf(s, workshop, poured));

    private static JsonObject Json(Poured poured) => new JsonObject
    {
        ["pot"] = poured.Pot,
        ["batches"] = poured.Batches
            .ToJson(b => new JsonObject
            {
                ["lot"] = b.Batch.Lot,
                ["product"] = b.Wish.Product.Name,
                ["pieces"] = b.Batch.PiecesPlanned,
                ["grams"] = Math.Round(b.Wish.Formula.Total.Grams, 3),
                ["moulds"] = b.Wish.Moulds
            }),
        ["materials"] = poured.Needs
            .ToJson(n => new JsonObject
            {
                ["material"] = n.Material.Id,
                ["grams"] = Math.Round(n.Grams, 3),
                ["inPot"] = n.InPot,
                ["take"] = n.From.ToJson(f => new JsonObject { ["from"] = f.Bottle, ["grams"] = Math.Round(f.Grams, 3) }),
                ["missing"] = Math.Round(n.Missing, 3)
            }),
    };

    private static void Tell(Poured poured, string? path)
    {
        if (poured.Pot is { } pot)
            Console.WriteLine($"Pot {pot}: {poured.Batches.Sum(b => b.Batch.PiecesPlanned)} pieces of {poured.Batches.Length} products");
        foreach (var (batch, wish) in poured.Batches)
            Console.WriteLine(Invariant($"  {batch.Lot}  {batch.PiecesPlanned,4} {batch.Product}, {wish.Formula.Total.Grams:0.#} g{(wish.Moulds is { } m ? $", {m}" : "")}"));
        foreach (var need in poured.Needs)
        {
            var take = need.From.IsEmpty
                ? "not kept in stock"
                : string.Join(", ", need.From.Select(f => Invariant($"{f.Bottle} {f.Grams:0.##} g")));
            Console.WriteLine(Invariant($"  {need.Grams,10:0.00} g  {need.Material.Id}{(need.InPot ? ", into the pot" : "")}: {take}{(need.Missing > 0 ? Invariant($" SHORT by {need.Missing:0.##} g") : "")}"));
        }
        Console.WriteLine(path is not null ? $"The bench sheet: {path}"
            : poured.Pot is { } number ? $"Print the bench sheet: labelforge batch sheet {number} --out bench.pdf"
            : $"Print the sheet: labelforge batch {poured.Batches[0].Batch.Recipe} --lot {poured.Batches[0].Batch.Lot} --out batch.pdf");
    }
}
