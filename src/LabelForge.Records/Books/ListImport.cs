using LabelForge.Records.Spreadsheets;

namespace LabelForge.Records.Books;

/// <summary>Reads lists back that <c>labelforge books</c> wrote, or that a maker typed in their columns.</summary>
/// <remarks>
/// A row with a number is that very entry: where the books have it, it must say the same; where they have not, it is added
/// under its number. A row without a number is a new entry, unless the books hold one already that says all of the same:
/// a list read twice adds nothing the second time, and one that says a thing twice adds it twice. All files are one moment:
/// all of it stands, or nothing.
/// </remarks>
public static partial class ListImport
{
    private static readonly string[] Common = ["number", "on", "by", "note", "written at", "struck by", "batch", "receipt", "lot",
        "material lot"];

    // What a list must have, which tells it from the others, and what else it may have.
    private static readonly (string List, string[] Needed, string[] Other)[] Shapes =
    [
        (BookLists.Receipt, ["material", "amount", "price"], ["supplier", "supplier lot", "best before", "certificate", "left"]),
        (BookLists.Batch, ["lot", "recipe", "product", "pieces planned", "frozen"], ["pieces left", "pot"]),
        (BookLists.Printing, ["lot", "recipe", "product", "labels"], ["variant", "spoiled", "run", "stock", "places", "drawing"]),
        (BookLists.Weighing, ["material", "grams"], []),
        (BookLists.Deviation, ["what"], []),
        (BookLists.Closing, ["made"], ["rejected", "yield g"]),
        (BookLists.Sale, ["pieces", "to", "paid"], ["tax", "payment", "ticket"]),
        (BookLists.Complaint, ["from", "what", "keep until"], ["serious", "report by"]),
        (BookLists.Disposal, ["amount", "reason"], []),
        (BookLists.Packing, ["used"], []),
        (BookLists.Count, ["counted", "difference"], []),
        (BookLists.Return, ["returned", "from", "paid back", "reason"], ["back on shelf", "tax", "payment"]),
        (BookLists.Takings, ["place", "float", "cash", "card"], []),
        (BookLists.Attachment, ["about", "kind", "file", "digest"], ["revision", "issued", "holds until"]),
        (BookLists.Correction, ["list", "entry", "reason"], ["instead"]),
    ];

    /// <summary>Reads files into the books.</summary>
    /// <param name="on">The date of rows that give none.</param>
    /// <param name="by">The person of rows that name none.</param>
    /// <returns>How many entries are new, and how many the books had already.</returns>
    /// <exception cref="InputException">Something cannot be read, or the books would not balance;
    /// with file and line where it is of one row.</exception>
    /// <param name="workshop">The workshop, so that new receipts name its materials and may give
    /// amounts in any unit; null where amounts are plain figures.</param>
    public static (int Added,
        int Known) ReadFiles(OpenBooks book, IReadOnlyList<string> paths, DateOnly on, string by, Workshop? workshop = null)
    {
        if (!WholeProgram.IsThis)
            throw new NeedsWholeProgramException();
        var lists = paths.Select(p => Read(p, TextTable.ReadFile(p))).ToArray();
        if (lists.GroupBy(l => l.List).FirstOrDefault(g => g.Count() > 1) is { } twice)
            throw new InputException(paths[^1], 0, "import.list-twice", ("name", twice.Key));
        return book.Take((before, context) =>
        {
            var snapshot = before;
            var frozen = new FrozenFiles(paths, before);
            var (added, known) = (0, 0);
            // What others hang on comes first.
            foreach (var (list, rows) in lists.OrderBy(l => Array.FindIndex(Shapes, s => s.List == l.List)))
            {
                var told = All(before, list).ToList();
                foreach (var row in rows)
                {
                    var entry = Entry(list, row, snapshot, frozen, on, by, workshop);
                    entry.WrittenAt = row.Time("written at");
                    if (entry.Id != 0 && Had(snapshot, list, entry.Id) is { } had)
                    {
                        if (!SaysTheSame(had, entry))
                            throw row.Refuse("import.books-another", ("list", list), ("entry", entry.Id));
                        known++;
                        told.Remove(had);
                        continue;
                    }
                    if (entry.Id == 0 && told.FirstOrDefault(t => SaysTheSame(t, entry, NotTold(row))) is { } same)
                    {
                        known++;
                        told.Remove(same);
                        continue;
                    }
                    Checked(entry, row);
                    context.Add((object)entry);
                    added++;
                }
                context.SaveChanges();
                snapshot = before.With([.. context.ChangeTracker.Entries<BookEntry>().Select(e => e.Entity)]);
            }
            return (added, known);
        });
    }

