using LabelForge.Print.Documents;
using LabelForge.Print.Jobs;

namespace LabelForge.ProductPapers;

/// <summary>What shops can order: codes, contents, prices and minimums.</summary>
internal static class LineSheet
{
    /// <summary>The terms, and a row for each product.</summary>
    public static ImmutableArray<PaperSection> Of(IReadOnlyList<PaperCase> products)
    {
        var (business, answers) = (products[0].Business, products[0].Answers);
        string Money(decimal sum) => Selling.MarketPapers.Money(products[0].Workshop, sum);
        var rows =
            products.Select(p => (Case: p, Wholesale: Wholesale(p), Gtin: LotSymbol.ItemNumber(p.Workshop, p.Product.Recipe)?.Digits))
                .ToArray();
        string[] unpriced = [.. rows.Where(r => r.Wholesale is null).Select(r => r.Case.Product.Name)];
        string[] uncoded = [.. rows.Where(r => r.Gtin is null).Select(r => r.Case.Product.Name)];
        // A till and a shop's shelf know a product by its number alone.
        string[] shared = [.. rows.Where(r => r.Gtin is not null).GroupBy(r => r.Gtin).Where(g => g.Count() > 1)
            .Select(g => $"{g.Key} is of {string.Join(" and ", g.Select(r => r.Case.Product.Name))}")];
        return
        [
            new PaperSection("terms", "Terms", null)
            {
                Facts =
                [
                    PaperFact.Of("seller", "Seller", BusinessParts.Address(business), "workshop.yaml"),
                    PaperFact.OrMissing("contact", "Orders to", business.ContactLine, "workshop.yaml: contact: { email: ... }",
                        "workshop.yaml"),
                    PaperFact.Of("least-order", "Least order", answers.LeastOrder is { } least ? Money(least) : "none is written",
                        answers.LeastOrder is null ? null : PaperAnswers.FileName, answers.LeastOrder ?? (object)""),
                    PaperFact.OrMissing("terms", "Payment, delivery, returns", answers.Terms,
                        $"{PaperAnswers.FileName}: wholesale: {{ terms: \"...\" }}", PaperAnswers.FileName),
                    .. unpriced.Length == 0
                        ? []
                        : (PaperFact[])[PaperFact.Lacking("prices", "Wholesale prices",
                            $"None for {string.Join(", ", unpriced)}: {PaperAnswers.FileName}: wholesale: {{ share of price: 50 % }} and "
                                + $"price: in the recipe; or products: {{ {unpriced[0]}: {{ wholesale: 4.20 }} }}. None is proposed.")],
                    .. uncoded.Length == 0
                        ? []
                        : (PaperFact[])[PaperFact.Lacking("codes", "Item numbers (GTIN)",
                            $"None for {string.Join(", ", uncoded)}: gtin prefix: in workshop.yaml and item: in the recipe.")],
                    .. shared.Length == 0
                        ? []
                        : (PaperFact[])[PaperFact.Lacking("codes-shared", "Item numbers (GTIN) of their own",
                            $"{string.Join("; ", shared)}: give each an item: of its own in its recipe.")],
                ],
            },
            new PaperSection("products", "Products", null)
            {
                Table = new PaperTable(
                    [new("product", "Product", 3.2), new("code", "code", 2), new("net", "net content", 2),
                        new("price", "retail", 1.4, true), new("wholesale", "wholesale", 1.4, true), new("case", "case", 0.8, true),
                        new("minimum", "least", 0.8, true)],
                    [.. rows.Select(r => (ImmutableArray<PaperValue>)[
                        new(r.Case.Name == r.Case.Product.Name ? r.Case.Name : $"{r.Case.Name} ({r.Case.Product.Name})",
                            r.Case.Product.Name),
                        new(r.Gtin ?? ""),
                        new(r.Case.Job.Content.NetQuantity),
                        Price(r.Case.Product.Recipe.Price), Price(r.Wholesale), Count(r.Case.Own.Case), Count(r.Case.Own.Minimum)])]),
                Notes = [$"Prices in {business.Currency} a piece. Case and least are numbers of pieces."],
            },
        ];
    }

    /// <summary>What a shop pays for a piece: as written, else the share of the price, halves of
    /// a cent up; null where neither says.</summary>
    internal static decimal? Wholesale(PaperCase of) => of.Own.Wholesale
        ?? (of.Answers.WholesaleShare is { } share && of.Product.Recipe.Price is { } price
            ? Math.Round(price * share, 2, MidpointRounding.AwayFromZero)
            : null);

    private static PaperValue Price(decimal? sum) =>
        sum is { } money ? new(money.ToString("0.00", CultureInfo.InvariantCulture), money) : PaperValue.None;

    private static PaperValue Count(int? count) =>
        count is { } pieces ? new(pieces.ToString(CultureInfo.InvariantCulture), pieces) : PaperValue.None;
}
