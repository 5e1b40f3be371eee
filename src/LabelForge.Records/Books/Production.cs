namespace LabelForge.Records.Books;

/// <summary>How much of a material to take from which lot.</summary>
/// <param name="Material">The material's id.</param>
/// <param name="Needed">What the batch needs, in grams.</param>
/// <param name="Take">From which receipts, first to expire first.</param>
/// <param name="Missing">What the stock does not have; 0 where it has enough.</param>
public sealed record Proposal(string Material, decimal Needed, IReadOnlyList<(Receipt From, decimal Grams)> Take, decimal Missing);

/// <summary>What happens at the bench: starting a batch, weighing into it, closing it.</summary>
public static class Production
{
    /// <summary>The share by which a weighed amount may differ from the recipe before it is
    /// flagged: common practice at the bench.</summary>
    public const decimal UsualTolerance = 0.02m;

    /// <summary>Proposes lots for a batch: first expired, first out; expired ones never.</summary>
    public static IReadOnlyList<Proposal> Propose(IBooks books, IEnumerable<(string Material, decimal Grams)> needs, DateOnly on) =>
        [.. needs.Select(need =>
        {
            var open = need.Grams;
            var take = new List<(Receipt, decimal)>();
            foreach (var (receipt, left) in books.InStock(need.Material).Where(r => r.Receipt.BestBefore is not { } best || best >= on))
            {
                if (open <= 0)
                    break;
                take.Add((receipt, Math.Min(open, left)));
                open -= Math.Min(open, left);
            }
            return new Proposal(need.Material, need.Grams, take, Math.Max(0, open));
        })];

    /// <summary>Begins a batch.</summary>
    public static Batch Start(OpenBooks book, FrozenRecipe frozen, string lot, DateOnly on, string by, string? note = null) =>
        book.Write((_, context) =>
        {
            var batch = new Batch
            {
                On = on,
                By = by,
                Lot = lot,
                Recipe = frozen.Recipe,
                Product = frozen.Product,
                Frozen = frozen.ToJson(),
                PiecesPlanned = frozen.Pieces,
                Note = note,
            };
            context.Batches.Add(batch);
            return batch;
        });

    /// <summary>Records an amount weighed into a batch.</summary>
    /// <param name="receiptId">The number on the material's bottle; null takes the lots that are
    /// proposed, and several where one does not suffice.</param>
    /// <exception cref="InputException">The batch is closed, the recipe does not have the
    /// material, or the lot is of another material or has too little left.</exception>
    public static IReadOnlyList<Weighing> Weigh(OpenBooks book, string lot, string material, decimal grams, int? receiptId, DateOnly on,
        string by, string? note = null) => book.Write((books, context) =>
    {
        var batch = books.BatchOf(lot);
        if (books.ClosingOf(batch) is not null)
            throw new InputException("lot.closed", ("lot", lot));
        var planned = FrozenRecipe.FromJson(batch.Frozen).Lines;
        if (planned.All(l => l.Material != material))
            throw new InputException("material.not-in-lot", ("lot", lot), ("material", material),
                ("list", string.Join(", ", planned.Select(l => l.Material))));
        if (grams <= 0)
            throw new InputException("books.nothing-weighed");
        var taken = Taken(books, material, grams, receiptId, on)
            .Select(t => new Weighing
            {
                On = on,
                By = by,
                BatchId = batch.Id,
                Material = material,
                ReceiptId = t.From?.Id,
                Grams = t.Grams,
                Note = note,
            }).ToArray();
        context.Weighings.AddRange(taken);
        return (IReadOnlyList<Weighing>)taken;
    });

    /// <summary>Finishes a batch: what came out.</summary>
    /// <exception cref="InputException">A material of the recipe has not been weighed, or more was rejected than made.</exception>
    public static Closing Close(OpenBooks book, string lot, int made, int rejected, decimal? yieldGrams, DateOnly on, string by,
        string? note = null) => book.Write((books, context) => Closed(books, context, lot, made, rejected, yieldGrams, on, by, note));

