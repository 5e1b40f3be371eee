namespace LabelForge.Records.Books;

/// <summary>
/// What looks like a slip of the pen or of the scale in an entry that is about to be made: questions to ask before it
/// is written, each a problem as data. None of it is wrong for certain, so that whoever answers yes is believed.
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
    /// <param name="today">The day it is written.</param>
    public static ImmutableArray<Problem> OfReceipt(Receipt receipt, Material material, DateOnly today) => Asked(
        IsAhead(receipt.On, today) ? new Problem("slip.future-came-in", ("day", receipt.On.ToIso())) : null,
        material.Kind != MaterialKind.Packaging && receipt.Amount > MostGramsAtOnce
            ? new Problem("slip.mass-in", ("mass", Weight(receipt.Amount)), ("material", material.Name)) : null,
        material.Kind == MaterialKind.Packaging && receipt.Amount > MostPieces
            ? new Problem("slip.pieces-in", ("pieces", Short(receipt.Amount)), ("material", material.Name)) : null,
        receipt.BestBefore is { } best && best < receipt.On
            ? new Problem("slip.best-before-past", ("best", best.ToIso()), ("day", receipt.On.ToIso())) : null);

    /// <summary>What to ask of a batch that is to begin.</summary>
    /// <param name="grams">What all of it weighs.</param>
    /// <param name="pieces">The pieces planned.</param>
    /// <param name="today">The day it is written.</param>
    public static ImmutableArray<Problem> OfBatch(decimal grams, int pieces, DateOnly on, DateOnly today) => Asked(
        IsAhead(on, today) ? new Problem("slip.future-begins", ("day", on.ToIso())) : null,
        grams > MostGramsAtOnce ? new Problem("slip.mass-of-batch", ("mass", Weight(grams))) : null,
        pieces > MostPieces ? new Problem("slip.pieces-of-batch", ("pieces", pieces)) : null);

    /// <summary>What to ask of an amount weighed into a batch.</summary>
    /// <param name="lot">The batch's lot.</param>
    /// <param name="material">The material's id.</param>
    /// <param name="grams">What the scale showed.</param>
    /// <param name="receiptId">The number on the bottle, where it is known.</param>
    /// <param name="on">The day it was weighed.</param>
    /// <param name="today">The day it is written.</param>
    public static ImmutableArray<Problem> OfWeighing(IBooks books, string lot, string material, decimal grams, int? receiptId, DateOnly on,
        DateOnly today)
    {
        var batch = books.BatchOf(lot);
        return Asked(
            IsAhead(on, today) ? new Problem("slip.future-weighed", ("day", on.ToIso())) : null,
            on < batch.On ? new Problem("slip.weighed-before-begun", ("day", on.ToIso()), ("begun", batch.On.ToIso())) : null,
            FrozenRecipe.FromJson(batch.Frozen).Lines.FirstOrDefault(l => l.Material == material) is { Grams: > 0 } line
                ? Unlike(grams, line.Grams, books.WeighedInto(batch).Where(w => w.Material == material).Sum(w => w.Grams)) : null,
            receiptId is { } id && books.FindReceipt(id) is { } bottle && books.Left(bottle) is var left && grams > left
                ? new Problem("slip.more-than-the-bottle", ("grams", Short(grams)), ("bottle", books.Bottle(id)), ("left", Short(left)))
                : null);
    }

    /// <summary>What to ask of an amount weighed into a pot, for all its batches that are still open.</summary>
    public static ImmutableArray<Problem> OfPotWeighing(IBooks books, string pot, string material, decimal grams, DateOnly on,
        DateOnly today)
    {
        var lines = books.BatchesOfPot(pot).Where(b => books.ClosingOf(b) is null).SelectMany(b => Production.Compare(books, b))
            .Where(l => l.Line.Material == material).ToArray();
        return Asked(
            IsAhead(on, today) ? new Problem("slip.future-weighed", ("day", on.ToIso())) : null,
            lines.Sum(l => l.Line.Grams) is > 0 and var planned ? Unlike(grams, planned, lines.Sum(l => l.Weighed)) : null);
    }

    /// <summary>What to ask of a batch that is to be closed.</summary>
    public static ImmutableArray<Problem> OfClosing(IBooks books, string lot, int made, DateOnly on, DateOnly today)
    {
        var batch = books.BatchOf(lot);
        return Asked(
            IsAhead(on, today) ? new Problem("slip.future-closed", ("day", on.ToIso())) : null,
            on < batch.On ? new Problem("slip.closed-before-begun", ("day", on.ToIso()), ("begun", batch.On.ToIso())) : null,
            made >= batch.PiecesPlanned * TimesThePlan
                ? new Problem("slip.more-made", ("made", made), ("planned", batch.PiecesPlanned)) : null);
    }

    /// <summary>What to ask of pieces that leave: sold, given, or thrown away.</summary>
    public static ImmutableArray<Problem> OfPiecesOut(IBooks books, string lot, DateOnly on, DateOnly today)
    {
        var batch = books.BatchOf(lot);
        return Asked(
            IsAhead(on, today) ? new Problem("slip.future-left", ("day", on.ToIso())) : null,
            on < batch.On ? new Problem("slip.out-before-begun", ("day", on.ToIso()), ("lot", lot), ("begun", batch.On.ToIso()))
                : books.ClosingOf(batch) is { } closing && on < closing.On
                ? new Problem("slip.out-before-finished", ("day", on.ToIso()), ("lot", lot), ("finished", closing.On.ToIso())) : null);
    }

    private static ImmutableArray<Problem> Asked(params Problem?[] asked) => [.. asked.OfType<Problem>()];

    private static Problem? Unlike(decimal grams, decimal planned, decimal before) => before + grams >= planned * TimesThePlan
        ? before > 0
            ? new Problem("slip.more-with-what-is-in", ("grams", Short(grams)), ("planned", Short(planned)), ("before", Short(before)))
            : new Problem("slip.more-than-planned", ("grams", Short(grams)), ("planned", Short(planned)))
        : before == 0 && Math.Abs(grams * 10 - planned) <= planned * NearATenth
            ? new Problem("slip.a-tenth", ("grams", Short(grams)), ("planned", Short(planned)))
            : null;

    // A day to spare: it is tomorrow already where somebody else sits.
    private static bool IsAhead(DateOnly on, DateOnly today) => on > today.AddDays(1);

    private static string Weight(decimal grams) =>
        grams >= 1_000_000 ? Short(grams / 1_000_000) + " tonnes" : Short(grams / 1_000) + " kg";

    private static string Short(decimal figure) => figure.ToString("0.###", CultureInfo.InvariantCulture);
}
