using LabelForge.Records.Books;

namespace LabelForge.Years;

/// <summary>What lies in the house, valued thing by thing: bottles, batches at the bench, pieces on the shelf. It must agree with what the year's flows leave.</summary>
/// <param name="Materials">What is left in bottles and packets.</param>
/// <param name="AtTheBench">What went into batches that are still open.</param>
/// <param name="Pieces">The pieces on the shelf.</param>
public sealed record StockValue(decimal Materials, decimal AtTheBench, decimal Pieces)
{
    /// <summary>All of it.</summary>
    public decimal Whole => Materials + AtTheBench + Pieces;

    /// <summary>The stock as the books stand.</summary>
    public static StockValue Of(BooksSnapshot snapshot)
    {
        var costs = new LotCosts(snapshot);
        return new StockValue(
            snapshot.Receipts.Sum(r => snapshot.Left(r) * LotCosts.Each(r)),
            snapshot.Batches.Where(b => snapshot.ClosingOf(b) is null).Sum(costs.Of),
            snapshot.Batches.Where(b => costs.Bearing(b) > 0).Sum(b => costs.Of(b) - costs.Of(b, 0, costs.Bearing(b) - snapshot.PiecesLeft(b))));
    }
}
