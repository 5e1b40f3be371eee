using System.Diagnostics.CodeAnalysis;

namespace LabelForge.Records.Books;

/// <summary>An entry in the books. It is never changed; a <see cref="Correction"/> strikes it and says why.</summary>
[DynamicallyAccessedMembers(DynamicallyAccessedMemberTypes.PublicProperties)]
public abstract class BookEntry
{
    /// <summary>Its number in its list.</summary>
    public int Id { get; init; }

    /// <summary>The calendar date of what happened.</summary>
    public required DateOnly On { get; init; }

    /// <summary>Who did it.</summary>
    public required string By { get; init; }

    /// <summary>A note, or where a paper or picture lies.</summary>
    public string? Note { get; init; }

    /// <summary>When it was written into the books, in UTC to the second, by the clock of the
    /// file's machine or of the server; null where an older version wrote it.</summary>
    public DateTime? WrittenAt { get; internal set; }
}

/// <summary>A material that came in: one supplier's lot. On the bench it is called M and its number.</summary>
public sealed class Receipt : BookEntry
{
    /// <summary>The material's id in the workshop.</summary>
    public required string Material { get; init; }

    /// <summary>Who sold it.</summary>
    public string? Supplier { get; init; }

    /// <summary>The supplier's own lot, as on the bottle.</summary>
    public string? SupplierLot { get; init; }

    /// <summary>How much: grams, or pieces of packaging; up to the next millionth.</summary>
    public required decimal Amount { get; init => field = Millionths.Up(value); }

    /// <summary>What was paid for all of it, in the workshop's currency.</summary>
    public required decimal Price { get; init; }

    /// <summary>Best before, where the paper says.</summary>
    public DateOnly? BestBefore { get; init; }

    /// <summary>Where its certificate lies.</summary>
    public string? Certificate { get; init; }
}

/// <summary>Labels printed with a lot: from then on the lot is that product's, whether its batch was begun or not.</summary>
public sealed class Printing : BookEntry
{
    /// <summary>The lot code on the labels.</summary>
    public required string Lot { get; init; }

    /// <summary>The recipe's id.</summary>
    public required string Recipe { get; init; }

    /// <summary>The variant's name; null for a recipe without variants.</summary>
    public string? Variant { get; init; }

    /// <summary>The product's name on the labels.</summary>
    public required string Product { get; init; }

    /// <summary>How many labels.</summary>
    public required int Labels { get; init; }

    /// <summary>The print run that they came out of, from 1; null where it was not kept.</summary>
    public int? Run { get; init; }

    /// <summary>The label stock; null where it was not kept.</summary>
    public string? Stock { get; init; }

    /// <summary>Where on the sheets they stand, as <c>A:5-10 B:1-2</c>; null where it was not kept.</summary>
    public string? Places { get; init; }

    /// <summary>What the label looked like, as the SHA-256 of its drawing; null where it was not kept.</summary>
    public string? Drawing { get; init; }

    /// <summary>Of these, how many came out badly and were thrown away.</summary>
    public int Spoiled { get; init; }
}

/// <summary>An amount weighed into a batch, and out of which material lot.</summary>
public sealed class Weighing : BookEntry, IStockMove
{
    /// <summary>The batch's number.</summary>
    public required int BatchId { get; init; }

    /// <summary>The material's id.</summary>
    public required string Material { get; init; }

    /// <summary>The receipt it came from; null where the material is not kept in stock (tap water).</summary>
    public int? ReceiptId { get; init; }

    /// <summary>The mass in grams, down to the last whole microgram.</summary>
    public required decimal Grams { get; init => field = Millionths.Down(value); }

    int? IStockMove.MovesOf => BatchId;

    int? IStockMove.MovesFrom => ReceiptId;

    decimal IStockMove.Amount => -Grams;
}

/// <summary>What happened otherwise than planned.</summary>
public sealed class Deviation : BookEntry
{
    /// <summary>The batch's number.</summary>
    public required int BatchId { get; init; }

    /// <summary>What happened, and what was done.</summary>
    public required string What { get; init; }
}

