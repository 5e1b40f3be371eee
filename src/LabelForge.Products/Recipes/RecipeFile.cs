using LabelForge.Quantities;
using LabelForge.Recipes.Files;
using LabelForge.Recipes.Saponification;

namespace LabelForge.Recipes;

/// <summary>Reads recipes/ID.yaml.</summary>
public static class RecipeFile
{
    private static readonly string[] Keys =
    [
        "name", "identity", "product", "sold as", "claims", "materials", "pieces", "net", "directions", "warnings", "item", "notes",
        "on the market since", "active drug ingredients", "may contain", "yield", "loss", "variants", "package", "period after opening",
        "best before", "origin", "in", "superfat", "declare as", "tolerance", "look", "facts", "price", "steps",
    ];

    /// <summary>The keys that a recipe's file may have.</summary>
    public static IReadOnlyList<string> KnownKeys => Keys;

    /// <summary>Reads a recipe.</summary>
    /// <exception cref="InputException">Something in it is wrong.</exception>
    public static Recipe Read(string id, MapNode file)
    {
        file.OnlyKeys("A recipe", Keys);
        var product = file.Required("product", "soap-bar");
        var materials = MaterialUses.Read(file, "materials");
        if (materials.IsEmpty)
            throw file.Refuse("recipe.no-materials");
        var net = file.OptionalText("net");
        var look = LookWish.Read(file);
        ImmutableArray<string> front = [.. new[] { look.Line, look.Words }.OfType<TextNode>().Select(t => t.Text)];
        return new Recipe
        {
            Id = id,
            File = file.File,
            Name = file.Required("name", "the product's own name").Text,
            Identity = file.OptionalText("identity")?.Text,
            Product = product.Text,
            ProductLine = product.Line,
            SoldAs = ReadSoldAs(file.OptionalText("sold as")),
            Facts = FactsFile.Read(file),
            Claims = [.. file.Texts("claims").Select(t => t.Text), .. front],
            SaidOnFront = front,
            Look = look,
            Materials = materials,
            Yield = LossText.ReadYield(file),
            Losses = LossText.ReadLosses(file),
            Superfat = SoapText.ReadSuperfat(file.OptionalText("superfat")),
            DeclareAs = SoapText.ReadDeclareAs(file.OptionalText("declare as")),
            DeclareAsLine = file.OptionalText("declare as")?.Line ?? 0,
            Tolerance = file.OptionalText("tolerance") is { } tolerance ? ReadTolerance(tolerance) : null,
            Pieces = ReadPieces(file.Required("pieces", "8")),
            Net = net is null ? null : ReadNet(net),
            NetLine = net?.Line ?? 0,
            Price = ReadPrice(file),
            Steps = RecipeStep.ReadAll(file),
            Directions = file.OptionalText("directions")?.Text,
            Warnings = [.. file.Texts("warnings").Select(t => t.Text)],
            Package = file.OptionalMap("package") is { } package ? PackageFile.Read(package) : null,
            Words = MarketWords.Read(file),
            Item = file.OptionalText("item")?.Text,
            OnMarketSince = file.OptionalText("on the market since") is { } since ? ReadDate(since) : null,
            Actives = [.. file.Texts("active drug ingredients").Select(t => new NamedIngredient(t.Text, t.Line))],
            Variants = VariantsFile.Read(file, materials),
            MayContain = [.. file.Texts("may contain").Select(t => new NamedIngredient(t.Text, t.Line))],
        };
    }

    /// <summary>Reads what a piece is sold for.</summary>
    internal static decimal? ReadPrice(MapNode file) => file.OptionalText("price") is not { } node ? null
        : PlainFigure.Read(node.Text) is > 0 and <= 1_000_000 and var price && price == Math.Round(price, 2)
        ? price
        : throw node.Refuse("recipe.not-a-price", ("text", node.Text));

    /// <summary>Reads a day.</summary>
    internal static DateOnly ReadDate(TextNode node) =>
        IsoDay.Read(node.Text) is { } date
            ? date
            : throw node.Refuse("recipe.not-a-date", ("text", node.Text));

    private static SoldAs ReadSoldAs(TextNode? node) => node?.Text switch
    {
        null or "cosmetic" => SoldAs.Cosmetic,
        "soap" => SoldAs.Soap,
        var other => throw node!.Refuse("recipe.sold-as", ("other", other)),
    };

    private static int ReadPieces(TextNode node) =>
        PlainFigure.Whole(node.Text) is > 0 and <= 1_000_000 and var pieces
            ? pieces
            : throw node.Refuse("recipe.pieces", ("text", node.Text));

    private static decimal ReadTolerance(TextNode node)
    {
        var figure = node.Text.EndsWith('%') ? node.Text.TrimEnd('%', ' ') : "";
        return PlainFigure.Read(figure) is > 0 and <= 50 and var percent
            ? percent / 100m
            : throw node.Refuse("recipe.tolerance", ("text", node.Text));
    }

    private static NetAmount ReadNet(TextNode node)
    {
        var parsed = NetAmount.Parse(node.Text);
        return parsed.IsValue ? parsed.Value : throw node.Refuse(parsed.Problem);
    }
}
