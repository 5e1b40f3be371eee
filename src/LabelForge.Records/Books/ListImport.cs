using LabelForge.Records.Spreadsheets;

namespace LabelForge.Records.Books;

/// <summary>Reads lists back that <c>labelforge books</c> wrote, or that a maker typed in their columns.</summary>
/// <remarks>
/// A row with a number is that very entry: where the books have it, it must say the same; where they have not, it is added
/// under its number. A row without a number is a new entry, unless the books hold one already that says all of the same:
/// a list read twice adds nothing the second time, and one that says a thing twice adds it twice. All files are one moment:
/// all of it stands, or nothing.
/// </remarks>
public static class ListImport
{
    private static readonly string[] Common = ["number", "on", "by", "note", "written at", "struck by", "batch", "receipt", "lot",
        "material lot"];

    // What a list must have, which tells it from the others, and what else it may have.
    private static readonly (EntryKind Kind, string[] Needed, string[] Other)[] Shapes = [.. EntryKind.All.Select(k => (k,
        k.Columns.Where(c => c.IsNeeded).Select(c => c.Heading)
            .Concat(k.HangsOn.Select(h => h.Heading).Where(h => !Common.Contains(h))).ToArray(),
        k.Columns.Where(c => !c.IsNeeded).Select(c => c.Heading).Except(Common).ToArray()))];

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
        if (lists.GroupBy(l => l.Kind.List).FirstOrDefault(g => g.Count() > 1) is { } twice)
            throw new InputException(paths[^1], 0, "import.list-twice", ("name", twice.Key));
        return book.Take((before, context) =>
        {
            var snapshot = before;
            var frozen = new FrozenFiles(paths, before);
            var (added, known) = (0, 0);
            // What others hang on comes first.
            foreach (var (kind, rows) in lists.OrderBy(l => Array.FindIndex(Shapes, s => s.Kind == l.Kind)))
            {
                var told = before.AllOf(kind).ToList();
                foreach (var row in rows)
                {
                    var entry = Entry(kind, row, snapshot, frozen, on, by, workshop);
                    entry.WrittenAt = row.Time("written at");
                    if (entry.Id != 0 && snapshot.Find(kind.List, entry.Id) is { } had)
                    {
                        if (!SaysTheSame(had, entry))
                            throw row.Refuse("import.books-another", ("list", kind.List), ("entry", entry.Id));
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

    private static (EntryKind Kind, IReadOnlyList<ListRow> Rows) Read(string path, IReadOnlyList<TextRow> rows)
    {
        var heading = rows.Count == 0 ? [] : rows[0].Cells.Select(c => c.ToLowerInvariant()).ToArray();
        if (heading.GroupBy(h => h).FirstOrDefault(g => g.Count() > 1) is { } twice)
            throw new InputException(path, rows[0].Line, "import.column-twice", ("name", twice.Key));
        var shape = Shapes.FirstOrDefault(s => s.Needed.All(heading.Contains)
            && heading.All(h => s.Needed.Contains(h) || s.Other.Contains(h) || Common.Contains(h)));
        return shape.Kind is { } kind
            ? (kind, [.. rows.Skip(1).Select(r => new ListRow(path, heading, r))])
            : throw new InputException(path, rows.Count == 0 ? 0 : rows[0].Line, "import.heading-unknown",
                ("list", string.Join("; ", Shapes.Select(s => $"{s.Kind.List}: {string.Join(',', s.Needed)}"))));
    }

    /// <summary>Receipts of one list, each for an entry of its own; lines that are struck are left out.</summary>
    /// <exception cref="InputException">The heading is not that of receipts, or something cannot be read, with its line.</exception>
    internal static IReadOnlyList<(Receipt Receipt, int Line)> Receipts(string path, Workshop workshop, DateOnly on, string by)
    {
        var (kind, rows) = Read(path, TextTable.ReadFile(path));
        return kind.Type == typeof(Receipt)
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

    private static BookEntry Entry(EntryKind kind, ListRow row, BooksSnapshot snapshot, FrozenFiles frozen, DateOnly usualDay,
        string usualBy, Workshop? workshop)
    {
        var (id, on, by) = (row.Whole("number") ?? 0, row.Day("on") ?? usualDay, row.Text("by") ?? usualBy);
        if (kind.Type == typeof(Receipt))
            return ReceiptOf(row, workshop, id, on, by);
        var entry = kind.New();
        foreach (var (field, value) in new (string, object?)[]
            { (nameof(entry.Id), id), (nameof(entry.On), on), (nameof(entry.By), by), (nameof(entry.Note), row.Text("note")) })
            EntryColumn.Set(typeof(BookEntry).GetProperty(field)!, entry, value);
        foreach (var column in kind.HangsOn)
            HangOn(column, row, entry, snapshot, frozen);
        foreach (var column in kind.Columns)
            column.Read(row, entry);
        return entry is Correction { List: var named } && !BookLists.All.Contains(named)
            ? throw row.Refuse("books.no-such-list", ("list", named), ("list-2", string.Join(", ", BookLists.All)))
            : entry;
    }

    private static void HangOn(EntryColumn column, ListRow row, BookEntry entry, BooksSnapshot snapshot, FrozenFiles frozen)
    {
        if (entry is Batch)
        {
            EntryColumn.Set(typeof(Batch).GetProperty(nameof(Batch.Frozen))!, entry, frozen.Of(row));
            return;
        }
        var isBatch = column.Heading == "batch";
        if ((row.Whole(column.Heading) ?? (isBatch ? BatchNamed(row, snapshot) : ReceiptNamed(row, snapshot))) is { } number)
            EntryColumn.Set(column.Field!, entry, number);
        else if (Nullable.GetUnderlyingType(column.Field!.PropertyType) is null)
            throw row.Refuse(isBatch ? "import.lot-empty" : "import.material-lot-empty");
    }

    private static int? BatchNamed(ListRow row, BooksSnapshot snapshot) => row.Text("lot") is { } lot
        ? snapshot.BatchOf(Lots.LotCode.Parse(lot) is { IsValue: true } code ? code.Value.ToString() : lot).Id : null;

    private static int? ReceiptNamed(ListRow row, BooksSnapshot snapshot) => row.Text("material lot") is not { } bottle ? null
        : int.TryParse(bottle.TrimStart('M', 'm'), out var number) ? snapshot.ReceiptOf(number).Id
        : throw row.Refuse("import.not-a-material-lot", ("bottle", bottle));

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
