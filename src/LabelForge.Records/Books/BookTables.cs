namespace LabelForge.Records.Books;

/// <summary>The lists of the books as tables, for CSV and the screen. Struck entries stay in them, with what struck them.</summary>
/// <remarks>The last columns name by number what an entry hangs on, so that
/// <see cref="ListImport"/> can build the same books again.</remarks>
public static class BookTables
{
    /// <summary>How the moment is written at which an entry was: UTC, to the second.</summary>
    public const string WrittenAt = "yyyy-MM-dd HH:mm:ss'Z'";

    /// <summary>A whole list's heading and rows.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No such list.</exception>
    public static (IReadOnlyList<string> Heading, IReadOnlyList<IReadOnlyList<object?>> Rows) Of(IBooks books, string list) =>
        Of(books, list, books.Page(list, null, int.MaxValue));

    /// <summary>Some entries of a list, with its heading: a page of it.</summary>
    /// <param name="entries">The entries, all of that list.</param>
    /// <exception cref="ArgumentOutOfRangeException">No such list.</exception>
    public static (IReadOnlyList<string> Heading,
        IReadOnlyList<IReadOnlyList<object?>> Rows) Of(IBooks books, string list, IReadOnlyList<BookEntry> entries)
    {
        var kind = EntryKind.Of(list) ?? throw new ArgumentOutOfRangeException(nameof(list), list, "No such list.");
        int? Hanging(BookEntry entry, string heading) =>
            kind.HangsOn.FirstOrDefault(h => h.Heading == heading)?.Field!.GetValue(entry) as int?;
        int? BatchOf(BookEntry entry) => entry is Batch ? entry.Id : Hanging(entry, "batch");
        int? ReceiptOf(BookEntry entry) => entry is Receipt ? entry.Id : Hanging(entry, "receipt");
        // What a page asks of others is asked once for all its rows.
        var lots = books.LotsOf([.. entries.Select(BatchOf).OfType<int>().Distinct()]);
        int[] receipts = [.. entries.Select(ReceiptOf).OfType<int>().Distinct()];
        var firsts = books.Firsts(BookLists.Receipt, receipts);
        var left = list == BookLists.Receipt ? books.LeftOf(receipts) : new Dictionary<int, decimal>();
        object? Cell(EntryColumn column, BookEntry entry) => column.Field is not null ? column.Cell(entry) : column.Heading switch
        {
            "lot" => BatchOf(entry) is { } id && lots.TryGetValue(id, out var known) ? known.Lot : "",
            "material lot" => ReceiptOf(entry) is { } id ? Invariant($"M{firsts.GetValueOrDefault(id, id)}") : null,
            "pieces left" => lots[entry.Id].Left,
            _ => left.GetValueOrDefault(entry.Id),
        };
        var struck = entries.Count == 0 ? new Dictionary<int, Correction>() : books.StruckIn(list, entries[0].Id, entries[^1].Id);
        return (
        ["number", "on", "by", .. kind.Columns.Select(c => c.Heading), "note", "written at", "struck by",
            .. kind.HangsOn.Select(c => c.Heading)],
        [.. entries.Select(e => (IReadOnlyList<object?>)[e.Id, e.On, e.By, .. kind.Columns.Select(c => Cell(c, e)), e.Note,
            e.WrittenAt?.ToString(WrittenAt, CultureInfo.InvariantCulture),
            struck.TryGetValue(e.Id, out var c) ? Invariant($"correction {c.Id}") : null,
            .. kind.HangsOn.Select(c => c.Cell(e))])]);
    }

    /// <summary>A whole list in pages, read in one transaction: what is held at once does not grow with the list.</summary>
    public static IEnumerable<IReadOnlyList<object?>> InPages(IBooks books, string list)
    {
        for (var first = 1; first <= (books.Last(list) ?? 0); first += OnAPage)
        {
            foreach (var row in Of(books, list, [.. books.Page(list, first + OnAPage, OnAPage).Where(e => e.Id >= first)]).Rows)
                yield return row;
        }
    }

    private const int OnAPage = 1000;
}
