using Microsoft.EntityFrameworkCore;

namespace LabelForge.Records.Books;

/// <content>Lists in pages, what is looked for by a few letters, and whole lists read one page after the other.</content>
internal sealed partial class BookQueries
{
    private const int ReadAtOnce = 5000;
    public IReadOnlyList<LotInHand> Lots(int? before, int most, string? recipe = null) =>
        InHand(context.BatchStock, context.Batches.Where(b => (before == null || b.Id < before) && (recipe == null || b.Recipe == recipe)),
            lots => lots.OrderByDescending(s => s.Batch.Id).Take(most));
    public (bool Begun, bool Finished) WasMade(string recipe, string? variant)
    {
        // The last ones first: what was begun lately tells, however many there were.
        var mine = context.Batches.Where(b => b.Recipe == recipe && b.Variant == variant && context.BatchStock.Any(s => s.BatchId == b.Id))
            .OrderByDescending(b => b.Recipe).ThenByDescending(b => b.Variant).ThenByDescending(b => b.Id);
        return (mine.Select(b => b.Id).FirstOrDefault() != 0,
            mine.Where(b => context.BatchStock.Any(s => s.BatchId == b.Id && s.Closings > 0)).Select(b => b.Id).FirstOrDefault() != 0);
    }
    public IReadOnlyList<string> Names(NameList list) =>
    [
        .. (list switch
        {
            NameList.Products => context.BatchStock.Join(context.Batches, s => s.BatchId, b => b.Id, (s, b) => b.Product),
            NameList.Suppliers =>
                context.ReceiptStock.Join(context.Receipts.Where(r => r.Supplier != null), s => s.ReceiptId, r => r.Id,
                    (s, r) => r.Supplier!),
            _ => Standing(context.Sales, BookLists.Sale).Select(s => s.To),
        }).Distinct().AsEnumerable().Order(StringComparer.Ordinal),
    ];
    public IReadOnlyList<Batch> LotsWith(IReadOnlyList<SoughtWord> words, IReadOnlyCollection<string> near, int most)
    {
        var lots = context.BatchStock.Join(context.Batches, s => s.BatchId, b => b.Id, (s, b) => b);
        foreach (var word in words)
            lots = lots.Where(b => b.Lot.ToUpper().Contains(word.Code) || word.Names.Contains(b.Product));
        return [.. lots.OrderBy(b => near.Contains(b.Product) ? 0 : 1).ThenByDescending(b => b.On).ThenByDescending(b => b.Id).Take(most)
            .AsNoTracking()];
    }
    public IReadOnlyList<Receipt> BottlesWith(IReadOnlyList<SoughtWord> words, IReadOnlyCollection<string> near, int most)
    {
        var bottles = context.ReceiptStock.Join(context.Receipts, s => s.ReceiptId, r => r.Id,
            (s, r) => new { s.Bottle, s.SupplierLot, Receipt = r });
        foreach (var word in words)
        {
            bottles = bottles.Where(b => ("M" + b.Bottle.ToString()).Contains(word.Code)
                || (b.SupplierLot != null && b.SupplierLot.Contains(word.Plain))
                || word.Names.Contains(b.Receipt.Material) || (b.Receipt.Supplier != null && word.Names.Contains(b.Receipt.Supplier)));
        }
        return [.. bottles.OrderBy(b => near.Contains(b.Receipt.Material) ? 0 : 1).ThenByDescending(b => b.Receipt.On)
            .ThenByDescending(b => b.Receipt.Id).Take(most).Select(b => b.Receipt).AsNoTracking()];
    }
    public IReadOnlyDictionary<string, (int Pieces, DateOnly Last)> BoughtBy(IReadOnlyCollection<string> buyers) =>
        Standing(context.Sales, BookLists.Sale).Where(s => buyers.Contains(s.To)).GroupBy(s => s.To)
            .Select(g => new { To = g.Key, Pieces = g.Sum(s => s.Pieces), Last = g.Max(s => s.On) })
            .ToDictionary(g => g.To, g => (g.Pieces, g.Last));
    public IEnumerable<T> Each<T>() where T : BookEntry
    {
        var list = EntryKind.All.First(k => k.Type == typeof(T)).List;
        for (var after = 0; ;)
        {
            var from = after;
            var page = Standing(context.Set<T>(), list).Where(e => e.Id > from).OrderBy(e => e.Id).Take(ReadAtOnce).ToArray();
            foreach (var entry in page)
                yield return entry;
            if (page.Length < ReadAtOnce)
                yield break;
            after = page[^1].Id;
        }
    }
    public IReadOnlyDictionary<int, int?> Moved(string list) =>
        Corrections.Moved(context.Corrections.AsNoTracking().Where(c => c.List == list).AsEnumerable());
    public IReadOnlyDictionary<int, int> Firsts(string list, IReadOnlyCollection<int> entries)
    {
        var firsts = new Dictionary<int, int>();
        for (var asked = entries.ToDictionary(e => e, e => e); asked.Count > 0;)
        {
            int[] now = [.. asked.Values.Distinct()];
            var earlier = context.Corrections.Where(c => c.List == list && c.InsteadId != null && now.Contains(c.InsteadId.Value))
                .Select(c => new { c.EntryId, Instead = c.InsteadId!.Value }).ToDictionary(c => c.Instead, c => c.EntryId);
            asked = asked.Where(a => earlier.ContainsKey(a.Value)).ToDictionary(a => a.Key, a => earlier[a.Value]);
            foreach (var (entry, first) in asked)
                firsts[entry] = first;
        }
        return firsts;
    }
    public IReadOnlyDictionary<int, decimal> LeftOf(IReadOnlyCollection<int> receipts) =>
        context.ReceiptStock.Where(s => receipts.Contains(s.ReceiptId)).Select(s => new { s.ReceiptId, s.Left })
            .ToDictionary(s => s.ReceiptId, s => s.Left);
    public IEnumerable<(string Digest, string Json)> FrozenTexts()
    {
        foreach (var digest in context.FrozenRecipes.Select(f => f.Digest).ToArray().Order(StringComparer.Ordinal))
            yield return (digest, context.FrozenRecipes.Where(f => f.Digest == digest).Select(f => f.Json).First());
    }
}