    private static (string List, IReadOnlyList<ListRow> Rows) Read(string path, IReadOnlyList<TextRow> rows)
    {
        var heading = rows.Count == 0 ? [] : rows[0].Cells.Select(c => c.ToLowerInvariant()).ToArray();
        if (heading.GroupBy(h => h).FirstOrDefault(g => g.Count() > 1) is { } twice)
            throw new InputException(path, rows[0].Line, "import.column-twice", ("name", twice.Key));
        var shape = Shapes.FirstOrDefault(s => s.Needed.All(heading.Contains)
            && heading.All(h => s.Needed.Contains(h) || s.Other.Contains(h) || Common.Contains(h)));
        return shape.List is { } list
            ? (list, [.. rows.Skip(1).Select(r => new ListRow(path, heading, r))])
            : throw new InputException(path, rows.Count == 0 ? 0 : rows[0].Line, "import.heading-unknown",
                ("list", string.Join("; ", Shapes.Select(s => $"{s.List}: {string.Join(',', s.Needed)}"))));
    }

    /// <summary>Receipts of one list, each for an entry of its own; lines that are struck are left out.</summary>
    /// <exception cref="InputException">The heading is not that of receipts, or something cannot be read, with its line.</exception>
    internal static IReadOnlyList<(Receipt Receipt, int Line)> Receipts(string path, Workshop workshop, DateOnly on, string by)
    {
        var (list, rows) = Read(path, TextTable.ReadFile(path));
        return list == BookLists.Receipt
            ? [.. rows.Where(r => r.Text("struck by") is null)
                .Select(r => (Checked(ReceiptOf(r, workshop, 0, r.Day("on") ?? on, r.Text("by") ?? by), r), r.Line))]
            : throw new InputException(path, 1, "import.heading-not-receipts",
                ("list", string.Join(',', Shapes[0].Needed.Concat(Shapes[0].Other))));
    }

    // A new receipt names a material of the workshop, in any unit that the material can be
    // counted in; one that the books wrote has plain figures.
    private static Receipt ReceiptOf(ListRow row, Workshop? workshop, int id, DateOnly on, string by)
    {
        var material = row.Needed("material");
        if (workshop is not null && id == 0)
            material = row.Known(workshop, material).Id;
        return new Receipt
        {
            Id = id,
            On = on,
            By = by,
            Note = row.Text("note"),
            Material = material,
            Supplier = row.Text("supplier"),
            SupplierLot = row.Text("supplier lot"),
            Amount = row.Amount("amount", workshop?.Materials.GetValueOrDefault(material), workshop),
            Price = row.Need(row.Figure("price"), "price"),
            BestBefore = row.Day("best before"),
            Certificate = row.Text("certificate"),
        };
    }

    // A list keeps no spaces around a text and no carriage returns in it.
    internal static bool SaysTheSame(BookEntry one, BookEntry other, params string[] besides) =>
        one.GetType() == other.GetType()
            && one.GetType().GetProperties().Where(p => p.Name != nameof(BookEntry.WrittenAt) && !besides.Contains(p.Name))
                .All(p => (p.GetValue(one), p.GetValue(other)) switch
        {
            (string a, string b) => a.Trim().ReplaceLineEndings("\n") == b.Trim().ReplaceLineEndings("\n"),
            (string a, null) => a.Trim().Length == 0,
            var (a, b) => Equals(a, b),
        });

    // A row without a day or a person gets those of the day it is read, which say nothing about whether it was read before.
    private static string[] NotTold(ListRow row) =>
        [nameof(BookEntry.Id), .. row.Text("on") is null ? [nameof(BookEntry.On)] : (string[])[],
            .. row.Text("by") is null ? [nameof(BookEntry.By)] : (string[])[]];

    private static IEnumerable<BookEntry> All(BooksSnapshot snapshot, string list) =>
        list == BookLists.Correction ? snapshot.Corrections : Correcting.All(snapshot, list);

    private static BookEntry? Had(BooksSnapshot snapshot, string list, int id) => All(snapshot, list).FirstOrDefault(e => e.Id == id);

    private static T Checked<T>(T entry, ListRow row) where T : BookEntry
    {
        try
        {
            EntryValidation.Check(entry);
            return entry;
        }
        catch (InputException e)
        {
            throw row.Refuse(e.Problem);
        }
    }
}
