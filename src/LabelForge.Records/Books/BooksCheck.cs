using Microsoft.EntityFrameworkCore;

namespace LabelForge.Records.Books;

/// <summary>The books held against themselves: every balance reckoned anew from the entries.</summary>
/// <param name="Entries">How many entries were read.</param>
/// <param name="Bottles">How many bottles were reckoned.</param>
/// <param name="Lots">How many batches were reckoned.</param>
/// <param name="Differences">What does not agree, one sentence each; empty where all does.</param>
public sealed record BooksCheck(int Entries, int Bottles, int Lots, IReadOnlyList<string> Differences)
{
    /// <summary>Reads everything: the store's pages, all entries, all balances.</summary>
    internal static BooksCheck Of(BooksDatabase store, RecordsContext context)
    {
        store.CheckPages(context);
        var snapshot = BooksSnapshot.Load(context);
        var differences = new List<string>();
        try
        {
            BooksInvariants.Check(snapshot);
        }
        catch (InputException e)
        {
            differences.Add(e.Problem.Wrong);
        }
        Compare(differences, "Bottle M", Rebuild.Bottles(snapshot).ToDictionary(b => b.Bottle, Shown),
            context.ReceiptStock.AsNoTracking().ToDictionary(b => b.Bottle, Shown));
        Compare(differences, "Batch ", Rebuild.Lots(snapshot).ToDictionary(b => b.Number, Shown),
            context.BatchStock.AsNoTracking().ToDictionary(b => b.Number, Shown));
        differences.AddRange(context.FrozenRecipes.AsNoTracking().AsEnumerable().Where(f => FrozenText.DigestOf(f.Json) != f.Digest)
            .Select(f => $"The frozen recipe {f.Digest} is not what its digest says."));
        differences.AddRange(context.Batches.AsNoTracking().Where(b => !context.FrozenRecipes.Any(f => f.Digest == b.FrozenDigest))
            .Select(b => b.Id).AsEnumerable().Select(id => Invariant($"What batch {id} froze is missing.")));
        return new BooksCheck(EntryKind.All.Sum(k => snapshot.AllOf(k).Count), snapshot.Receipts.Count, snapshot.Batches.Count,
            differences);
    }

    private static void Compare(List<string> differences, string what, Dictionary<int, string> reckoned, Dictionary<int, string> kept)
    {
        foreach (var number in reckoned.Keys.Union(kept.Keys).Order())
        {
            var (should, stands) = (reckoned.GetValueOrDefault(number, "nothing"), kept.GetValueOrDefault(number, "nothing"));
            if (should != stands)
                differences.Add(Invariant($"{what}{number}: the entries come to {should}; the balance kept is {stands}."));
        }
    }

    private static string Shown(ReceiptStock s) =>
        Invariant($"{s.Left:0.######} of {s.Material} (receipt {s.ReceiptId}, supplier's lot {s.SupplierLot ?? "unknown"})");

    private static string Shown(BatchStock s) => Invariant($"{s.Left} of lot {s.Lot} (batch {s.BatchId}: {s.Closings} closings, {s.Made} made, {s.Rejected} rejected, {s.Sold} sold, {s.Returned} returned, {s.BackOnShelf} back, {s.Disposed} disposed of, {s.Counted} by counts)");
}
