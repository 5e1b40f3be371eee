using LabelForge.Records.Books;

namespace LabelForge.Records.Money;

/// <summary>One line of a batch's cost.</summary>
/// <param name="What">What it is.</param>
/// <param name="Cost">For the whole batch, not rounded.</param>
/// <param name="Fixed">Whether it is the same however many pieces come out: work and overhead.</param>
/// <param name="Source">How it is known.</param>
public sealed record CostLine(string What, decimal Cost, bool Fixed, string Source);

/// <summary>How much the cost of a piece moves when one input moves.</summary>
public sealed record Swing(string What, decimal Low, decimal High);

/// <summary>What a batch and a piece cost. Money in the workshop's currency; rounded only where it is shown.</summary>
/// <param name="Pieces">The good pieces.</param>
/// <param name="Lines">The costs of the batch.</param>
/// <param name="Costs">The other figures of the shop.</param>
public sealed record CostSheet(int Pieces, IReadOnlyList<CostLine> Lines, CostsFile Costs)
{
    /// <summary>The whole batch.</summary>
    public decimal Batch => Lines.Sum(l => l.Cost);

    /// <summary>One piece, before fees.</summary>
    public decimal Piece => Batch / Pieces;

    /// <summary>A planned batch, at what was paid for the stock or the packs' prices.</summary>
    public static CostSheet Of(Workshop workshop, BatchFormula batch, CostsFile costs, IBooks? books) => new(batch.Recipe.Pieces,
        [.. batch.Lines
            .Select(l => UnitPrice.Of(l.Material, books, workshop.Dictionary) is var price
                ? new CostLine(l.Material.Name, l.Mass.Grams * price.Each, false, price.Source)
                : null!), .. Besides(workshop, batch.Recipe.Pieces, costs, books)], costs);

    /// <summary>A batch in the books, at what was paid for the very lots that were used.</summary>
    /// <exception cref="InputException">The batch is still open, or no good piece came out.</exception>
    public static CostSheet Of(Workshop workshop, Batch batch, CostsFile costs, IBooks books)
    {
        if (books.ClosingOf(batch) is not { } closing || closing.Made == closing.Rejected)
            throw new InputException("lot.not-closed-no-cost", ("lot", batch.Lot));
        // A batch takes few bottles, each often several times.
        var receipts = new Dictionary<int, Receipt?>();
        Receipt? Of(int id)
        {
            if (!receipts.TryGetValue(id, out var known))
                receipts[id] = known = books.Current(BookLists.Receipt, id) is { } now ? books.FindReceipt(now) : null;
            return known;
        }
        var used = books.WeighedInto(batch).GroupBy(w => (w.Material, Kept: w.ReceiptId is not null)).Select(g =>
        {
            var material = workshop.Materials.GetValueOrDefault(g.Key.Material);
            if (g.Key.Kept)
            {
                return new CostLine(material?.Name ?? g.Key.Material,
                    g.Sum(w => Of(w.ReceiptId!.Value) is { } now ? w.Grams * now.Price / now.Amount : 0),
                    false, $"paid for {string.Join(", ", g.Select(w => books.Bottle(w.ReceiptId!.Value)).Distinct())}");
            }
            // Not out of the books' stock: at the price of its pack, and said to be.
            var each = material is null
                ? new UnitPrice(0, "not in the books, and no longer in the workshop")
                : UnitPrice.Of(material, null, workshop.Dictionary);
            return new CostLine(material?.Name ?? g.Key.Material, g.Sum(w => w.Grams) * each.Each, false,
                $"not out of the stock; {each.Source}");
        });
        var pieces = closing.Made - closing.Rejected;
        var packed = books.PackedInto(batch).Select(u => (Receipt: Of(u.ReceiptId), u.Used)).Where(u => u.Receipt is not null)
            .GroupBy(u => u.Receipt!.Material).ToArray();
        var packing = packed.Select(g => new CostLine(workshop.Materials.GetValueOrDefault(g.Key)?.Name ?? g.Key,
            g.Sum(u => u.Used * u.Receipt!.Price / u.Receipt.Amount), false, "paid for what was used up"));
        // What the books saw used up is not reckoned a second time by the piece.
        var besides = costs with { Packaging = [.. costs.Packaging.Where(p => packed.All(g => g.Key != p.Material))] };
        return new CostSheet(pieces, [.. used, .. packing, .. Besides(workshop, pieces, besides, books)], costs);
    }

    /// <summary>The price at which the wanted margin is left, rounded up to the cent.</summary>
    /// <exception cref="InputException">Fee and margin together leave nothing.</exception>
    public decimal Price(decimal margin)
    {
        var kept = 1 - Costs.FeeShare - margin;
        return kept > 0
            ? Math.Ceiling((Piece + Costs.FeeEach) / kept * 100m) / 100m
            : throw new InputException("margin.too-large");
    }

    /// <summary>How many pieces of a batch must be sold at a price to pay for work and overhead; null where no number does.</summary>
    public int? BreakEven(decimal price)
    {
        var left = price * (1 - Costs.FeeShare) - Costs.FeeEach - Lines.Where(l => !l.Fixed).Sum(l => l.Cost) / Pieces;
        return left > 0 ? (int)Math.Ceiling(Lines.Where(l => l.Fixed).Sum(l => l.Cost) / left) : null;
    }

    /// <summary>The cost of a piece when each input is lower or higher by a share, what moves it most first.</summary>
    public IReadOnlyList<Swing> Tornado(decimal share) =>
    [
        .. Lines.Select(l => new Swing(l.What, (Batch - l.Cost * share) / Pieces, (Batch + l.Cost * share) / Pieces))
            .Append(new Swing("pieces that come out", Batch / (Pieces * (1 + share)), Batch / (Pieces * (1 - share))))
            .OrderByDescending(s => s.High - s.Low),
    ];

    private static IEnumerable<CostLine> Besides(Workshop workshop, int pieces, CostsFile costs, IBooks? books)
    {
        foreach (var (id, count) in costs.Packaging)
        {
            var material = workshop.Material(id, CostsFile.FileName, 0);
            var price = UnitPrice.Of(material, books, workshop.Dictionary);
            yield return new CostLine(material.Name, count * pieces * price.Each, false, price.Source);
        }
        if (costs.Label > 0)
            yield return new CostLine("labels and ink", costs.Label * pieces, false, CostsFile.FileName);
        if (costs.Minutes * costs.Wage > 0)
            yield return new CostLine("work", costs.Minutes * costs.Wage / 60m, true,
                Invariant($"{costs.Minutes:0.#} minutes"));
        if (costs.Overhead > 0)
            yield return new CostLine("overhead", costs.Overhead, true, CostsFile.FileName);
    }
}
