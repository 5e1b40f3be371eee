using LabelForge.Records.Books;

namespace LabelForge.Years;

/// <summary>What lies in the house, valued thing by thing: bottles, batches at the bench, pieces
/// on the shelf. It must agree with what the year's flows leave.</summary>
/// <param name="Materials">What is left in bottles and packets.</param>
/// <param name="AtTheBench">What went into batches that are still open.</param>
/// <param name="Pieces">The pieces on the shelf.</param>
public sealed record StockValue(decimal Materials, decimal AtTheBench, decimal Pieces)
{
    /// <summary>All of it.</summary>
    public decimal Whole => Materials + AtTheBench + Pieces;

    /// <summary>The stock as the books stand.</summary>
    public static StockValue Of(IBooks books)
    {
        var costs = new LotCosts(books);
        return new StockValue(
            books.Each<Receipt>().Sum(r => books.Left(r) * LotCosts.Each(r)),
            books.OpenBatches().Sum(costs.Of),
            books.Each<Batch>().Where(b => costs.Bearing(b) > 0)
                .Sum(b => costs.Of(b) - costs.Of(b, 0, costs.Bearing(b) - books.PiecesLeft(b))));
    }
}
