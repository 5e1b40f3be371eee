using LabelForge.Lots;
using LabelForge.Records.Books;

namespace LabelForge.Cli.Verbs;

/// <summary>Binds what is printed or checked for a lot to what the books say was weighed into it.</summary>
internal static class LotBinding
{
    /// <summary>The lot's product as it was weighed, where the books know the lot; else the products as they are planned.</summary>
    /// <remarks>What changes on the label is told on standard error before anything is printed.</remarks>
    public static ImmutableArray<Product> Bind(ImmutableArray<Product> products, LotCode lot, Market market, DateOnly on)
    {
        var bound = LotProducts.Of(products, lot, market, on);
        foreach (var change in bound.SelectMany(p => p.Weighed?.Changes ?? []))
            Console.Error.WriteLine($"Lot {lot}, by what was really weighed: {change} This goes by what was weighed.");
        return bound;
    }
}
