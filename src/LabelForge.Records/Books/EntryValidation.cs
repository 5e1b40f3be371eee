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
                Need(p.Spoiled >= 0 && p.Spoiled <= p.Labels, $"{p.Spoiled} of {p.Labels} labels cannot have come out badly.", "Write how many of those printed were thrown away.", code: "printing.spoiled-more");
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
                Tax(s.Tax, s.Paid);
                Named(s.Payment, "payment");
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
            case Attachment a:
                Need(AttachmentKinds.What(a.Kind) is not null, $"\"{a.Kind}\" is no kind of paper.", $"Write one of: {AttachmentKinds.Listed}.", code: "attachment.kind");
                Need(a.Digest.Length == 64 && a.Digest.All(char.IsAsciiHexDigitLower), "That is no digest.", "Write the 64 figures of the SHA-256, as the books have them.");
                Need(!(a.BestBefore < a.Issued), "It ends to hold before it was issued.", "Write the days as they stand on it.", code: "attachment.days");
                Text(a.FileName, "file");
                Text(a.About, "about");
                break;
            case PackingUse u:
                Need(u.Used is > 0 and <= Largest, "Nothing was used.", "Write how many pieces, above zero.");
                break;
            case StockCount c:
                Need((c.BatchId is null) != (c.ReceiptId is null), "A count is of a lot or of a material.", "Write the lot, or the material lot (M3).");
                Need(c.Counted is >= 0 and <= Largest && c.Difference != 0, "A count that agrees with the books needs no entry.", "Write what is there, where it differs from the books.");
                Need(c.BatchId is null || (c.Counted == Math.Floor(c.Counted) && c.Difference == Math.Floor(c.Difference)), "Pieces are counted in whole numbers.", "Write a whole number.");
                break;
            case PiecesReturned r:
                Need(r.Returned > 0 && r.BackOnShelf >= 0 && r.BackOnShelf <= r.Returned, $"Of {r.Returned} pieces, {r.BackOnShelf} cannot be back on the shelf.", "Write how many came back, and how many of these can be sold again.", code: "return.more-back");
                Need(r.PaidBack is >= 0 and <= Largest, "What was paid back is nothing or more.", "Write a sum with at most two decimals: 9.50");
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
                    Need(sum is >= 0 and <= Largest, "A sum of money is nothing or more.", "Write a sum with at most two decimals: 40.00");
                    Cents(sum);
                }
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

    private static void Tax(decimal? tax, decimal paid)
    {
        if (tax is not { } sum)
            return;
        Need(sum >= 0 && sum <= paid, FormattableString.Invariant($"The sales tax in {paid} cannot be {sum}."), "Write the part of what was paid that is sales tax.");
        Cents(sum);
    }

    private static void Named(string? text, string field)
    {
        if (text is not null)
            Text(text, field);
    }

    private static void Text(string? text, string field) => Need(text is not null && text.Trim().Length is > 0 and <= LongestText, $"\"{field}\" is empty or too long.", $"Write {field} in a few words.");

    private static void Need(bool holds, string wrong, string write, string? code = null)
    {
        if (!holds)
            throw new InputException(new Problem(null, 0, wrong, write) { Code = code });
    }
}