/// <summary>A batch finished: the lot that can be sold.</summary>
public sealed class Closing : BookEntry, IStockMove
{
    /// <summary>The batch's number.</summary>
    public required int BatchId { get; init; }

    /// <summary>The pieces that came out, rejected ones too.</summary>
    public required int Made { get; init; }

    /// <summary>Of these, the rejected ones.</summary>
    public required int Rejected { get; init; }

    /// <summary>What all pieces weigh together in grams, where weighed, down to the microgram: the rest was lost in the pot.</summary>
    public decimal? YieldGrams { get; init => field = value is { } grams ? Millionths.Down(grams) : null; }

    int? IStockMove.MovesOf => BatchId;

    bool IStockMove.OnlyTakes => false;

    void IStockMove.Move(BatchStock lot, int sign)
    {
        lot.Closings += sign;
        lot.Made += sign * Made;
        lot.Rejected += sign * Rejected;
    }
}

/// <summary>Pieces that left: sold or given.</summary>
public sealed class Sale : BookEntry, IStockMove
{
    /// <summary>The batch's number.</summary>
    public required int BatchId { get; init; }

    /// <summary>How many pieces.</summary>
    public required int Pieces { get; init; }

    /// <summary>To whom, or which market day.</summary>
    public required string To { get; init; }

    /// <summary>What was paid for all of them, sales tax included; 0 for a gift.</summary>
    public required decimal Paid { get; init; }

    /// <summary>Of what was paid, the sales tax; null where the maker set no rate.</summary>
    public decimal? Tax { get; init; }

    /// <summary>How it was paid, as <c>cash</c> or <c>card</c>; null where nobody said.</summary>
    public string? Payment { get; init; }

    /// <summary>What tells that several products went to one buyer in one go; null where one went by itself.</summary>
    public string? Ticket { get; init; }

    int? IStockMove.MovesOf => BatchId;

    bool IStockMove.OnlyTakes => false;

    void IStockMove.Move(BatchStock lot, int sign) => lot.Sold += sign * Pieces;
}

/// <summary>A complaint or an adverse event.</summary>
public sealed class Complaint : BookEntry
{
    /// <summary>The batch's number, where the lot is known.</summary>
    public int? BatchId { get; init; }

    /// <summary>Who told of it.</summary>
    public required string From { get; init; }

    /// <summary>What they told.</summary>
    public required string What { get; init; }

    /// <summary>Whether it is serious in the sense of FD&amp;C Act, section 604(5).</summary>
    public required bool Serious { get; init; }

    /// <summary>The last day to report it; null where it need not be.</summary>
    public DateOnly? ReportBy { get; init; }

    /// <summary>The day until which the record must be kept.</summary>
    public required DateOnly KeepUntil { get; init; }

    /// <summary>The same with another last day of reporting.</summary>
    public Complaint With(DateOnly? reportBy) => new()
    {
        Id = Id,
        On = On,
        By = By,
        Note = Note,
        BatchId = BatchId,
        From = From,
        What = What,
        Serious = Serious,
        ReportBy = reportBy,
        KeepUntil = KeepUntil,
    };
}

/// <summary>Material or pieces thrown away or taken back.</summary>
public sealed class Disposal : BookEntry, IStockMove
{
    /// <summary>The batch's number, for pieces.</summary>
    public int? BatchId { get; init; }

    /// <summary>The receipt's number, for material.</summary>
    public int? ReceiptId { get; init; }

    /// <summary>Pieces, or grams of material down to the microgram.</summary>
    public required decimal Amount { get; init => field = Millionths.Down(value); }

    /// <summary>Why, and how.</summary>
    public required string Reason { get; init; }

    int? IStockMove.MovesOf => BatchId;

    int? IStockMove.MovesFrom => ReceiptId;

    decimal IStockMove.Amount => -Amount;

    bool IStockMove.OnlyTakes => false;

    void IStockMove.Move(BatchStock lot, int sign) => lot.Disposed += sign * (int)Amount;
}
