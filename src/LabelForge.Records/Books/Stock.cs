using LabelForge.Checks.Reading;

namespace LabelForge.Records.Books;

/// <summary>What is left of a bottle: kept with every entry that takes from it, in the same transaction.</summary>
/// <remarks>The database refuses a row whose <see cref="Left"/> is below zero.
/// <see cref="BooksCheck"/> holds all rows against the entries.</remarks>
public sealed class ReceiptStock
{
    /// <summary>The number on the bottle: that of the receipt as it was first written.</summary>
    public required int Bottle { get; init; }

    /// <summary>The receipt that stands for it.</summary>
    public required int ReceiptId { get; set; }

    /// <summary>The material's id.</summary>
    public required string Material { get; set; }

    /// <summary>The supplier's lot as it is looked for: in small letters, without accents, by <see cref="Sought"/>; null where
    /// none is known. Kept, since no two stores fold letters beyond ASCII alike.</summary>
    public string? SupplierLot { get; set; }

    /// <summary>How a supplier's lot is looked for, however it is typed.</summary>
    public static string? Sought(string? lot) => string.IsNullOrWhiteSpace(lot) ? null : FoldedText.Of(lot.Trim());

    /// <summary>Grams left, or pieces of packaging.</summary>
    public required decimal Left { get; set; }
}

/// <summary>What came of a batch and is left of it: kept with every entry that changes it, in the same transaction.</summary>
/// <remarks>The database refuses a row that leaves less than nothing, or lets pieces of an open batch leave.</remarks>
public sealed class BatchStock
{
    /// <summary>The batch's number as it was first written.</summary>
    public required int Number { get; init; }

    /// <summary>The batch that stands for it.</summary>
    public required int BatchId { get; set; }

    /// <summary>Its lot: no other batch that stands has it.</summary>
    public required string Lot { get; set; }

    /// <summary>How many closings it has: none while it is open, else one.</summary>
    public int Closings { get; set; }

    /// <summary>The pieces that came out, rejected ones too.</summary>
    public int Made { get; set; }

    /// <summary>Of these, the rejected ones.</summary>
    public int Rejected { get; set; }

    /// <summary>Sold and given.</summary>
    public int Sold { get; set; }

    /// <summary>Brought back.</summary>
    public int Returned { get; set; }

    /// <summary>Of those brought back, the ones on the shelf again.</summary>
    public int BackOnShelf { get; set; }

    /// <summary>Thrown away.</summary>
    public int Disposed { get; set; }

    /// <summary>By how much counts found more than the books had; less where it is below zero.</summary>
    public int Counted { get; set; }

    /// <summary>Good pieces in the house.</summary>
    public int Left { get; set; }

    /// <summary>What is left by the other figures.</summary>
    internal int Balance => Made - Rejected - Sold + BackOnShelf - Disposed + Counted;
}
