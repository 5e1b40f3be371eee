using LabelForge.Lookup;
using LabelForge.Records.Books;
using LabelForge.Years;

namespace LabelForge.Records.Tests.Books;

/// <summary>What pages and papers ask: the query's answer is the one reckoned from all entries.</summary>
internal static class SameAnswers
{
    private static readonly string[] Sought = ["bar", "m1", "26r", "fair mark", "ann", "base heron", "scent m", "b", "uy", "castor-oil"];

    public static void Lists(TestShop shop, ReckonedBooks snapshot, IBooks books)
    {
        foreach (var (before, recipe) in new (int?, string?)[] { (null, null), (null, "bar"), (3, null), (2, "other") })
            Assert.Equal(snapshot.Lots(before, 3, recipe).Select(Said), books.Lots(before, 3, recipe).Select(Said));
        Assert.Equal(snapshot.LotsInHand(TestShop.Day).Select(Said), books.LotsInHand(TestShop.Day).Select(Said));
        Assert.Equal(snapshot.WasMade("bar", null), books.WasMade("bar", null));
        Assert.Equal(snapshot.WasMade("bar", "red"), books.WasMade("bar", "red"));
        Assert.Equal(snapshot.ProductsMade().OrderBy(p => p.ToString(), StringComparer.Ordinal),
            books.ProductsMade().OrderBy(p => p.ToString(), StringComparer.Ordinal));
        (string, string?)[] products = [("bar", null), ("scents", "red"), ("scents", "Rosé"), ("scents", null)];
        foreach (var (recipe, variant) in products)
        {
            Assert.Equal(snapshot.LotsInStock(recipe, variant).Select(l => (l.Batch.Id, l.Left)),
                books.LotsInStock(recipe, variant).Select(l => (l.Batch.Id, l.Left)));
            Assert.Equal(snapshot.WasMade(recipe, variant), books.WasMade(recipe, variant));
            Assert.Equal(snapshot.LastBatch(recipe, variant)?.Id, books.LastBatch(recipe, variant)?.Id);
        }
        foreach (var day in new[] { TestShop.Day, TestShop.Day.AddDays(1) })
            Assert.Equal(snapshot.TicketsOn(day).Order(), books.TicketsOn(day).Order());
        Assert.Equal(snapshot.LastBatch("bar", null)?.Frozen, books.LastBatch("bar", null)?.Frozen);
        Assert.Equal(snapshot.FrozenTexts(), books.FrozenTexts());
        foreach (var list in BookLists.All)
            Assert.Equal(snapshot.Moved(list).OrderBy(m => m.Key), books.Moved(list).OrderBy(m => m.Key));
        Assert.Equal(Ids(snapshot.Each<Sale>()), Ids(books.Each<Sale>()));
        Assert.Equal(Ids(snapshot.Each<LabelForge.Records.Books.Weighing>()), Ids(books.Each<LabelForge.Records.Books.Weighing>()));
        Assert.Equal(Ids(snapshot.ComplaintsSince(DateOnly.MinValue)), Ids(books.ComplaintsSince(DateOnly.MinValue)));
        foreach (var names in Enum.GetValues<NameList>())
            Assert.Equal(snapshot.Names(names), books.Names(names));
        Assert.Equal(snapshot.BoughtBy(snapshot.Names(NameList.Buyers)).OrderBy(b => b.Key),
            books.BoughtBy(snapshot.Names(NameList.Buyers)).OrderBy(b => b.Key));
        var (all, asked) = (new FindAnything(shop.Workshop, snapshot), new FindAnything(shop.Workshop, books));
        foreach (var text in Sought)
            Assert.Equal(all.In(snapshot, text), asked.In(books, text));
    }

    public static void Years(ReckonedBooks snapshot, IBooks books)
    {
        var (reckoned, asked) = (YearBook.Of(snapshot, TestShop.Day.Year), YearBook.Of(books, TestShop.Day.Year));
        Assert.Equal(reckoned.Lines, asked.Lines);
        Assert.Equal(reckoned.Waste, asked.Waste);
        Assert.Equal(reckoned.WithoutAPrice, asked.WithoutAPrice);
        Assert.Equal((reckoned.Bought, reckoned.AtStart, reckoned.AtEnd), (asked.Bought, asked.AtStart, asked.AtEnd));
        // Nothing is lost between what was bought, sold, wasted and what lies in the house thing by thing.
        Assert.Equal(0, Math.Round(asked.OutOfBalance, 9));
        Assert.Equal(Math.Round(StockValue.Of(books).Whole, 9), Math.Round(asked.AtEnd, 9));
    }

    private static IEnumerable<int> Ids(IEnumerable<BookEntry> entries) => entries.Select(e => e.Id);

    private static (int, bool, int, int, int) Said(LotInHand lot) => (lot.Batch.Id, lot.Open, lot.Good, lot.Left, lot.Printed);
}
