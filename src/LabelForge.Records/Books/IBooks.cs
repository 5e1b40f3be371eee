namespace LabelForge.Records.Books;

/// <summary>The entries of books as they stand in one transaction, corrections applied, by their numbers and lots.</summary>
public interface IEntries
{
    /// <summary>The correction that strikes an entry, or null where it stands.</summary>
    Correction? StruckBy(string list, int id);

    /// <summary>The entry that stands in the place of one: itself, or what corrections put
    /// instead; null where it was struck for good.</summary>
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

    /// <summary>The receipt that stands for a bottle's number; null where there is none any more.</summary>
    Receipt? FindReceipt(int number);
}

/// <summary>What may be asked of the books as they stand in one transaction, corrections applied.</summary>
/// <remarks><see cref="BookQueries"/> asks the database for what is wanted and no more.</remarks>
public partial interface IBooks : IEntries
{
    /// <summary>A page of a list: its last entries before a number, struck ones too, the first one first.</summary>
    /// <param name="before">The number that the page ends before; null for the end of the list.</param>
    /// <param name="most">How many entries at most.</param>
    IReadOnlyList<BookEntry> Page(string list, int? before, int most);

    /// <summary>Whether any batch, struck ones too, has or had a code for its lot or for its pot.</summary>
    bool IsNumberTaken(string code);

    /// <summary>Whether a material is kept in stock: some of it was ever received. What was not, as tap water, has no lot.</summary>
    bool IsKept(string material);

    /// <summary>Grams (or pieces of packaging) left of a receipt that stands.</summary>
    decimal Left(Receipt receipt);

    /// <summary>The day a bottle was opened: that of the first weighing out of it that stands; null where nothing was taken.</summary>
    DateOnly? OpenedOn(Receipt receipt);

    /// <summary>The receipts of a material that have something left, first to expire first, then first come first.</summary>
    IEnumerable<(Receipt Receipt, decimal Left)> InStock(string material);

    /// <summary>All receipts that have something left, by material, first to expire first.</summary>
    IReadOnlyList<(Receipt Receipt, decimal Left)> InStock();

    /// <summary>The ids of the materials that are kept in stock, in their order.</summary>
    IReadOnlyList<string> KeptMaterials();

    /// <summary>The batches that have pieces in the house, the first begun first; without what they froze.</summary>
    IReadOnlyList<(Batch Batch, int Left)> LotsInStock();

    /// <summary>The batches begun on a day or after it that are open or have pieces in the house; without what they froze.</summary>
    IReadOnlyList<LotInHand> LotsInHand(DateOnly from);

    /// <summary>Every product that was ever made, and the pieces of it in the house.</summary>
    IReadOnlyList<ProductMade> ProductsMade();

    /// <summary>The day of the first printing of labels, struck ones too; null where there is none.</summary>
    DateOnly? FirstPrinting();

    /// <summary>The complaints that stand of which the maker was told on a day or after it, or
    /// which are to be reported on it or after it.</summary>
    IReadOnlyList<Complaint> ComplaintsSince(DateOnly day);

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

    /// <summary>The last batch of a product that stands, with what it froze; null where there is none.</summary>
    Batch? LastBatch(string recipe, string? variant);

    /// <summary>What the books know of a product over all its batches.</summary>
    ProductHistory HistoryOf(string recipe, string? variant);

    /// <summary>What is attached to something and stands, the first one first.</summary>
    /// <param name="about">What it belongs to, as <see cref="AttachedTo"/> writes it.</param>
    IReadOnlyList<Attachment> AttachmentsOf(string about);

    /// <summary>Every attachment that stands.</summary>
    IReadOnlyList<Attachment> Attachments();

    /// <summary>The sales and gifts of a day that stand.</summary>
    IReadOnlyList<Sale> SalesOn(DateOnly day);

    /// <summary>What was brought back on a day.</summary>
    IReadOnlyList<PiecesReturned> ReturnsOn(DateOnly day);

    /// <summary>The takings of a day.</summary>
    IReadOnlyList<Takings> TakingsOn(DateOnly day);

