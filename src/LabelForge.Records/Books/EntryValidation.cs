namespace LabelForge.Records.Books;

/// <summary>What must hold of an entry by itself, however it came into the books: by a verb, a correction or a list.</summary>
internal static class EntryValidation
{
    private const int LongestText = 100_000;
    private const decimal Largest = 1_000_000_000m;

    /// <summary>Checks an entry.</summary>
    /// <exception cref="InputException">It cannot be.</exception>
    public static void Check(BookEntry entry)
    {
        InTheHouse(entry);
        WithPeople(entry);
        Text(entry.By, "by");
        Need(entry.Note is not { Length: > LongestText }, "books.note-longer");
    }

    private static void InTheHouse(BookEntry entry)
    {
        switch (entry)
        {
            case Receipt r:
                Need(r.Amount is > 0 and <= Largest && r.Price is >= 0 and <= Largest, "receipt.nothing");
                Cents(r.Price);
                break;
            case Batch b:
                Need(Lots.LotCode.Parse(b.Lot).IsValue, "lot.not-a-code", ("lot", b.Lot));
                Need(b.PiecesPlanned > 0, "books.batch-least-one");
                break;
            case Printing p:
                Need(Lots.LotCode.Parse(p.Lot).IsValue, "lot.not-a-code", ("lot", p.Lot));
                Need(p.Labels > 0, "books.printing-least-one");
                Need(p.Spoiled >= 0 && p.Spoiled <= p.Labels, "printing.spoiled-more-labels-cannot", ("spoiled", p.Spoiled),
                    ("labels", p.Labels));
                Text(p.Recipe, "recipe");
                Text(p.Product, "product");
                break;
            case Weighing w:
                Need(w.Grams is > 0 and <= Largest, "books.nothing-weighed");
                break;
            case Closing c:
                Need(c.Made >= 0 && c.Rejected >= 0 && c.Rejected <= c.Made, "closing.rejected-more", ("rejected", c.Rejected),
                    ("made", c.Made));
                Need(c.YieldGrams is null or > 0, "closing.no-yield");
                break;
            case Deviation d:
                Text(d.What, "what");
                break;
            case Disposal d:
                Need(d.Amount is > 0 and <= Largest, "books.nothing-thrown-away");
                Need((d.BatchId is null) != (d.ReceiptId is null), "books.disposal-lot");
                Need(d.BatchId is null || d.Amount == Math.Floor(d.Amount), "books.pieces-counted-whole-numbers");
                Text(d.Reason, "reason");
                break;
            case PackingUse u:
                Need(u.Used is > 0 and <= Largest, "books.nothing-used");
                break;
            case StockCount c:
                Need((c.BatchId is null) != (c.ReceiptId is null), "books.count-lot");
                Need(c.Counted is >= 0 and <= Largest && c.Difference != 0, "books.count-agrees-books");
                Need(c.BatchId is null || (c.Counted == Math.Floor(c.Counted) && c.Difference == Math.Floor(c.Difference)),
                    "books.pieces-counted-whole-numbers");
                break;
        }
    }

    private static void WithPeople(BookEntry entry)
    {
        switch (entry)
        {
            case Sale s:
                Need(s.Pieces > 0 && s.Paid is >= 0 and <= Largest, "sale.nothing-sale");
                Text(s.To, "to");
                Cents(s.Paid);
                Tax(s.Tax, s.Paid);
                Named(s.Payment, "payment");
                break;
            case Complaint c:
                Text(c.From, "from");
                Text(c.What, "what");
                break;
            case Attachment a:
                Need(AttachmentKinds.What(a.Kind) is not null, "attachment.kind", ("kind", a.Kind), ("listed", AttachmentKinds.Listed));
                Need(a.Digest.Length == 64 && a.Digest.All(char.IsAsciiHexDigitLower), "attachment.digest");
                Need(!(a.BestBefore < a.Issued), "attachment.days");
                Text(a.FileName, "file");
                Text(a.About, "about");
                break;
            case PiecesReturned r:
                Need(r.Returned > 0 && r.BackOnShelf >= 0 && r.BackOnShelf <= r.Returned, "return.more-back", ("returned", r.Returned),
                    ("back-on-shelf", r.BackOnShelf));
                Need(r.PaidBack is >= 0 and <= Largest, "books.what-paid-back-nothing");
                Cents(r.PaidBack);
                Tax(r.Tax, r.PaidBack);
                Text(r.From, "from");
                Text(r.Reason, "reason");
                Named(r.Payment, "payment");
                break;
            case Takings t:
                Text(t.Place, "place");
                foreach (var sum in (decimal[])[t.Float, t.Cash, t.Card])
                {
                    Need(sum is >= 0 and <= Largest, "books.sum-money-nothing");
                    Cents(sum);
                }
                break;
            case Correction c:
                Text(c.Reason, "reason");
                break;
        }
    }

    /// <summary>Refuses a sum of money finer than hundredths.</summary>
    private static void Cents(decimal money) => Need(money == Math.Round(money, 2), "books.finer-than-cent", ("money", money));

    private static void Tax(decimal? tax, decimal paid)
    {
        if (tax is not { } sum)
            return;
        Need(sum >= 0 && sum <= paid, "books.sales-tax-cannot", ("paid", paid), ("sum", sum));
        Cents(sum);
    }

    private static void Named(string? text, string field)
    {
        if (text is not null)
            Text(text, field);
    }

    private static void Text(string? text, string field) =>
        Need(text is not null && text.Trim().Length is > 0 and <= LongestText, "books.empty-or-too-long", ("field", field));

    private static void Need(bool holds, string code, params ReadOnlySpan<(string Name, object? Value)> arguments)
    {
        if (!holds)
            throw new InputException(code, arguments);
    }
}