    /// <summary>Finishes several batches with the same count, all or none.</summary>
    /// <exception cref="InputException">As for one.</exception>
    public static IReadOnlyList<Closing> CloseAll(OpenBooks book, IReadOnlyList<string> lots, int made, int rejected, DateOnly on,
        string by, string? note = null) =>
        book.Write((books,
            context) => (IReadOnlyList<Closing>)[.. lots.Select(lot => Closed(books, context, lot, made, rejected, null, on, by, note))]);

    private static Closing Closed(IBooks books, RecordsContext context, string lot, int made, int rejected, decimal? yieldGrams,
        DateOnly on, string by, string? note)
    {
        var batch = books.BatchOf(lot);
        if (yieldGrams is <= 0)
            throw new InputException("closing.no-yield");
        if (made < 0 || rejected < 0 || rejected > made)
            throw new InputException("closing.rejected-more", ("rejected", rejected), ("made", made));
        var weighed = books.WeighedInto(batch).Select(w => w.Material).ToHashSet();
        var missing = FrozenRecipe.FromJson(batch.Frozen).Lines.Where(l => !weighed.Contains(l.Material)).Select(l => l.Material)
            .ToArray();
        if (missing.Length > 0)
            throw new InputException("lot.not-weighed", ("list", string.Join(", ", missing)), ("lot", lot), ("missing", missing[0]));
        var closing = new Closing
        {
            On = on,
            By = by,
            BatchId = batch.Id,
            Made = made,
            Rejected = rejected,
            YieldGrams = yieldGrams,
            Note = note,
        };
        context.Closings.Add(closing);
        return closing;
    }

    /// <summary>Records a deviation.</summary>
    public static Deviation Note(OpenBooks book, string lot, string what, DateOnly on, string by, string? note = null) =>
        book.Write((books, context) =>
        {
            var deviation = new Deviation { On = on, By = by, BatchId = books.BatchOf(lot).Id, What = what, Note = note };
            context.Deviations.Add(deviation);
            return deviation;
        });

    /// <summary>The planned amounts beside the weighed ones, in grams; weighed is 0 where nothing is written.</summary>
    public static IReadOnlyList<(FrozenLine Line, decimal Weighed, bool Off)> Compare(IBooks books, Batch batch)
    {
        var frozen = FrozenRecipe.FromJson(batch.Frozen);
        var tolerance = frozen.Tolerance ?? UsualTolerance;
        var into = books.WeighedInto(batch).ToLookup(w => w.Material, w => w.Grams);
        return [.. frozen.Lines.Select(line =>
        {
            var weighed = into[line.Material].Sum();
            return (line, weighed, weighed > 0 && Math.Abs(weighed - line.Grams) > line.Grams * tolerance);
        })];
    }

    /// <summary>From which receipts an amount is taken: that of the bottle named, else first
    /// expired, first out; null where the material is not kept in stock.</summary>
    internal static IEnumerable<(int? Receipt, decimal Grams)> TakenFrom(IBooks books, string material, decimal grams, int? receiptId,
        DateOnly on) =>
        Taken(books, material, grams, receiptId, on).Select(t => (t.From?.Id, t.Grams));

    private static IEnumerable<(Receipt? From, decimal Grams)> Taken(IBooks books, string material, decimal grams, int? receiptId,
        DateOnly on)
    {
        if (receiptId is { } id)
        {
            var receipt = books.ReceiptOf(id);
            return receipt.Material == material
                ? [(receipt, grams)]
                : throw new InputException("books.receipt-of-another-material", ("id", id), ("material", receipt.Material), ("material-2", material));
        }
        // What was never received, as tap water, is not kept in stock and has no lot.
        if (!books.IsKept(material))
            return [(null, grams)];
        var proposal = Propose(books, [(material, grams)], on)[0];
        return proposal.Missing == 0
            ? proposal.Take.Select(t => ((Receipt?)t.From, t.Grams))
            : throw new InputException("stock.short", ("material", material), ("missing", $"{proposal.Missing:0.###}"), ("grams", $"{grams:0.###}"));
    }
}
