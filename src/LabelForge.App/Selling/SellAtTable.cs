using LabelForge.Records.Books;

namespace LabelForge.Selling;

/// <summary>Pieces of a product that a buyer takes.</summary>
/// <param name="Product">The product, as a person names it.</param>
/// <param name="Pieces">How many.</param>
public sealed record Taken(string Product, int Pieces);

/// <summary>What a buyer pays for several products in one go.</summary>
/// <param name="Items">The products, with what each is paid for.</param>
public sealed record TableBill(ImmutableArray<(ProductOnTable Product, SoldItem Item)> Items)
{
    /// <summary>What is paid in all, sales tax included.</summary>
    public decimal Paid => Items.Sum(i => i.Item.Paid);

    /// <summary>Of this, the sales tax; null where the maker set no rate.</summary>
    public decimal? Tax => Items.Any(i => i.Item.Tax is not null) ? Items.Sum(i => i.Item.Tax ?? 0) : null;
}

/// <summary>Sells over the table: at the prices in the recipes, or for a sum that was agreed on.</summary>
public static class SellAtTable
{
    /// <summary>What the products cost together.</summary>
    /// <param name="workshop">The workshop, for prices and sales tax.</param>
    /// <param name="products">The price list.</param>
    /// <param name="taken">What the buyer takes.</param>
    /// <param name="agreed">A sum agreed on for all of it, tax included, shared out by price; 0 for a gift; null for the prices.</param>
    /// <exception cref="InputException">A product is not known, or has no price.</exception>
    public static TableBill Bill(Workshop workshop, IReadOnlyList<ProductOnTable> products, IReadOnlyList<Taken> taken,
        decimal? agreed = null)
    {
        var items = taken.GroupBy(t => PriceList.Find(products, t.Product).Product)
            .Select(g => (Product: products.First(p => p.Product == g.Key), Pieces: g.Sum(t => t.Pieces))).ToArray();
        if (items.Length == 0 || items.Any(i => i.Pieces < 1))
            throw new InputException("sale.nothing");
        if (agreed is { } sum)
            return new TableBill([.. Shared(items, sum)
                .Select(s => (s.Product,
                    Item(s.Product, s.Pieces, s.Paid, workshop.Business.SalesTax is { } tax && s.Paid > 0 ? tax.In(s.Paid) : null)))]);
        return new TableBill([.. items.Select(i =>
        {
            var price = i.Pieces * (i.Product.Price ?? throw NoPrice(i.Product));
            var (paid, tax) = workshop.Business.SalesTax?.On(price) ?? (price, (decimal?)null);
            return (i.Product, Item(i.Product, i.Pieces, paid, tax));
        })]);
    }

    /// <summary>Sells what stands on a bill.</summary>
    /// <returns>The entries; all bear one ticket.</returns>
    /// <exception cref="InputException">There are not so many pieces in the house.</exception>
    public static IReadOnlyList<Sale> Sell(OpenBooks book, TableBill bill, string to, string? payment, DateOnly on, string by,
        string? note = null) =>
        TableSales.Sell(book, [.. bill.Items.Select(i => i.Item)], to, payment, on, by, note);

    /// <summary>That a product has no price, and where to write one.</summary>
    public static InputException NoPrice(ProductOnTable product) =>
        new(product.Recipe.File, 0, "price.none", ("recipe", product.Recipe.Name));

    private static SoldItem Item(ProductOnTable product, int pieces, decimal paid, decimal? tax) =>
        new(product.Recipe.Id, product.Recipe.VariantName, pieces, paid, tax);

    // By price where all have one, else by pieces; to the cent, and together the sum.
    private static IEnumerable<(ProductOnTable Product, int Pieces, decimal Paid)> Shared((ProductOnTable Product, int Pieces)[] items,
        decimal sum)
    {
        var priced = items.All(i => i.Product.Price is not null);
        decimal[] weights = [.. items.Select(i => i.Pieces * (priced ? i.Product.Price!.Value : 1m))];
        var (soFar, given) = (0m, 0m);
        foreach (var ((product, pieces), weight) in items.Zip(weights))
        {
            soFar += weight;
            var upTo = Math.Round(sum * soFar / weights.Sum(), 2, MidpointRounding.AwayFromZero);
            yield return (product, pieces, upTo - given);
            given = upTo;
        }
    }
}
