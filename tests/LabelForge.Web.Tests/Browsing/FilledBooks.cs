using LabelForge.Lots;
using LabelForge.Recipes;
using LabelForge.Records.Books;

namespace LabelForge.Web.Tests.Browsing;

/// <summary>Books of the example workshop in which every list has an entry: one lot made, partly
/// sold, one sale corrected, a complaint; another lot at the bench.</summary>
internal static class FilledBooks
{
    private static readonly DateOnly Today = new(2026, 11, 25);

    /// <summary>The lot in the books.</summary>
    public static string Lot { get; } = new LotCode(Today, 1).ToString();

    /// <summary>A lot that is still at the bench.</summary>
    public static string OpenLot { get; } = new LotCode(Today, 2).ToString();

    /// <summary>Fills the books of a copy of the example.</summary>
    public static void Fill(string folder)
    {
        var workshop = Workshop.Open(folder);
        var book = OpenBooks.Open(folder);
        var batch = BatchFormula.Of(workshop, workshop.Recipe("bramble-bar"));
        foreach (var line in batch.Lines)
        {
            StockMovements.Receive(book, new Receipt
            {
                On = Today.AddDays(-30),
                By = "test",
                Material = line.Material.Id,
                Amount = line.Mass.Grams * 3,
                Price = 21.50m,
                Supplier = "Saltmarsh Supply",
                SupplierLot = $"SL-{line.Material.Id}",
                BestBefore = Today.AddDays(line.Material.Kind == MaterialKind.Colourant ? -1 : 300),
            });
        }
        Production.Start(book, FrozenRecipe.Of(workshop, batch, "us", null), Lot, Today, "test");
        var receipts = book.Read().Receipts;
        foreach (var line in batch.Lines)
            Production.Weigh(book, Lot, line.Material.Id, line.Mass.Grams, receipts.First(r => r.Material == line.Material.Id).Id, Today,
                "test");
        Production.Note(book, Lot, "The base was melted twice.", Today, "test");
        Production.Close(book, Lot, 6, 1, 730, Today, "test");
        var sale = StockMovements.Sell(book, Lot, 3, "Fairport market", 21, Today, "test");
        StockMovements.Sell(book, Lot, 1, "A. Reader", 0, Today, "test");
        Correcting.Of(book, Shipped.Markets, BookLists.Sale, sale.Id, new Dictionary<string, string> { ["pieces"] = "2" },
            "One came back the same day",
            Today, "test");
        StockMovements.Complain(book, Shipped.Markets, Lot, "A. Reader", "A rash that sent her to hospital", serious: true,
            smallBusiness: true, Today,
            "test");
        StockMovements.DisposePieces(book, Lot, 1, "Dropped", Today, "test");
        var next = BatchFormula.Of(workshop, workshop.Recipe("hayloft-bar"));
        Production.Start(book, FrozenRecipe.Of(workshop, next, "us", null), OpenLot, Today, "test");
        Production.Weigh(book, OpenLot, next.Lines[0].Material.Id, next.Lines[0].Mass.Grams, null, Today, "test");
    }

    /// <summary>Begins a pot of two products.</summary>
    /// <returns>Its number.</returns>
    public static string BeginPot(string folder)
    {
        var workshop = Workshop.Open(folder);
        return Pots.Begin(OpenBooks.Open(folder),
            [.. new[] { "meadow-bar/Salt Meadow", "meadow-bar/Moss Lane" }.Select(p => workshop.ProductOf(p))
                .Select(p => (p.Recipe, FrozenRecipe.Of(workshop, p.Batch, "us", null)))], Today, "test").Pot;
    }
}
