using LabelForge.Measures;

namespace LabelForge.Records.Books;

/// <summary>What may be asked of the books as they stand at one moment, corrections applied.</summary>
/// <remarks>
/// <see cref="BookQueries"/> asks the database for what is wanted and no more; <see cref="Ledger"/> has read everything, and is
/// what the other is held against.
/// </remarks>
public interface IBooks
{
    /// <summary>The correction that strikes an entry, or null where it stands.</summary>
    Correction? StruckBy(string list, int id);

    /// <summary>The entry that stands in the place of one: itself, or what corrections put instead; null where it was struck for good.</summary>
    int? Current(string list, int id);

    /// <summary>The number of an entry as it was first written: corrections do not change it.</summary>
    int First(string list, int id);

    /// <summary>An entry by its list and number, struck or not; null where there is none.</summary>
    BookEntry? Find(string list, int id);

    /// <summary>The number of a list's last entry, struck or not; null where it is empty.</summary>
    int? Last(string list);

    /// <summary>The batch that stands for a lot; null where none does.</summary>
    Batch? FindBatch(string lot);

    /// <summary>The lots of the last batches that stand, the last one last.</summary>
    IReadOnlyList<string> LastLots(int most);

    /// <summary>Whether any batch, struck ones too, has or had a code for its lot or for its pot.</summary>
    bool IsNumberTaken(string code);

    /// <summary>The receipt that stands for a bottle's number; null where there is none any more.</summary>
    Receipt? FindReceipt(int number);

    /// <summary>Whether a material is kept in stock: some of it was ever received. What was not, as tap water, has no lot.</summary>
    bool IsKept(string material);

    /// <summary>Grams (or pieces of packaging) left of a receipt that stands.</summary>
    decimal Left(Receipt receipt);

    /// <summary>The receipts of a material that have something left, first to expire first, then first come first.</summary>
    IEnumerable<(Receipt Receipt, decimal Left)> InStock(string material);

    /// <summary>The closing of a batch, or null while it is open.</summary>
    Closing? ClosingOf(Batch batch);

    /// <summary>Good pieces of a batch still in the house.</summary>
    int PiecesLeft(Batch batch);

    /// <summary>The lots of a product that can be sold from and what is left of each, the oldest first.</summary>
    IReadOnlyList<(Batch Batch, int Left)> LotsInStock(string recipe, string? variant);

    /// <summary>The batches that are still at the bench, in the order they were begun.</summary>
    IReadOnlyList<Batch> OpenBatches();

    /// <summary>The batches whose base was melted in one pot, in the order they were begun.</summary>
    IEnumerable<Batch> BatchesOfPot(string pot);

    /// <summary>What was weighed into a batch.</summary>
    IEnumerable<Weighing> WeighedInto(Batch batch);

    /// <summary>What went otherwise than planned in a batch.</summary>
    IEnumerable<Deviation> DeviationsOf(Batch batch);

    /// <summary>What of a batch was sold and given.</summary>
    IEnumerable<Sale> SalesOf(Batch batch);

    /// <summary>What of a batch was thrown away or taken back.</summary>
    IEnumerable<Disposal> DisposalsOf(Batch batch);

    /// <summary>What of a batch was brought back.</summary>
    IEnumerable<PiecesReturned> ReturnsOf(Batch batch);

    /// <summary>The counts of a batch's pieces.</summary>
    IEnumerable<StockCount> CountsOf(Batch batch);

    /// <summary>What packaging a batch used up.</summary>
    IEnumerable<PackingUse> PackedInto(Batch batch);

    /// <summary>The printings of labels with a lot that stand, the first one first.</summary>
    IReadOnlyList<Printing> PrintingsOf(string lot);

    /// <summary>The sales of a ticket that stand.</summary>
    IReadOnlyList<Sale> SalesOfTicket(string ticket);

    /// <summary>The tickets that begin so, struck sales' too.</summary>
    IReadOnlyList<string> TicketsOf(string beginning);
}

/// <summary>What is asked of any books in the same words.</summary>
public static class BookQuestions
{
    extension(IBooks books)
    {
        /// <summary>What stands on the bottle of a receipt: M and the number that it was first given, whatever was corrected since.</summary>
        public string Bottle(int receiptId) => FormattableString.Invariant($"M{books.First(BookLists.Receipt, receiptId)}");

        /// <summary>The receipt that stands for a bottle's number.</summary>
        /// <exception cref="InputException">There is none, or it was struck for good.</exception>
        public Receipt ReceiptOf(int number) => books.FindReceipt(number)
            ?? throw new InputException(new Problem(null, 0,
                FormattableString.Invariant($"There is no M{number}{(books.StruckBy(BookLists.Receipt, number) is { } c ? $" any more: {c.Reason}" : "")}."),
                "See the lots in the house: labelforge stock-in-hand")
            { Code = "material-lot.unknown" });

        /// <summary>The batch of a lot code.</summary>
        /// <exception cref="InputException">No batch has that lot.</exception>
        public Batch BatchOf(string lot)
        {
            if (books.FindBatch(lot) is { } batch)
                return batch;
            var none = books.Last(BookLists.Batch) is null;
            throw new InputException(new Problem(null, 0, $"No batch has the lot {lot}.",
                none ? "Begin one with: labelforge batch start RECIPE" : $"The last lots are {string.Join(", ", books.LastLots(5))}.")
            { Code = none ? "batches.none" : null });
        }

        /// <summary>The batch that an entry belongs to, as it stands; null where it was struck.</summary>
        public int? BatchNow(int? batchId) => batchId is { } id ? books.Current(BookLists.Batch, id) : null;
    }
}