    /// <summary>The batches that were begun on a day; without what they froze.</summary>
    IReadOnlyList<Batch> BatchesOn(DateOnly day);

    /// <summary>The last who bought or was given pieces, the last one last.</summary>
    IReadOnlyList<string> LastBuyers(int most);

    /// <summary>The ticket of the last sale over the table that stands; null where there is none.</summary>
    string? LastTicket();

    /// <summary>The number of the last print run, struck ones too; 0 where there is none.</summary>
    int LastRun();

    /// <summary>The printings of a run that stand, the first one first.</summary>
    IReadOnlyList<Printing> PrintingsOfRun(int run);

    /// <summary>The printings of a day that stand, the first one first.</summary>
    IReadOnlyList<Printing> PrintingsOn(DateOnly day);

    /// <summary>The numbers of the last pots of which a batch stands, the last one first.</summary>
    IReadOnlyList<string> LastPots(int most);

    /// <summary>What was sold and brought back of each product, from a day to a day, both counted.</summary>
    IReadOnlyList<ProductSold> SoldBetween(DateOnly from, DateOnly to);

    /// <summary>The corrections that strike entries of a list whose numbers lie between two, by the number that they strike.</summary>
    IReadOnlyDictionary<int, Correction> StruckIn(string list, int first, int last);

    /// <summary>The lots of batches, struck ones too, and what is left of each, by the batches' numbers.</summary>
    IReadOnlyDictionary<int, (string Lot, int Left)> LotsOf(IReadOnlyCollection<int> batches);

    /// <summary>The tickets of a day's sales, struck ones' too.</summary>
    IReadOnlyList<string> TicketsOn(DateOnly day);
}

/// <summary>A batch as it stands: at the bench, or what is left of it.</summary>
/// <param name="Batch">The batch; without what it froze.</param>
/// <param name="Open">Whether it is still at the bench.</param>
/// <param name="Good">The pieces that came out and can be sold; 0 while it is open.</param>
/// <param name="Left">Of these, the ones in the house.</param>
/// <param name="Printed">The labels printed with its lot, without those thrown away.</param>
public sealed record LotInHand(Batch Batch, bool Open, int Good, int Left, int Printed);

/// <summary>A product that was ever made.</summary>
/// <param name="Recipe">The recipe's id.</param>
/// <param name="Variant">The variant; null for none.</param>
/// <param name="Product">What it was called the last time.</param>
/// <param name="Left">Pieces of it in the house.</param>
public sealed record ProductMade(string Recipe, string? Variant, string Product, int Left);

/// <summary>What is asked of any entries in the same words.</summary>
public static class BookQuestions
{
    extension(IEntries books)
    {
        /// <summary>What stands on the bottle of a receipt: M and the number that it was first
        /// given, whatever was corrected since.</summary>
        public string Bottle(int receiptId) => Invariant($"M{books.First(BookLists.Receipt, receiptId)}");

        /// <summary>The receipt that stands for a bottle's number.</summary>
        /// <exception cref="InputException">There is none, or it was struck for good.</exception>
        public Receipt ReceiptOf(int number) => books.FindReceipt(number)
            ?? throw (books.StruckBy(BookLists.Receipt, number) is { } struck
                ? new InputException("material-lot.struck", ("number", number), ("reason", struck.Reason))
                : new InputException("material-lot.unknown", ("number", number)));

        /// <summary>The batch of a lot code.</summary>
        /// <exception cref="InputException">No batch has that lot.</exception>
        public Batch BatchOf(string lot)
        {
            if (books.FindBatch(lot) is { } batch)
                return batch;
            throw books.Last(BookLists.Batch) is null
                ? new InputException("lot.no-batches", ("lot", lot))
                : new InputException("lot.of-no-batch", ("lot", lot), ("last", string.Join(", ", books.LastLots(5))));
        }

        /// <summary>The batch that an entry belongs to, as it stands; null where it was struck.</summary>
        public int? BatchNow(int? batchId) => batchId is { } id ? books.Current(BookLists.Batch, id) : null;
    }
}
