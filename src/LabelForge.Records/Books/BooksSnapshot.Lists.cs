namespace LabelForge.Records.Books;

/// <content>Lists in pages, what is looked for by a few letters, and whole lists.</content>
public sealed partial class BooksSnapshot
{
    /// <inheritdoc/>
    public IReadOnlyList<LotInHand> Lots(int? before, int most, string? recipe = null) =>
        [.. Batches.Where(b => (before is null || b.Id < before) && (recipe is null || b.Recipe == recipe)).TakeLast(most).Reverse()
            .Select(InHand)];

    /// <inheritdoc/>
    public (bool Begun, bool Finished) WasMade(string recipe, string? variant) =>
        Batches.Where(b => b.Recipe == recipe && b.Variant == variant).ToArray() is var mine
            ? (mine.Length > 0, mine.Any(b => ClosingOf(b) is not null))
            : default;

    /// <inheritdoc/>
    public IReadOnlyList<string> Names(NameList list) => [.. (list switch
    {
        NameList.Products => Batches.Select(b => b.Product),
        NameList.Suppliers => Receipts.Select(r => r.Supplier).OfType<string>(),
        _ => Sales.Select(s => s.To),
    }).Distinct().Order(StringComparer.Ordinal)];

    /// <inheritdoc/>
    public IReadOnlyList<Batch> LotsWith(IReadOnlyList<SoughtWord> words, IReadOnlyCollection<string> near, int most) =>
    [
        .. Batches.Where(
            b => words.All(w => b.Lot.ToUpperInvariant().Contains(w.Code, StringComparison.Ordinal) || w.Names.Contains(b.Product)))
            .OrderBy(b => !near.Contains(b.Product)).ThenByDescending(b => b.On).ThenByDescending(b => b.Id).Take(most),
    ];

    /// <inheritdoc/>
    public IReadOnlyList<Receipt> BottlesWith(IReadOnlyList<SoughtWord> words, IReadOnlyCollection<string> near, int most) =>
    [
        .. Receipts.Where(
            r => words.All(w => string.Create(CultureInfo.InvariantCulture, $"M{First(BookLists.Receipt, r.Id)}")
                .Contains(w.Code, StringComparison.Ordinal)
                || ReceiptStock.Sought(r.SupplierLot)?.Contains(w.Plain, StringComparison.Ordinal) == true
                || w.Names.Contains(r.Material)
                || (r.Supplier is { } supplier && w.Names.Contains(supplier))))
            .OrderBy(r => !near.Contains(r.Material)).ThenByDescending(r => r.On).ThenByDescending(r => r.Id).Take(most),
    ];

    /// <inheritdoc/>
    public IReadOnlyDictionary<string, (int Pieces, DateOnly Last)> BoughtBy(IReadOnlyCollection<string> buyers) =>
        Sales.Where(s => buyers.Contains(s.To)).GroupBy(s => s.To).ToDictionary(g => g.Key, g => (g.Sum(s => s.Pieces), g.Max(s => s.On)));

    /// <inheritdoc/>
    public IEnumerable<T> Each<T>() where T : BookEntry => Standing<T>();

    /// <inheritdoc/>
    public IReadOnlyDictionary<int, int?> Moved(string list) => Books.Corrections.Moved(Corrections.Where(c => c.List == list));

    /// <inheritdoc/>
    public IReadOnlyDictionary<int, int> Firsts(string list, IReadOnlyCollection<int> entries) =>
        entries.Distinct().Where(e => First(list, e) != e).ToDictionary(e => e, e => First(list, e));

    /// <inheritdoc/>
    public IReadOnlyDictionary<int, decimal> LeftOf(IReadOnlyCollection<int> receipts) =>
        LeftOfAll().Where(l => receipts.Contains(l.Key)).ToDictionary(l => l.Key, l => l.Value);

    /// <inheritdoc/>
    public IEnumerable<(string Digest, string Json)> FrozenTexts() =>
        AllBatches.Select(b => (b.FrozenDigest, b.Frozen)).DistinctBy(f => f.FrozenDigest)
            .OrderBy(f => f.FrozenDigest, StringComparer.Ordinal);
}
