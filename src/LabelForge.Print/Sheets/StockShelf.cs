using LabelForge.Print.Designs;

namespace LabelForge.Print.Sheets;

/// <summary>The label stock at hand: what ships with the tool, and the maker's own in a workshop's folder <c>stock</c>.</summary>
/// <remarks>A file of the maker's own goes before shipped stock of the same id.</remarks>
public sealed class StockShelf
{
    private readonly string? _folder;
    private readonly HashSet<string> _own;

    private StockShelf(string? folder)
    {
        _folder = folder is null ? null : Path.Combine(folder, "stock");
        _own = Directory.Exists(_folder)
            ? [.. Directory.EnumerateFiles(_folder, "*.yaml").Select(f => Path.GetFileNameWithoutExtension(f)!)]
            : [];
        Ids = [.. LabelStock.Known.Union(_own).Order(StringComparer.Ordinal)];
    }

    /// <summary>Every id, in order.</summary>
    public IReadOnlyList<string> Ids { get; }

    /// <summary>Every stock.</summary>
    /// <exception cref="InputException">A file of the maker's own cannot be used.</exception>
    public IEnumerable<LabelStock> All => Ids.Select(Load);

    /// <summary>The stock at hand in a workshop.</summary>
    /// <param name="workshopFolder">The workshop's folder, or null for what ships alone.</param>
    public static StockShelf Of(string? workshopFolder) => new(workshopFolder);

    /// <summary>Whether stock is the maker's own.</summary>
    public bool IsOwn(string id) => _own.Contains(id);

    /// <summary>The stock of an id.</summary>
    /// <exception cref="InputException">There is none, or its file cannot be used; the message names the line.</exception>
    public LabelStock Load(string id)
    {
        if (IsOwn(id))
            return LabelStock.LoadFile(Path.Combine(_folder!, id + ".yaml"), $"stock/{id}.yaml");
        return LabelStock.Known.Contains(id) ? LabelStock.Load(id) : throw Unknown(id);
    }

    /// <summary>The stock for a design: what is asked for; else what lies at hand and the design fits; else the sheet nearest to its
    /// size.</summary>
    /// <param name="atHand">The ids of the stock that lies in the workshop.</param>
    /// <param name="asked">The id asked for; null where none is.</param>
    /// <exception cref="InputException">There is no such stock, or its file cannot be used.</exception>
    public LabelStock For(LabelDesign design, ImmutableArray<string> atHand, string? asked)
    {
        if (asked is not null)
            return Load(asked);
        LabelStock[] fitting = [.. atHand.Select(Load).Where(s => StockFit.Fits(design, s))];
        return (fitting.Length > 0 ? fitting : LabelStock.All.Where(s => StockFit.Fits(design, s) && s.Kind == StockKind.Sheet))
            .MinBy(s => s.LabelWidth.Millimetres * s.LabelHeight.Millimetres)!;
    }

    // The list is long by now, so that the nearest few say more than all of it.
    private InputException Unknown(string id)
    {
        var near = Ids.OrderByDescending(i => Shared(i, id)).ThenBy(i => i, StringComparer.Ordinal).Take(3);
        return new InputException("stock.unknown", ("id", id), ("list", string.Join(", ", near)), ("file", Path.GetFileName(id)));
    }

    private static int Shared(string a, string b) => a.Split('-').Intersect(b.ToLowerInvariant().Split('-')).Sum(p => p.Length);
}
