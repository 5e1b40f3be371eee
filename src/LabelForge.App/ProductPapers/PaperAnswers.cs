using LabelForge.Recipes.Files;

namespace LabelForge.ProductPapers;

/// <summary>What papers.yaml says of one product.</summary>
/// <param name="Looks">What it looks like.</param>
/// <param name="Smells">What it smells like.</param>
/// <param name="Ph">Its pH, as measured, in the maker's words.</param>
/// <param name="Category">Its category in the words of the office that is notified.</param>
/// <param name="Frame">The frame formulation that was chosen.</param>
/// <param name="Listing">Its listing number.</param>
/// <param name="Wholesale">What a shop pays for a piece; null where it follows from the share of the price.</param>
/// <param name="Case">How many pieces a case holds; null where it is sold by the piece.</param>
/// <param name="Minimum">The fewest pieces of it that a shop takes; null for none.</param>
public sealed record ProductAnswers(string? Looks, string? Smells, string? Ph, string? Category, string? Frame, string? Listing,
    decimal? Wholesale, int? Case, int? Minimum)
{
    /// <summary>Nothing is said.</summary>
    public static ProductAnswers None { get; } = new(null, null, null, null, null, null, null, null, null);
}

/// <summary>What papers ask that nothing else in the workshop says, from papers.yaml; each key may be left out.</summary>
public sealed record PaperAnswers
{
    /// <summary>The file's name.</summary>
    public const string FileName = "papers.yaml";

    /// <summary>The person to contact.</summary>
    public string? Contact { get; init; }

    /// <summary>Where the product is to be placed on the market.</summary>
    public ImmutableArray<string> SoldIn { get; init; } = [];

    /// <summary>Who signs, with a title.</summary>
    public string? Signs { get; init; }

    /// <summary>Who makes the product, where another does.</summary>
    public string? Maker { get; init; }

    /// <summary>The facility's registration number.</summary>
    public string? Facility { get; init; }

    /// <summary>The agent of a foreign facility.</summary>
    public string? Agent { get; init; }

    /// <summary>Brand names beside the business's own.</summary>
    public ImmutableArray<string> Brands { get; init; } = [];

    /// <summary>Whether sales are to go on; null where nobody has said.</summary>
    public bool? GoesOn { get; init; }

    /// <summary>Gross sales of cosmetics by year.</summary>
    public ImmutableSortedDictionary<int, decimal> Sales { get; init; } = ImmutableSortedDictionary<int, decimal>.Empty;

    /// <summary>What the business makes, by the names in <see cref="SmallBusinessTest.Asked"/>; what is not in it is open.</summary>
    public ImmutableDictionary<string, bool> Makes { get; init; } = ImmutableDictionary<string, bool>.Empty;

    /// <summary>What a shop pays, as a share of the price in the recipe, 0.5 for half; null where prices are written one by one.</summary>
    public decimal? WholesaleShare { get; init; }

    /// <summary>The least order in money; null for none.</summary>
    public decimal? LeastOrder { get; init; }

    /// <summary>Terms in the maker's words.</summary>
    public string? Terms { get; init; }

    /// <summary>What is said of products, by their names.</summary>
    public ImmutableDictionary<string, ProductAnswers> Products { get; init; } = ImmutableDictionary<string, ProductAnswers>.Empty;

    /// <summary>What is said of a product: under its own name, else under its recipe's.</summary>
    public ProductAnswers Of(Product product) =>
        Products.GetValueOrDefault(product.Name) ?? Products.GetValueOrDefault(product.Recipe.Id) ?? ProductAnswers.None;

    /// <summary>Reads a workshop's papers.yaml; nothing is said where there is none.</summary>
    /// <exception cref="InputException">Something in it is wrong.</exception>
    public static PaperAnswers Of(Workshop workshop)
    {
        var path = Path.Combine(workshop.Folder, FileName);
        return File.Exists(path) ? Read(YamlFile.Read(path, FileName)) : new PaperAnswers();
    }

