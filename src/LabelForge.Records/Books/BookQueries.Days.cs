using Microsoft.EntityFrameworkCore;

namespace LabelForge.Records.Books;

/// <content>What a day, a stretch of days or a print run holds, and the facts that a page of a list asks of others.</content>
internal sealed partial class BookQueries
{
    public IReadOnlyList<Sale> SalesOn(DateOnly day) =>
        [.. Standing(context.Sales, BookLists.Sale).Where(s => s.On == day).OrderBy(s => s.Id)];
    public IReadOnlyList<PiecesReturned> ReturnsOn(DateOnly day) =>
        [.. Standing(context.Returns, BookLists.Return).Where(r => r.On == day).OrderBy(r => r.Id)];
    public IReadOnlyList<Takings> TakingsOn(DateOnly day) =>
        [.. Standing(context.Takings, BookLists.Takings).Where(t => t.On == day).OrderBy(t => t.Id)];
    public IReadOnlyList<string> LastBuyers(int most) =>
        [.. Standing(context.Sales, BookLists.Sale).GroupBy(s => s.To).Select(g => new { To = g.Key, Last = g.Max(s => s.Id) })
            .OrderByDescending(g => g.Last).Take(most).AsEnumerable().Reverse().Select(g => g.To)];
    public string? LastTicket() =>
        Standing(context.Sales, BookLists.Sale).Where(s => s.Ticket != null).OrderByDescending(s => s.Id).Select(s => s.Ticket)
            .FirstOrDefault();
    public int LastRun() => context.Printings.Max(p => p.Run) ?? 0;
    public IReadOnlyList<Printing> PrintingsOfRun(int run) =>
        [.. Standing(context.Printings, BookLists.Printing).Where(p => p.Run == run).OrderBy(p => p.Id)];
    public IReadOnlyList<Printing> PrintingsOn(DateOnly day) =>
        [.. Standing(context.Printings, BookLists.Printing).Where(p => p.On == day).OrderBy(p => p.Id)];
    public IReadOnlyList<string> LastPots(int most) => [.. Standing(context.Batches, BookLists.Batch).Where(b => b.Pot != null)
        .GroupBy(b => b.Pot!).Select(g => new { Pot = g.Key, Last = g.Max(b => b.Id) }).OrderByDescending(p => p.Last).Take(most)
        .Select(p => p.Pot)];
    public IReadOnlyList<ProductSold> SoldBetween(DateOnly from, DateOnly to)
    {
        var sold = Standing(context.Sales, BookLists.Sale).Where(s => s.On >= from && s.On <= to && s.Paid > 0).GroupBy(s => s.BatchId)
            .Select(g => new { Batch = g.Key, Pieces = g.Sum(s => s.Pieces) }).ToArray();
        var back = Standing(context.Returns, BookLists.Return).Where(r => r.On >= from && r.On <= to).GroupBy(r => r.BatchId)
            .Select(g => new { Batch = g.Key, Pieces = g.Sum(r => r.Returned) }).ToArray();
        return ProductSold.Of(this, sold.Select(s => (s.Batch, s.Pieces, 0)).Concat(back.Select(b => (b.Batch, 0, b.Pieces))));
    }
    public IReadOnlyDictionary<int, Correction> StruckIn(string list, int first, int last) =>
        context.Corrections.AsNoTracking().Where(c => c.List == list && c.EntryId >= first && c.EntryId <= last)
            .ToDictionary(c => c.EntryId);
    public IReadOnlyDictionary<int, (string Lot, int Left)> LotsOf(IReadOnlyCollection<int> batches)
    {
        var lots = context.Batches.Where(b => batches.Contains(b.Id)).Select(b => new { b.Id, b.Lot }).ToArray();
        var left = context.BatchStock.Where(s => batches.Contains(s.BatchId)).Select(s => new { s.BatchId, s.Left })
            .ToDictionary(s => s.BatchId, s => s.Left);
        return lots.ToDictionary(l => l.Id, l => (l.Lot, left.GetValueOrDefault(l.Id)));
    }
    public IReadOnlyList<Batch> BatchesOn(DateOnly day) =>
        [.. Standing(context.Batches, BookLists.Batch).Where(b => b.On == day).OrderBy(b => b.Id)];
}
