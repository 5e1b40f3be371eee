namespace LabelForge.Records.Books;

/// <summary>Receipts out of a CSV, as <c>labelforge books receipt</c> writes them or as a maker types them: rows as
/// <see cref="ListImport"/> reads them, each for an entry of its own.</summary>
/// <param name="Rows">The receipts, and the line of each; struck lines are left out.</param>
public sealed record ReceiptList(IReadOnlyList<(Receipt Receipt, int Line)> Rows)
{
    // A list that is read twice by mistake is read again soon.
    private const int LookedBackOn = 1000;

    /// <summary>Reads a list whole; nothing is written.</summary>
    /// <exception cref="InputException">Something in it cannot be read, with its line.</exception>
    public static ReceiptList Read(string path, Workshop workshop, DateOnly on, string by) =>
        new(ListImport.Receipts(path, workshop, on, by));

    /// <summary>What looks like a slip, row by row: as of a single receipt, and rows that the books hold already.</summary>
    /// <param name="today">The day it is written.</param>
    public ImmutableArray<Problem> Slips(IBooks books, Workshop workshop, DateOnly today)
    {
        var had = books.BottlesWith([], [], LookedBackOn).ToList();
        var asked = ImmutableArray.CreateBuilder<Problem>();
        foreach (var (receipt, line) in Rows)
        {
            foreach (var slip in Books.Slips.OfReceipt(receipt, workshop.Material(receipt.Material, "the list", line), today))
                asked.Add(new Problem("slip.in-line", ("line", line), ("inner", slip)));
            if (had.FirstOrDefault(h => ListImport.SaysTheSame(h, receipt, nameof(BookEntry.Id))) is not { } same)
                continue;
            had.Remove(same);
            asked.Add(new Problem("slip.same-in-books", ("line", line), ("bottle", books.Bottle(same.Id))));
        }
        return asked.ToImmutable();
    }

    /// <summary>Writes them all, or none.</summary>
    /// <returns>The entries, numbered.</returns>
    public IReadOnlyList<Receipt> Write(OpenBooks book) => book.Write((_, context) =>
    {
        Receipt[] all = [.. Rows.Select(r => r.Receipt)];
        context.Receipts.AddRange(all);
        return all;
    });
}
