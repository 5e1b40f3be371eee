namespace LabelForge.Records.Books;

/// <summary>
/// What looks like a slip of the pen or of the scale in an entry that is about to be made: questions, in sentences, to ask
/// before it is written. None of it is wrong for certain, so that whoever answers yes is believed.
/// </summary>
/// <remarks>The bounds are common practice at the bench of one person: no instrument sets them.</remarks>
public static class Slips
{
    // Three times the plan is no scale's error; a tenth to within one part in twenty is a point in the wrong place.
    private const decimal TimesThePlan = 3;
    private const decimal NearATenth = 0.05m;
    private const decimal MostGramsAtOnce = 500_000;
    private const decimal MostPieces = 100_000;

    /// <summary>What to ask of a material that came in.</summary>
    /// <param name="receipt">The entry as it would be written.</param>
    /// <param name="material">The material.</param>
    /// <param name="today">The day it is written.</param>
    public static ImmutableArray<string> OfReceipt(Receipt receipt, Material material, DateOnly today)
    {
        var asked = ImmutableArray.CreateBuilder<string>();
        Future(asked, receipt.On, today, "came in");
        if (material.Kind != MaterialKind.Packaging && receipt.Amount > MostGramsAtOnce)
            asked.Add($"{Weight(receipt.Amount)} of {material.Name}?");
        if (material.Kind == MaterialKind.Packaging && receipt.Amount > MostPieces)
            asked.Add(Text($"{receipt.Amount:0.###} pieces of {material.Name}?"));
        if (receipt.BestBefore is { } best && best < receipt.On)
            asked.Add(Text($"Best before {best:yyyy-MM-dd}, which was past when it came in on {receipt.On:yyyy-MM-dd}?"));
        return asked.ToImmutable();
    }

    /// <summary>What to ask of a batch that is to begin.</summary>
    /// <param name="grams">What all of it weighs.</param>
    /// <param name="pieces">The pieces planned.</param>
    /// <param name="on">Its day.</param>
    /// <param name="today">The day it is written.</param>
    public static ImmutableArray<string> OfBatch(decimal grams, int pieces, DateOnly on, DateOnly today)
    {
        var asked = ImmutableArray.CreateBuilder<string>();
        Future(asked, on, today, "begins");
        if (grams > MostGramsAtOnce)
            asked.Add($"A batch of {Weight(grams)}?");
        if (pieces > MostPieces)
            asked.Add(Text($"A batch of {pieces} pieces?"));
        return asked.ToImmutable();
    }

    /// <summary>What to ask of an amount weighed into a batch.</summary>
    /// <param name="books">The books.</param>
    /// <param name="lot">The batch's lot.</param>
    /// <param name="material">The material's id.</param>
    /// <param name="grams">What the scale showed.</param>
    /// <param name="receiptId">The number on the bottle, where it is known.</param>
    /// <param name="on">The day it was weighed.</param>
    /// <param name="today">The day it is written.</param>
    public static ImmutableArray<string> OfWeighing(IBooks books, string lot, string material, decimal grams, int? receiptId, DateOnly on,
        DateOnly today)
    {
        var asked = ImmutableArray.CreateBuilder<string>();
        var batch = books.BatchOf(lot);
        Future(asked, on, today, "was weighed");
        if (on < batch.On)
            asked.Add(Text($"Weighed on {on:yyyy-MM-dd}, before the batch began on {batch.On:yyyy-MM-dd}?"));
        if (FrozenRecipe.FromJson(batch.Frozen).Lines.FirstOrDefault(l => l.Material == material) is { } line && line.Grams > 0)
        {
            Unlike(asked, grams, line.Grams, books.WeighedInto(batch).Where(w => w.Material == material).Sum(w => w.Grams));
        }
        if (receiptId is { } id && books.FindReceipt(id) is { } bottle && books.Left(bottle) is var left && grams > left)
            asked.Add(Text($"{grams:0.###} g out of {books.Bottle(id)}, which holds {left:0.###} g?"));
        return asked.ToImmutable();
    }

    /// <summary>What to ask of an amount weighed into a pot, for all its batches that are still open.</summary>
    public static ImmutableArray<string> OfPotWeighing(IBooks books, string pot, string material, decimal grams, DateOnly on,
        DateOnly today)
    {
        var asked = ImmutableArray.CreateBuilder<string>();
        Future(asked, on, today, "was weighed");
        var lines = books.BatchesOfPot(pot).Where(b => books.ClosingOf(b) is null).SelectMany(b => Production.Compare(books, b))
            .Where(l => l.Line.Material == material).ToArray();
        if (lines.Sum(l => l.Line.Grams) is > 0 and var planned)
            Unlike(asked, grams, planned, lines.Sum(l => l.Weighed));
        return asked.ToImmutable();
    }

    private static void Unlike(ImmutableArray<string>.Builder asked, decimal grams, decimal planned, decimal before)
    {
        if (before + grams >= planned * TimesThePlan)
            asked.Add(
                Text(
                    $"{grams:0.###} g where {planned:0.###} g was planned{(before > 0 ? Text($" and {before:0.###} g is in already") : "")}?"));
        else if (before == 0 && Math.Abs(grams * 10 - planned) <= planned * NearATenth)
            asked.Add(Text($"{grams:0.###} g where {planned:0.###} g was planned: a tenth?"));
    }

    /// <summary>What to ask of a batch that is to be closed.</summary>
    public static ImmutableArray<string> OfClosing(IBooks books, string lot, int made, DateOnly on, DateOnly today)
    {
        var asked = ImmutableArray.CreateBuilder<string>();
        var batch = books.BatchOf(lot);
        Future(asked, on, today, "was closed");
        if (on < batch.On)
            asked.Add(Text($"Closed on {on:yyyy-MM-dd}, before the batch began on {batch.On:yyyy-MM-dd}?"));
        if (made >= batch.PiecesPlanned * TimesThePlan)
            asked.Add(Text($"{made} pieces where {batch.PiecesPlanned} were planned?"));
        return asked.ToImmutable();
    }

    /// <summary>What to ask of pieces that leave: sold, given, or thrown away.</summary>
    public static ImmutableArray<string> OfPiecesOut(IBooks books, string lot, DateOnly on, DateOnly today)
    {
        var asked = ImmutableArray.CreateBuilder<string>();
        var batch = books.BatchOf(lot);
        Future(asked, on, today, "left");
        if (on < batch.On)
            asked.Add(Text($"Out of the house on {on:yyyy-MM-dd}, before lot {lot} was begun on {batch.On:yyyy-MM-dd}?"));
        else if (books.ClosingOf(batch) is { } closing && on < closing.On)
            asked.Add(Text($"Out of the house on {on:yyyy-MM-dd}, before lot {lot} was finished on {closing.On:yyyy-MM-dd}?"));
        return asked.ToImmutable();
    }

    // A day to spare: it is tomorrow already where somebody else sits.
    private static void Future(ImmutableArray<string>.Builder asked, DateOnly on, DateOnly today, string what)
    {
        if (on > today.AddDays(1))
            asked.Add(Text($"It {what} on {on:yyyy-MM-dd}, which is yet to come?"));
    }

    private static string Weight(decimal grams) =>
        grams >= 1_000_000 ? Text($"{grams / 1_000_000:0.###} tonnes") : Text($"{grams / 1_000:0.###} kg");

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
