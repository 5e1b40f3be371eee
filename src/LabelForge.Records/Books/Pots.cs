namespace LabelForge.Records.Books;

/// <summary>Several batches whose base is melted in one pot: begun together, their shared base weighed once.</summary>
public static class Pots
{
    // What is weighed once is shared out to the microgram, so that the parts are the whole again.
    private const decimal Finest = 0.000001m;

    /// <summary>Begins the batches of a pot, all or none. The pot gets a number of its own out of the day's lots.</summary>
    /// <param name="batches">What is poured, in the order of work.</param>
    /// <param name="by">Who pours.</param>
    /// <param name="note">A note, or null.</param>
    /// <returns>The pot's number, and the batches in the same order.</returns>
    public static (string Pot,
        IReadOnlyList<Batch> Batches) Begin(OpenBooks book, IReadOnlyList<(Recipe Recipe, FrozenRecipe Frozen)> batches, DateOnly on,
            string by, string? note = null) => book.Write((books, context) =>
    {
        var given = new HashSet<string>();
        string Next(Recipe? recipe)
        {
            var code = NextLot.Of(books, on, recipe, given).ToString();
            given.Add(code);
            return code;
        }
        var pot = Next(null);
        var begun = batches.Select(b => new Batch
        {
            On = on,
            By = by,
            Note = note,
            Lot = Next(b.Recipe),
            Pot = pot,
            Recipe = b.Frozen.Recipe,
            Product = b.Frozen.Product,
            Frozen = b.Frozen.ToJson(),
            PiecesPlanned = b.Frozen.Pieces,
        }).ToArray();
        context.Batches.AddRange(begun);
        return (pot, (IReadOnlyList<Batch>)begun);
    });

    /// <summary>Records what was weighed into the pot: each batch still at the bench gets its
    /// part by what it was planned to take.</summary>
    /// <param name="receiptId">The number on the bottle; null takes the lots that are proposed.</param>
    /// <returns>One entry for each batch and bottle; together they are what the scale showed.</returns>
    /// <exception cref="InputException">No batch of the pot is open or takes that material, or the stock is short.</exception>
    public static IReadOnlyList<Weighing> Weigh(OpenBooks book, string pot, string material, decimal grams, int? receiptId, DateOnly on,
        string by, string? note = null) => book.Write((books, context) =>
    {
        var open = books.BatchesOfPot(pot).Where(b => books.ClosingOf(b) is null)
            .Select(b => (Batch: b, Planned: FrozenRecipe.FromJson(b.Frozen).Lines.Where(l => l.Material == material).Sum(l => l.Grams)))
            .Where(b => b.Planned > 0).ToArray();
        if (open.Length == 0)
            throw new InputException("pot.not-taken", ("pot", pot), ("material", material));
        if (grams <= 0)
            throw new InputException("books.nothing-weighed");
        var bottles = new Queue<(int? Receipt, decimal Grams)>(Production.TakenFrom(books, material, grams, receiptId, on));
        var weighed = new List<Weighing>();
        foreach (var (batch, part) in open.Zip(Shares([.. open.Select(b => b.Planned)], grams), (b, part) => (b.Batch, part)))
        {
            for (var rest = part; rest > 0;)
            {
                var (receipt, left) = bottles.Peek();
                var now = Math.Min(rest, left);
                weighed.Add(new Weighing
                {
                    On = on,
                    By = by,
                    Note = note,
                    BatchId = batch.Id,
                    Material = material,
                    ReceiptId = receipt,
                    Grams = now,
                });
                rest -= now;
                bottles.Dequeue();
                if (left > now)
                    bottles = new([(receipt, left - now), .. bottles]);
            }
        }
        context.Weighings.AddRange(weighed);
        return (IReadOnlyList<Weighing>)weighed;
    });

    /// <summary>Shares a mass out by weights; the parts are whole micrograms and add up to the mass.</summary>
    internal static ImmutableArray<decimal> Shares(IReadOnlyList<decimal> weights, decimal grams)
    {
        var (sum, given, soFar) = (weights.Sum(), 0m, 0m);
        var shares = ImmutableArray.CreateBuilder<decimal>(weights.Count);
        for (var i = 0; i < weights.Count; i++)
        {
            soFar += weights[i];
            // From the start each time, so that what rounding leaves never gathers in one part.
            var upTo = i == weights.Count - 1 ? grams : Math.Floor(grams * soFar / sum / Finest) * Finest;
            shares.Add(upTo - given);
            given = upTo;
        }
        return shares.MoveToImmutable();
    }
}
