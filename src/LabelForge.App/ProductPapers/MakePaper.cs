using LabelForge.Lots;
using LabelForge.Print.Documents;
using LabelForge.Print.Output;
using LabelForge.Records.Books;

namespace LabelForge.ProductPapers;

/// <summary>What a person asks for: a paper of something.</summary>
/// <param name="Kind">Which paper, as <c>product-file</c>.</param>
/// <param name="Of">What it is of: products, a lot, materials or suppliers; empty for all that there are.</param>
/// <param name="On">The day.</param>
/// <param name="Market">The market; null for the workshop's.</param>
public sealed record PaperCall(string Kind, ImmutableArray<string> Of, DateOnly On, Market? Market = null);

/// <summary>Makes the papers that go with products: for the command and the page alike.</summary>
public static class MakePaper
{
    private const string Lot = "lot-certificate";
    private const string Shops = "shop-sheet";
    private const string Line = "line-sheet";
    private const string Supplier = "supplier-questions";

    /// <summary>The papers that there are for a market.</summary>
    public static ImmutableArray<PaperDuty> Known(Market market) => PaperDuty.Of(market);

    /// <summary>Whether a paper is of one product or lot alone, so that several make several papers.</summary>
    public static bool IsOfOne(string kind) => kind is not (Shops or Line or Supplier);

    /// <summary>Makes it.</summary>
    /// <param name="call">What is asked for.</param>
    /// <param name="books">The books; null where none are kept.</param>
    /// <exception cref="InputException">There is no such paper in that market, or no such thing, or it cannot be declared.</exception>
    public static Paper Run(PaperCall call, Workshop workshop, IBooks? books)
    {
        var market = call.Market ?? workshop.Market;
        var known = Known(market);
        var duty = known.FirstOrDefault(d => d.Id == call.Kind)
            ?? throw new InputException("papers.unknown", ("kind", call.Kind), ("market", market.Name),
                ("list", string.Join(", ", known.Select(d => d.Id))), ("elsewhere", Elsewhere(call.Kind, market.Book)));
        return duty.Id switch
        {
            Lot => OfLot(duty, call, workshop, market, books),
            Shops or Line => OfProducts(duty, call, workshop, market, books),
            Supplier => OfMaterials(duty, call, workshop, market),
            _ => OfProduct(duty, call, workshop, market, books),
        };
    }

    /// <summary>Writes it as a PDF.</summary>
    public static void WritePdf(string path, Paper paper, DateOnly on) => PaperWriter.WritePdf(path, paper, Info(paper, on));

    /// <summary>Writes it as a PDF.</summary>
    public static void WritePdf(Stream stream, Paper paper, DateOnly on) => PaperWriter.WritePdf(stream, paper, Info(paper, on));

    private static DocumentInfo Info(Paper paper, DateOnly on) =>
        new($"{paper.Title}, {paper.Subtitle}", on);

    private static Paper OfProduct(PaperDuty duty, PaperCall call, Workshop workshop, Market market, IBooks? books)
    {
        var products = Products(call, workshop);
        if (products is not [var product])
            throw new InputException("papers.of-one-product", ("title", duty.Title.ToLowerInvariant()),
                ("count", products.Length), ("list", string.Join(", ", products.Select(p => $"\"{p.Name}\"").Take(12))));
        var of = new PaperCase(product, market, call.On, books);
        return Framed(duty, market, call.On, workshop, $"{of.Name}, {workshop.Business.Name}", DutyPapers.Of(duty, of));
    }

    private static Paper OfProducts(PaperDuty duty, PaperCall call, Workshop workshop, Market market, IBooks? books)
    {
        PaperCase[] products = [.. Products(call, workshop).Select(p => new PaperCase(p, market, call.On, books))];
        if (products.Length == 0)
            throw new InputException("papers.no-product");
        return Framed(duty, market, call.On, workshop, workshop.Business.Name,
            duty.Id == Line ? LineSheet.Of(products) : ShopSheet.Of(products));
    }

    private static Paper OfLot(PaperDuty duty, PaperCall call, Workshop workshop, Market market, IBooks? books)
    {
        if (call.Of is not [var named])
            throw new InputException("papers.of-one-lot");
        if (books is null)
            throw new InputException("batches.none");
        var lot = PieceCode.LotOf(named).OrRefuse();
        var batch = books.BatchOf(lot.ToString());
        var product = LotProducts.Weighed(workshop.ProductsOf(batch.Recipe), books, batch, market, call.On);
        var of = new PaperCase(product, market, call.On, books, lot);
        return Framed(duty, market, call.On, workshop, $"{of.Name}, lot {lot}", LotCertificate.Of(of, BatchRecord.Of(books, batch)));
    }

    private static Paper OfMaterials(PaperDuty duty, PaperCall call, Workshop workshop, Market market)
    {
        var sold = workshop.Materials.Values.Where(m => m.MadeFrom.IsEmpty && m.Kind is not (MaterialKind.Water or MaterialKind.Packaging))
            .OrderBy(m => m.Supplier, StringComparer.Ordinal).ThenBy(m => m.Name, StringComparer.Ordinal).ToArray();
        Material[] asked = call.Of.IsEmpty ? sold : [.. call.Of.SelectMany(named =>
            workshop.Materials.ContainsKey(named) ? [workshop.Materials[named]]
            : sold.Where(m => string.Equals(m.Supplier, named, StringComparison.OrdinalIgnoreCase)).ToArray() is { Length: > 0 } theirs
            ? theirs
            : [workshop.Material(named, "the call", 0)])];
        string?[] suppliers = [.. asked.Select(m => m.Supplier).Distinct()];
        return Framed(duty, market, call.On, workshop,
            suppliers is [{ } one] ? $"To {one}, from {workshop.Business.Name}" : $"From {workshop.Business.Name}",
            SupplierPaper.Of(asked, workshop.Dictionary));
    }

    private static ImmutableArray<Product> Products(PaperCall call, Workshop workshop) =>
        [.. (call.Of.IsEmpty ? workshop.RecipeIds : call.Of).SelectMany(name => workshop.ProductsOf(name))];

    private static Paper Framed(PaperDuty duty, Market market, DateOnly on, Workshop workshop, string subtitle,
        ImmutableArray<PaperSection> sections)
    {
        var letter = market.Ways.Paper == "letter";
        return new Paper(duty.Id, duty.Title, $"{subtitle} · {market.Name} · {on.ToIso()}",
            duty.Basis == Basis.Memory || duty.Read is null ? duty.Citation : $"{duty.Citation}; read: {Copy(duty.Read)}")
        {
            Sections = sections,
            Notes = duty.Notes,
            Foot =
                $"{duty.Title} · {workshop.Business.Name} · {on.ToIso()} · from the workshop's own files and books; no assessment "
                    + $"of safety and no promise that it is lawful",
            PageWidth = letter ? Length.FromInches(8.5m) : Length.FromMillimetres(210m),
            PageHeight = letter ? Length.FromInches(11m) : Length.FromMillimetres(297m),
        };
    }

    private static string Copy(string read) =>
        LawTexts.Find(read) is { } text ? $"{text.Copy}{(text.NotRead is { } not ? $"; not read: {not}" : "")}" : read;

    private static string Elsewhere(string kind, MarketBook markets) =>
        markets.All.Where(m => Known(m).Any(d => d.Id == kind)).Select(m => m.Id).ToArray() is { Length: > 0 } where
            ? $"; {kind} is known for the markets {string.Join(" and ", where)}" : "";
}
