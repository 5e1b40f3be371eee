using Microsoft.EntityFrameworkCore;

namespace LabelForge.Records.Books;

/// <summary>A kind of entry: its list's name, its table, and how it is read.</summary>
public abstract class EntryKind
{
    private protected EntryKind(string list, string table, Type type) => (List, Table, Type) = (list, table, type);

    /// <summary>The name of its list, as corrections and the command write it.</summary>
    public string List { get; }

    /// <summary>The name of its table.</summary>
    public string Table { get; }

    /// <summary>The type of its entries.</summary>
    public Type Type { get; }

    /// <summary>All kinds; what others hang on comes first, corrections last.</summary>
    public static IReadOnlyList<EntryKind> All { get; } =
    [
        new EntryKind<Receipt>(BookLists.Receipt, "Receipts"),
        new EntryKind<Batch>(BookLists.Batch, "Batches"),
        new EntryKind<Printing>(BookLists.Printing, "Printings"),
        new EntryKind<Weighing>(BookLists.Weighing, "Weighings"),
        new EntryKind<Deviation>(BookLists.Deviation, "Deviations"),
        new EntryKind<Closing>(BookLists.Closing, "Closings"),
        new EntryKind<Sale>(BookLists.Sale, "Sales"),
        new EntryKind<Complaint>(BookLists.Complaint, "Complaints"),
        new EntryKind<Disposal>(BookLists.Disposal, "Disposals"),
        new EntryKind<PackingUse>(BookLists.Packing, "PackingUses"),
        new EntryKind<StockCount>(BookLists.Count, "StockCounts"),
        new EntryKind<PiecesReturned>(BookLists.Return, "Returns"),
        new EntryKind<Takings>(BookLists.Takings, "Takings"),
        new EntryKind<Attachment>(BookLists.Attachment, "Attachments"),
        new EntryKind<Correction>(BookLists.Correction, "Corrections"),
    ];

    /// <summary>The kind of a list; null where there is no such list.</summary>
    public static EntryKind? Of(string list) => All.FirstOrDefault(k => k.List == list);

    /// <summary>The kind of an entry.</summary>
    public static EntryKind Of(BookEntry entry) => All.First(k => k.Type == entry.GetType());

    /// <summary>All its entries, the first one first.</summary>
    internal abstract BookEntry[] Load(RecordsContext context);

    /// <summary>Entries as an array of their own type.</summary>
    internal abstract BookEntry[] Typed(IEnumerable<BookEntry> entries);

    /// <summary>One entry; null where there is none of that number.</summary>
    internal abstract BookEntry? Find(RecordsContext context, int id);

    /// <summary>The last entries before a number, the first one first.</summary>
    internal abstract IReadOnlyList<BookEntry> Page(RecordsContext context, int? before, int most);

    /// <summary>The number of the last entry; null where there is none.</summary>
    internal abstract int? Last(RecordsContext context);

    /// <summary>How many entries there are.</summary>
    internal abstract int Count(RecordsContext context);
}

/// <summary>A kind of entry, by its type.</summary>
internal sealed class EntryKind<T>(string list, string table) : EntryKind(list, table, typeof(T)) where T : BookEntry
{
    internal override BookEntry[] Load(RecordsContext context) => context.Set<T>().AsNoTracking().OrderBy(e => e.Id).ToArray();

    internal override BookEntry[] Typed(IEnumerable<BookEntry> entries) => entries.Cast<T>().ToArray();

    internal override BookEntry? Find(RecordsContext context, int id) => context.Set<T>().AsNoTracking().FirstOrDefault(e => e.Id == id);

    internal override IReadOnlyList<BookEntry> Page(RecordsContext context, int? before, int most) =>
        [.. context.Set<T>().AsNoTracking().Where(e => before == null || e.Id < before).OrderByDescending(e => e.Id).Take(most)
            .AsEnumerable().Reverse()];

    internal override int? Last(RecordsContext context) => context.Set<T>().Max(e => (int?)e.Id);

    internal override int Count(RecordsContext context) => context.Set<T>().Count();
}
