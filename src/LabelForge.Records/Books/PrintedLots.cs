namespace LabelForge.Records.Books;

/// <summary>Labels are often printed before their batch is begun. Once they are, their lot is that product's, and no other's.</summary>
public static class PrintedLots
{
    /// <summary>Writes down labels printed with a lot.</summary>
    /// <param name="printings">What was printed; all of it stands, or nothing.</param>
    /// <exception cref="InputException">The lot is another product's, by its batch or by labels printed before.</exception>
    public static IReadOnlyList<Printing> Print(OpenBooks book, IReadOnlyList<Printing> printings) => book.Write((_, context) =>
    {
        context.Printings.AddRange(printings);
        return printings;
    });

    /// <summary>What labels of a product were printed with a lot that no batch has.</summary>
    public static Printing? Waiting(IBooks books, string lot) =>
        books.FindBatch(lot) is not null ? null : books.PrintingsOf(lot).FirstOrDefault();

    /// <summary>Of several products that one that labels were printed for with a lot; all where none were.</summary>
    /// <exception cref="InputException">They were printed for none of these.</exception>
    public static ImmutableArray<Product> Of(IBooks books, string lot, ImmutableArray<Product> products)
    {
        if (books.PrintingsOf(lot) is not [var printed, ..])
            return products;
        ImmutableArray<Product> same = [.. products.Where(p => IsSame(printed, p.Recipe))];
        return same.IsEmpty ? throw Refuse(printed, products[0].Recipe.Name) : same;
    }

    /// <summary>Whether labels were printed for a recipe as it stands, or for the variant that it is.</summary>
    public static bool IsSame(Printing printed, Recipe recipe) => IsSame(printed, recipe.Id, recipe.VariantName);

    // Where a recipe got variants after it was printed, or lost them, its lot stays its own.
    internal static bool IsSame(Printing printed, string recipe, string? variant) =>
        printed.Recipe == recipe
            && (printed.Variant is null || variant is null || string.Equals(printed.Variant, variant, StringComparison.OrdinalIgnoreCase));

    internal static InputException Refuse(Printing printed, string other) =>
        new(null, 0, "lot.printed-for-another", ("product", printed.Product), ("lot", printed.Lot), ("on", $"{printed.On:yyyy-MM-dd}"),
            ("other", other), ("printed", printed.Id));
}
