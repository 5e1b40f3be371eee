using LabelForge.Measures;

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
        switch (entry)
        {
            case Receipt r:
                Need(r.Amount is > 0 and <= Largest && r.Price is >= 0 and <= Largest, "An amount is above nothing, and a price not below.", "Write what came in and what all of it cost: labelforge receive castor-oil \"16 fl oz\" --price 9.50", code: "receipt.nothing");
                Cents(r.Price);
                break;
            case Batch b:
                Need(Lots.LotCode.Parse(b.Lot).IsValue, $"\"{b.Lot}\" is not a lot code.", "Make one with: labelforge lot new", code: "lot.not-a-code");
                Need(b.PiecesPlanned > 0, "A batch has at least one piece.", "Write a whole number above zero.");
                break;
            case Printing p:
                Need(Lots.LotCode.Parse(p.Lot).IsValue, $"\"{p.Lot}\" is not a lot code.", "Make one with: labelforge lot new", code: "lot.not-a-code");
                Need(p.Labels > 0, "A printing is of at least one label.", "Write a whole number above zero.");
                Text(p.Recipe, "recipe");
                Text(p.Product, "product");
                break;
            case Weighing w:
                Need(w.Grams is > 0 and <= Largest, "Nothing was weighed.", "Write what the scale showed, in grams or another unit of mass.");
                break;
            case Closing c:
                Need(c.Made >= 0 && c.Rejected >= 0 && c.Rejected <= c.Made, $"{c.Rejected} of {c.Made} pieces cannot be rejected.", "Write --made with all pieces that came out, and --rejected with those of them that are not sold.", code: "closing.rejected-more");
                Need(c.YieldGrams is null or > 0, "A yield is above nothing.", "Weigh all pieces together and write it, or leave --yield out.", code: "closing.no-yield");
                break;
            case Sale s:
                Need(s.Pieces > 0 && s.Paid is >= 0 and <= Largest, "A sale is of one piece or more, for nothing or more.", "Write how many, and what was paid for all of them: --paid 12.00", code: "sale.nothing");
                Text(s.To, "to");
                Cents(s.Paid);
                break;
            case Complaint c:
                Text(c.From, "from");
                Text(c.What, "what");
                break;
            case Deviation d:
                Text(d.What, "what");
                break;
            case Disposal d:
                Need(d.Amount is > 0 and <= Largest, "Nothing was thrown away.", "Write how much, above zero.");
                Need((d.BatchId is null) != (d.ReceiptId is null), "A disposal is of a lot or of a material.", "Write the lot, or the material lot (M3).");
                Need(d.BatchId is null || d.Amount == Math.Floor(d.Amount), "Pieces are counted in whole numbers.", "Write a whole number.");
                Text(d.Reason, "reason");
                break;
            case Correction c:
                Text(c.Reason, "reason");
                break;
        }
        Text(entry.By, "by");
        Need(entry.Note is not { Length: > LongestText }, "The note is longer than a book.", "Keep the paper as a file, and write where it lies.");
    }

    /// <summary>Refuses a sum of money finer than hundredths.</summary>
    private static void Cents(decimal money) => Need(money == Math.Round(money, 2), FormattableString.Invariant($"{money} is finer than a cent."), "Write a sum with at most two decimals: 9.50");

    private static void Text(string? text, string field) => Need(text is not null && text.Trim().Length is > 0 and <= LongestText, $"\"{field}\" is empty or too long.", $"Write {field} in a few words.");

    private static void Need(bool holds, string wrong, string write, string? code = null)
    {
        if (!holds)
            throw new InputException(new Problem(null, 0, wrong, write) { Code = code });
    }
}
