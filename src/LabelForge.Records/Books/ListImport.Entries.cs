using LabelForge.Records.Spreadsheets;

namespace LabelForge.Records.Books;

public static partial class ListImport
{
    private static BookEntry Entry(string list, ListRow row, BooksSnapshot snapshot, FrozenFiles frozen, DateOnly usualDay, string usualBy,
        Workshop? workshop)
    {
        var (id, on, by, note) = (row.Whole("number") ?? 0, row.Day("on") ?? usualDay, row.Text("by") ?? usualBy, row.Text("note"));
        int? Batch() =>
        row.Whole("batch")
            ?? (row.Text("lot") is { } lot
                ? snapshot.BatchOf(Lots.LotCode.Parse(lot) is { IsValue: true } code ? code.Value.ToString() : lot).Id
                : null);
        int BatchNeeded() => Batch() ?? throw row.Refuse("import.lot-empty");
        int? Receipt() => row.Whole("receipt") ?? (row.Text("material lot") is { } bottle
            ? int.TryParse(bottle.TrimStart('M', 'm'), out var number)
                ? snapshot.ReceiptOf(number).Id
                : throw row.Refuse("import.not-a-material-lot", ("bottle", bottle))
            : null);
        return list switch
        {
            BookLists.Receipt => ReceiptOf(row, workshop, id, on, by),
            BookLists.Batch =>
                new Batch
                {
                    Id = id,
                    On = on,
                    By = by,
                    Note = note,
                    Lot = row.Needed("lot"),
                    Recipe = row.Needed("recipe"),
                    Product = row.Needed("product"),
                    PiecesPlanned = row.Need(row.Whole("pieces planned"), "pieces planned"),
                    Frozen = frozen.Of(row),
                    Pot = row.Text("pot"),
                },
            BookLists.Printing =>
                new Printing
                {
                    Id = id,
                    On = on,
                    By = by,
                    Note = note,
                    Lot = row.Needed("lot"),
                    Recipe = row.Needed("recipe"),
                    Variant = row.Text("variant"),
                    Product = row.Needed("product"),
                    Labels = row.Need(row.Whole("labels"), "labels"),
                    Spoiled = row.Whole("spoiled") ?? 0,
                    Run = row.Whole("run"),
                    Stock = row.Text("stock"),
                    Places = row.Text("places"),
                    Drawing = row.Text("drawing"),
                },
            BookLists.Weighing =>
                new Weighing
                {
                    Id = id,
                    On = on,
                    By = by,
                    Note = note,
                    BatchId = BatchNeeded(),
                    Material = row.Needed("material"),
                    ReceiptId = Receipt(),
                    Grams = row.Need(row.Grams("grams"), "grams"),
                },
            BookLists.Deviation =>
                new Deviation { Id = id, On = on, By = by, Note = note, BatchId = BatchNeeded(), What = row.Needed("what") },
            BookLists.Closing =>
                new Closing
                {
                    Id = id,
                    On = on,
                    By = by,
                    Note = note,
                    BatchId = BatchNeeded(),
                    Made = row.Need(row.Whole("made"), "made"),
                    Rejected = row.Whole("rejected") ?? 0,
                    YieldGrams = row.Grams("yield g"),
                },
            BookLists.Sale =>
                new Sale
                {
                    Id = id,
                    On = on,
                    By = by,
                    Note = note,
                    BatchId = BatchNeeded(),
                    Pieces = row.Need(row.Whole("pieces"), "pieces"),
                    To = row.Needed("to"),
                    Paid = row.Need(row.Figure("paid"), "paid"),
                    Tax = row.Figure("tax"),
                    Payment = row.Text("payment"),
                    Ticket = row.Text("ticket"),
                },
            BookLists.Complaint =>
                new Complaint
                {
                    Id = id,
                    On = on,
                    By = by,
                    Note = note,
                    BatchId = Batch(),
                    From = row.Needed("from"),
                    What = row.Needed("what"),
                    Serious = row.Text("serious") is "yes",
                    ReportBy = row.Day("report by"),
                    KeepUntil = row.Need(row.Day("keep until"), "keep until"),
                },
            BookLists.Disposal =>
                new Disposal
                {
                    Id = id,
                    On = on,
                    By = by,
                    Note = note,
                    BatchId = Batch(),
                    ReceiptId = Receipt(),
                    Amount = row.Need(row.Grams("amount"), "amount"),
                    Reason = row.Needed("reason"),
                },
            BookLists.Packing =>
                new PackingUse
                {
                    Id = id,
                    On = on,
                    By = by,
                    Note = note,
                    BatchId = BatchNeeded(),
                    ReceiptId = Receipt() ?? throw row.Refuse("import.material-lot-empty"),
                    Used = row.Need(row.Figure("used"), "used"),
                },
            BookLists.Count =>
                new StockCount
                {
                    Id = id,
                    On = on,
                    By = by,
                    Note = note,
                    BatchId = Batch(),
                    ReceiptId = Receipt(),
                    Counted = row.Need(row.Figure("counted"), "counted"),
                    Difference = row.Need(row.Signed("difference"), "difference"),
                },
            BookLists.Return =>
                new PiecesReturned
                {
                    Id = id,
                    On = on,
                    By = by,
                    Note = note,
                    BatchId = BatchNeeded(),
                    Returned = row.Need(row.Whole("returned"), "returned"),
                    BackOnShelf = row.Whole("back on shelf") ?? 0,
                    From = row.Needed("from"),
                    PaidBack = row.Need(row.Figure("paid back"), "paid back"),
                    Tax = row.Figure("tax"),
                    Payment = row.Text("payment"),
                    Reason = row.Needed("reason"),
                },
            BookLists.Takings =>
                new Takings
                {
                    Id = id,
                    On = on,
                    By = by,
                    Note = note,
                    Place = row.Needed("place"),
                    Float = row.Need(row.Figure("float"), "float"),
                    Cash = row.Need(row.Figure("cash"), "cash"),
                    Card = row.Need(row.Figure("card"), "card"),
                },
            BookLists.Attachment =>
                new Attachment
                {
                    Id = id,
                    On = on,
                    By = by,
                    Note = note,
                    About = row.Needed("about"),
                    Kind = row.Needed("kind"),
                    FileName = row.Needed("file"),
                    Digest = row.Needed("digest"),
                    Revision = row.Text("revision"),
                    Issued = row.Day("issued"),
                    BestBefore = row.Day("holds until"),
                },
            _ =>
                new Correction
                {
                    Id = id,
                    On = on,
                    By = by,
                    Note = note,
                    List = BookLists.All.Contains(row.Needed("list"))
                    ? row.Needed("list")
                    : throw row.Refuse("books.no-such-list", ("list", row.Needed("list")), ("list-2", string.Join(", ", BookLists.All))),
                    EntryId = row.Need(row.Whole("entry"), "entry"),
                    InsteadId = row.Whole("instead"),
                    Reason = row.Needed("reason"),
                },
        };
    }
}
