using LabelForge.Lots;

namespace LabelForge.Records.Books;

/// <summary>Products as one lot was really weighed: what is printed and checked for a lot is of what went into it.</summary>
public static class LotProducts
{
    /// <summary>The product of a lot as it was weighed, where the books know the lot; else the products as they are planned.</summary>
    /// <param name="products">What the call names: one product, or all of one recipe.</param>
    /// <param name="market">The market of the label.</param>
    /// <param name="on">The day to judge by.</param>
    /// <exception cref="InputException">The books know the lot as another product.</exception>
    public static ImmutableArray<Product> Of(ImmutableArray<Product> products, LotCode lot, Market market, DateOnly on)
    {
        var workshop = products[0].Workshop;
        if (!OpenBooks.Exists(workshop.Folder))
            return products;
        return OpenBooks.Open(workshop.Folder).Ask(books => books.FindBatch(lot.ToString()) is { } batch
            ? [Weighed(products, books, batch, market, on)]
            : PrintedLots.Of(books, lot.ToString(), products));
    }

    /// <summary>One product as a lot was weighed, or as planned where the books do not know the lot.</summary>
    /// <exception cref="InputException">The books know the lot as another product.</exception>
    public static Product Of(Product product, LotCode lot, Market market, DateOnly on) => Of([product], lot, market, on)[0];

    /// <summary>The product of a batch in the books, by what was weighed into it so far; what is
    /// not yet weighed counts as planned.</summary>
    /// <exception cref="InputException">The batch is of another product.</exception>
    public static Product Weighed(ImmutableArray<Product> products, IBooks books, Batch batch, Market market, DateOnly on)
    {
        var named = Named(products, batch);
        var label = WeighedLabel.Of(named.Workshop, named.Recipe, books, batch, market, on);
        return Product.AsWeighed(new WeighedLot(batch.Lot, [.. label.Changes]), label.Workshop, label.Formula);
    }

    /// <summary>The product of a batch at the bench: of each material what was weighed, or as
    /// much as planned where less was weighed so far.</summary>
    public static Product SoFar(ImmutableArray<Product> products, IBooks books, Batch batch) =>
        Of(products, books, batch, l => Math.Max(l.Weighed, l.Line.Grams));

    /// <summary>The product of a batch as it was begun: by what was planned then.</summary>
    public static Product Begun(ImmutableArray<Product> products, IBooks books, Batch batch) =>
        Of(products, books, batch, l => l.Line.Grams);

    private static Product Of(ImmutableArray<Product> products, IBooks books, Batch batch,
        Func<(FrozenLine Line, decimal Weighed, bool Off), decimal> grams)
    {
        var product = Named(products, batch);
        var stood = FrozenRecipe.FromJson(batch.Frozen).AsItStood(product.Workshop);
        var formula = BatchSize.Of(stood, product.Recipe, Production.Compare(books, batch).Select(l => (l.Line.Material, grams(l))),
            batch.PiecesPlanned);
        return Product.AsWeighed(new WeighedLot(batch.Lot, []), stood, formula);
    }

    private static Product Named(ImmutableArray<Product> products, Batch batch)
    {
        var variant = FrozenRecipe.FromJson(batch.Frozen).Variant;
        return products.FirstOrDefault(p => string.Equals(p.Recipe.VariantName, variant, StringComparison.OrdinalIgnoreCase))
            // Begun while the recipe had no variants: the lot is the recipe as it stands.
            ?? (products.Length > 1 && variant is null
                ? Product.Planned(products[0].Workshop, products[0].Workshop.Recipe(batch.Recipe))
                : products[0]);
    }
}
