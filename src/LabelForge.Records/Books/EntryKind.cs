using System.Diagnostics.CodeAnalysis;
using System.Reflection;
using Microsoft.EntityFrameworkCore;

namespace LabelForge.Records.Books;

/// <summary>A kind of entry: its list's name and columns, and how it is read.</summary>
public abstract class EntryKind
{
    private protected EntryKind(string list, string columns, Type type, PropertyInfo[] fields)
    {
        (List, Type) = (list, type);
        Columns = [.. columns.Split(", ").Select(c => EntryColumn.Of(c, fields))];
        HangsOn = [.. Hangs.Select(h => new EntryColumn(h.Heading, fields.FirstOrDefault(f => f.Name == h.Field)))
            .Where(h => h.Field is not null)];
    }

    // What an entry hangs on, by number, so that a list can be read back into the same books.
    private static readonly (string Heading, string Field)[] Hangs =
        [("batch", nameof(Weighing.BatchId)), ("receipt", nameof(Weighing.ReceiptId)), ("frozen", nameof(Batch.FrozenDigest))];

    /// <summary>The name of its list, as corrections and the command write it.</summary>
    public string List { get; }

    /// <summary>The type of its entries.</summary>
    public Type Type { get; }

    /// <summary>The columns of its list, without those that every list has.</summary>
    internal IReadOnlyList<EntryColumn> Columns { get; }

    /// <summary>The columns at the list's end with the numbers of what its entries hang on.</summary>
    internal IReadOnlyList<EntryColumn> HangsOn { get; }

    /// <summary>All kinds; what others hang on comes first, corrections last.</summary>
    public static IReadOnlyList<EntryKind> All { get; } =
    [
        new EntryKind<Receipt>(BookLists.Receipt, "material lot, material, supplier, supplier lot, amount, price, best before, certificate, left"),
        new EntryKind<Batch>(BookLists.Batch, "lot, pot, recipe, product, pieces planned, pieces left"),
        new EntryKind<Printing>(BookLists.Printing, "lot, recipe, variant, product, labels, spoiled, run, stock, places, drawing"),
        new EntryKind<Weighing>(BookLists.Weighing, "lot, material, material lot, grams"),
        new EntryKind<Deviation>(BookLists.Deviation, "lot, what"),
        new EntryKind<Closing>(BookLists.Closing, "lot, made, rejected, yield g"),
        new EntryKind<Sale>(BookLists.Sale, "lot, pieces, to, paid, tax, payment, ticket"),
        new EntryKind<Complaint>(BookLists.Complaint, "lot, from, what, serious, report by, keep until"),
        new EntryKind<Disposal>(BookLists.Disposal, "lot, material lot, amount, reason"),
        new EntryKind<PackingUse>(BookLists.Packing, "lot, material lot, used"),
        new EntryKind<StockCount>(BookLists.Count, "lot, material lot, counted, difference"),
        new EntryKind<PiecesReturned>(BookLists.Return, "lot, returned, back on shelf, from, paid back, tax, payment, reason"),
        new EntryKind<Takings>(BookLists.Takings, "place, float, cash, card"),
        new EntryKind<Attachment>(BookLists.Attachment, "about, kind, file, revision, issued, holds until, digest"),
        new EntryKind<Correction>(BookLists.Correction, "list, entry, instead, reason"),
    ];

    /// <summary>The kind of a list; null where there is no such list.</summary>
    public static EntryKind? Of(string list) => All.FirstOrDefault(k => k.List == list);

    /// <summary>An entry of it without anything in it yet.</summary>
    internal abstract BookEntry New();

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
}

/// <summary>A kind of entry, by its type.</summary>
internal sealed class EntryKind<[DynamicallyAccessedMembers(Made)] T>(string list, string columns)
    : EntryKind(list, columns, typeof(T), typeof(T).GetProperties()) where T : BookEntry
{
    private const DynamicallyAccessedMemberTypes Made =
        DynamicallyAccessedMemberTypes.PublicProperties | DynamicallyAccessedMemberTypes.PublicParameterlessConstructor;

    internal override BookEntry New() => Activator.CreateInstance<T>();

    internal override BookEntry[] Load(RecordsContext context) => context.Set<T>().AsNoTracking().OrderBy(e => e.Id).ToArray();

    internal override BookEntry[] Typed(IEnumerable<BookEntry> entries) => entries.Cast<T>().ToArray();

    internal override BookEntry? Find(RecordsContext context, int id) => context.Set<T>().AsNoTracking().FirstOrDefault(e => e.Id == id);

    internal override IReadOnlyList<BookEntry> Page(RecordsContext context, int? before, int most) =>
        [.. context.Set<T>().AsNoTracking().Where(e => before == null || e.Id < before).OrderByDescending(e => e.Id).Take(most)
            .AsEnumerable().Reverse()];

    internal override int? Last(RecordsContext context) => context.Set<T>().Max(e => (int?)e.Id);
}
