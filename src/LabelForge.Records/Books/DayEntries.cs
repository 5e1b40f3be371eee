namespace LabelForge.Records.Books;

/// <summary>Packaging or label sheets that a batch used up.</summary>
public sealed class PackingUse : BookEntry, IStockMove
{
    /// <summary>The batch's number.</summary>
    public required int BatchId { get; init; }

    /// <summary>The receipt it came from.</summary>
    public required int ReceiptId { get; init; }

    /// <summary>How many pieces; of label sheets, how many labels.</summary>
    public required decimal Used { get; init => field = Millionths.Down(value); }

    int? IStockMove.MovesOf => BatchId;

    int? IStockMove.MovesFrom => ReceiptId;

    decimal IStockMove.Amount => -Used;
}

/// <summary>What was counted or weighed on the shelf, where it differs from the books: from then on the count holds.</summary>
public sealed class StockCount : BookEntry, IStockMove
{
    /// <summary>The batch's number, for pieces.</summary>
    public int? BatchId { get; init; }

    /// <summary>The receipt's number, for material.</summary>
    public int? ReceiptId { get; init; }

    /// <summary>What is there: pieces, or grams of material.</summary>
    public required decimal Counted { get; init => field = Millionths.Down(value); }

    /// <summary>By how much that is more than the books had; less where it is below zero.</summary>
    public required decimal Difference { get; init => field = Millionths.Down(value); }

    int? IStockMove.MovesOf => BatchId;

    int? IStockMove.MovesFrom => ReceiptId;

    decimal IStockMove.Amount => Difference;

    bool IStockMove.OnlyTakes => false;

    void IStockMove.Move(BatchStock lot, int sign) => lot.Counted += sign * (int)Difference;
}

/// <summary>Pieces that somebody brought back.</summary>
public sealed class PiecesReturned : BookEntry, IStockMove
{
    /// <summary>The batch's number.</summary>
    public required int BatchId { get; init; }

    /// <summary>How many pieces.</summary>
    public required int Returned { get; init; }

    /// <summary>Of these, how many can be sold again and are on the shelf.</summary>
    public required int BackOnShelf { get; init; }

    /// <summary>Who brought them.</summary>
    public required string From { get; init; }

    /// <summary>What was paid back for all of them, sales tax included.</summary>
    public required decimal PaidBack { get; init; }

    /// <summary>Of what was paid back, the sales tax; null where the maker set no rate.</summary>
    public decimal? Tax { get; init; }

    /// <summary>How it was paid back, as <c>cash</c> or <c>card</c>; null where nobody said.</summary>
    public string? Payment { get; init; }

    /// <summary>Why they came back.</summary>
    public required string Reason { get; init; }

    int? IStockMove.MovesOf => BatchId;

    bool IStockMove.OnlyTakes => false;

    void IStockMove.Move(BatchStock lot, int sign)
    {
        lot.Returned += sign * Returned;
        lot.BackOnShelf += sign * BackOnShelf;
    }
}

/// <summary>What a day's table took: the box at its start and at its end, and what went past it.</summary>
public sealed class Takings : BookEntry
{
    /// <summary>Which market day, as its sales name it.</summary>
    public required string Place { get; init; }

    /// <summary>What lay in the box at the start.</summary>
    public required decimal Float { get; init; }

    /// <summary>What was counted in the box at the end.</summary>
    public required decimal Cash { get; init; }

    /// <summary>What the card reader says it took.</summary>
    public required decimal Card { get; init; }
}