    private static PaperAnswers Read(MapNode file)
    {
        file.OnlyKeys("The answers for papers", "contact person", "sold in", "signs", "maker", "facility number", "agent", "brands",
            "sales go on", "sales of cosmetics", "we make", "wholesale", "products");
        string? Text(string key) => file.OptionalText(key)?.Text;
        var wholesale = file.OptionalMap("wholesale")?.OnlyKeys("What shops pay", "share of price", "least order", "terms");
        return new PaperAnswers
        {
            Contact = Text("contact person"),
            SoldIn = [.. file.Texts("sold in").Select(t => t.Text)],
            Signs = Text("signs"),
            Maker = Text("maker"),
            Facility = Text("facility number"),
            Agent = Text("agent"),
            Brands = [.. file.Texts("brands").Select(t => t.Text)],
            GoesOn = file.OptionalText("sales go on") is { } goes ? YesOrNo(goes) : null,
            Sales = (file.OptionalMap("sales of cosmetics")?.Entries ?? [])
                .ToImmutableSortedDictionary(Year, e => Figure(Value(e), "8200.00")),
            Makes = file.OptionalMap("we make")?.OnlyKeys("What is made", [.. SmallBusinessTest.Asked.Select(a => a.Key)]) is { } makes
                ? makes.Entries.ToImmutableDictionary(e => e.Key, e => YesOrNo(Value(e)))
                : ImmutableDictionary<string, bool>.Empty,
            WholesaleShare = wholesale?.OptionalText("share of price") is { } share ? Share(share) : null,
            LeastOrder = wholesale?.OptionalText("least order") is { } least ? Figure(least, "150.00") : null,
            Terms = wholesale?.OptionalText("terms")?.Text,
            Products = (file.OptionalMap("products")?.Entries ?? []).ToImmutableDictionary(e => e.Key, Product),
        };
    }

    private static ProductAnswers Product(Entry entry)
    {
        if (entry.Value is not MapNode map)
            throw entry.Value.Refuse("papers.keys", ("name", entry.Key));
        map.OnlyKeys("A product's answers", "looks", "smells", "ph", "category", "frame formulation", "listing number", "wholesale",
            "case", "minimum");
        string? Text(string key) => map.OptionalText(key)?.Text;
        int? Whole(string key) => map.OptionalText(key) is not { } node ? null
            : PlainFigure.Whole(node.Text) is > 0 and var whole ? whole
            : throw node.Refuse("papers.pieces", ("text", node.Text), ("key", key));
        return new ProductAnswers(Text("looks"), Text("smells"), Text("ph"), Text("category"), Text("frame formulation"),
            Text("listing number"), map.OptionalText("wholesale") is { } price ? Figure(price, "4.20") : null, Whole("case"),
            Whole("minimum"));
    }

    private static int Year(Entry entry) =>
        PlainFigure.Whole(entry.Key) is >= 1900 and <= 2200 and var year
            ? year
            : throw entry.Value.Refuse("papers.year", ("name", entry.Key));

    private static TextNode Value(Entry entry) =>
        entry.Value as TextNode ?? throw entry.Value.Refuse("papers.one-value", ("name", entry.Key));

    private static bool YesOrNo(TextNode node) => node.Text.Trim().ToLowerInvariant() switch
    {
        "yes" or "true" => true,
        "no" or "false" => false,
        _ => throw node.Refuse("papers.yes-or-no", ("text", node.Text)),
    };

    private static decimal Figure(TextNode node, string example) =>
        PlainFigure.Read(node.Text) is { } figure
            ? figure
            : throw node.Refuse("papers.sum", ("text", node.Text), ("example", example));

    private static decimal Share(TextNode node) =>
        node.Text.EndsWith('%')
            && PlainFigure.Read(node.Text.TrimEnd('%', ' ')) is > 0 and <= 100 and var percent
            ? percent / 100m
            : throw node.Refuse("papers.share", ("text", node.Text));
}
