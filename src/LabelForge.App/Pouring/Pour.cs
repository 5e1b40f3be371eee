using LabelForge.Records.Books;

namespace LabelForge.Pouring;

/// <summary>What a pot takes of one material, and where it is to come from.</summary>
/// <param name="Material">The material.</param>
/// <param name="Grams">How much, over all batches that take it.</param>
/// <param name="InPot">Whether it goes into the pot, for all at once.</param>
/// <param name="From">The bottles to take it from, first to expire first; empty where it is not kept in stock.</param>
/// <param name="Missing">How much the stock is short, what open batches still need left out; 0 where it has enough or is not kept.</param>
public sealed record PotNeed(Material Material, decimal Grams, bool InPot, ImmutableArray<(string Bottle, decimal Grams)> From,
    decimal Missing);

/// <summary>Batches begun from one pot.</summary>
/// <param name="Pot">The pot's number; null where one product was begun by itself.</param>
/// <param name="Batches">The batches, in the order of work, with what each was planned from.</param>
/// <param name="Needs">What they take together, what goes into the pot first.</param>
public sealed record Poured(string? Pot, ImmutableArray<(Batch Batch, PourWish Wish)> Batches, ImmutableArray<PotNeed> Needs);

/// <summary>Begins what is poured in a day out of one pot.</summary>
public static class Pour
{
    /// <summary>What the batches together take of each material, and whether the stock has it.</summary>
    /// <param name="wishes">What is to be poured.</param>
    /// <param name="books">The books as they stand.</param>
    /// <param name="on">The day: what is past its date is not proposed.</param>
    public static ImmutableArray<PotNeed> Needs(IReadOnlyList<PourWish> wishes, IBooks books, DateOnly on)
    {
        var shared = wishes.Count > 1 ? SharedBase.Of([.. wishes.Select(w => w.Formula)]) : [];
        var reserved = Reserved.Of(books);
        var lines = wishes.SelectMany(w => w.Formula.Lines).GroupBy(l => l.Material.Id).ToArray();
        return [.. lines.OrderBy(g => shared.Contains(g.Key) ? shared.IndexOf(g.Key) : shared.Length).Select(g =>
        {
            var grams = g.Sum(l => l.Mass.Grams);
            var kept = books.IsKept(g.Key);
            var proposal = Production.Propose(books, [(g.Key, grams)], on)[0];
            var free = books.InStock(g.Key).Where(s => s.Receipt.BestBefore is not { } best || best >= on)
                .Sum(s => s.Left) - reserved.GetValueOrDefault(g.Key);
            return new PotNeed(g.First().Material, grams, shared.Contains(g.Key),
                kept ? [.. proposal.Take.Select(t => (books.Bottle(t.From.Id), t.Grams))] : [], kept ? Math.Max(0, grams - free) : 0);
        })];
    }

    /// <summary>Begins the batches in the books, all or none: one lot each, and a number for the pot where there are several.</summary>
    /// <param name="wishes">What is poured, in the order of work.</param>
    /// <param name="by">Who pours.</param>
    /// <param name="note">A note, or null.</param>
    /// <exception cref="InputException">Several products have no base in common.</exception>
    public static Poured Begin(OpenBooks book, Workshop workshop, ImmutableArray<PourWish> wishes, DateOnly on, string by,
        string? note = null)
    {
        var needs = book.Ask(books => Needs(wishes, books, on));
        if (wishes.Length > 1 && !needs.Any(n => n.InPot))
            throw new InputException("pour.nothing-shared");
        FrozenRecipe Freeze(PourWish wish) =>
        FrozenRecipe.Of(workshop, wish.Formula, workshop.Business.Market, BatchStatement.Of(workshop, wish.Formula, on));
        if (wishes is [var only])
        {
            var lot = book.Ask(books => NextLot.Of(books, on, only.Product.Recipe).ToString());
            return new Poured(null, [(Production.Start(book, Freeze(only), lot, on, by, note), only)], needs);
        }
        var (pot, batches) = Pots.Begin(book, [.. wishes.Select(w => (w.Product.Recipe, Freeze(w)))], on, by, note);
        return new Poured(pot, [.. batches.Zip(wishes)], needs);
    }

    /// <summary>The batches of a pot as they were begun, with what each was planned from.</summary>
    /// <exception cref="InputException">There is no such pot, or its recipe is gone.</exception>
    public static Poured Of(Workshop workshop, IBooks books, string pot, DateOnly on)
    {
        var batches = books.BatchesOfPot(pot).ToArray();
        if (batches.Length == 0)
            throw new InputException("pot.unknown", ("pot", pot));
        ImmutableArray<(Batch Batch, PourWish Wish)> poured = [.. batches.Select(b =>
        {
            var product = LotProducts.Begun(workshop.ProductsOf(b.Recipe), books, b);
            return (b, new PourWish(product, product.Batch, null));
        })];
        return new Poured(pot, poured, Needs([.. poured.Select(p => p.Wish)], books, on));
    }
}
