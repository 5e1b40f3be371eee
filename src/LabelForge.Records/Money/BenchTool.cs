using LabelForge.Print;
using LabelForge.Recipes.Files;

namespace LabelForge.Records.Money;

/// <summary>A thing that pouring needs and no batch uses up: a scale, a jug, a mould.</summary>
/// <param name="Id">Its id; the name again where it is the maker's own.</param>
/// <param name="Name">What it is, in a few words.</param>
public sealed record BenchTool(string Id, string Name)
{
    /// <summary>What in a list of kinds stands for a recipe that lye goes into.</summary>
    private const string Lye = "lye";

    private static readonly Lazy<ImmutableArray<BenchTool>> Read =
        new(() => [.. Templates.Tree("tools.yaml").Entries.Select(e => Usually(e.Key, (MapNode)e.Value))]);

    /// <summary>What a first pour usually needs: data in templates/tools.yaml, common practice.</summary>
    public static ImmutableArray<BenchTool> Usual => Read.Value;

    /// <summary>The kinds of product that need it, or <c>lye</c>; empty where all do.</summary>
    public ImmutableArray<string> For { get; init; } = [];

    /// <summary>What such a thing costs at most, as is usual, in USD; null where nothing says.</summary>
    public decimal? UsualPrice { get; init; }

    /// <summary>What the maker pays for one; null where the maker has not said.</summary>
    public decimal? Price { get; init; }

    /// <summary>How many pieces one makes at a time; null where it makes none.</summary>
    public int? Pieces { get; init; }

    /// <summary>How many there are already.</summary>
    public int Have { get; init; }

    /// <summary>How many pieces those that are there make at a time.</summary>
    public int PiecesHad { get; init; }

    /// <summary>Whether a product cannot be made without one.</summary>
    public bool IsFor(Product product) => For.IsEmpty || For.Contains(product.Recipe.Product)
        || (For.Contains(Lye) && product.Batch.Lines.Any(l => l.Material.Kind == MaterialKind.Lye));

    /// <summary>What a workshop needs and has: the usual things, as its files say otherwise, and its own.</summary>
    /// <param name="workshop">The workshop, whose scale and moulds are counted.</param>
    /// <param name="costs">Its costs, with the prices of things that were written there.</param>
    public static ImmutableArray<BenchTool> In(Workshop workshop, CostsFile costs)
    {
        var written = costs.Tools.ToDictionary(t => t.Id);
        var moulds = workshop.Business.Moulds;
        return
        [
            .. Usual.Select(u => u.Id switch
            {
                "scale" when workshop.Business.Scale is not null => u with { Have = 1 },
                "mould" when !moulds.IsEmpty =>
                    u with { Have = moulds.Sum(m => m.Number), PiecesHad = moulds.Sum(m => m.Number * m.Cavities) },
                _ => u,
            }).Select(u => written.GetValueOrDefault(u.Id) is { } own ? Over(u, own) : u),
            .. costs.Tools.Where(t => Usual.All(u => u.Id != t.Id)),
        ];
    }

    /// <summary>Reads <c>tools:</c> of costs.yaml.</summary>
    /// <exception cref="InputException">Something in it is wrong.</exception>
    internal static ImmutableArray<BenchTool> ReadAll(MapNode costs)
    {
        var tools = costs.Items("tools").Select(node =>
        {
            var map = (node as MapNode ?? throw node.Refuse("tool.not-a-thing", ("kind", node.Kind)))
                .OnlyKeys("A thing", "use", "price", "pieces", "have");
            var use = map.Required("use", "scale");
            return (Node: use, Tool: new BenchTool(use.Text, Usual.FirstOrDefault(u => u.Id == use.Text)?.Name ?? use.Text)
            {
                Price = map.OptionalText("price") is { } price ? Figure(price) : null,
                Pieces = map.OptionalText("pieces") is { } pieces ? Count(pieces, 1) : null,
                Have = map.OptionalText("have") is { } have ? Count(have, 0) : 0,
            });
        }).ToArray();
        return tools.GroupBy(t => t.Tool.Id).FirstOrDefault(g => g.Count() > 1) is { } twice
            ? throw twice.Last().Node.Refuse("tool.twice", ("tool", twice.Key))
            : [.. tools.Select(t => t.Tool)];
    }

    private static BenchTool Over(BenchTool usual, BenchTool own)
    {
        var pieces = own.Pieces ?? usual.Pieces;
        var have = Math.Max(usual.Have, own.Have);
        return usual with
        {
            Price = own.Price,
            Pieces = pieces,
            Have = have,
            PiecesHad = Math.Max(usual.PiecesHad, own.Have * (pieces ?? 0)),
        };
    }

    private static BenchTool Usually(string id, MapNode map)
    {
        map.OnlyKeys("A usual thing", "name", "usual", "pieces", "for");
        var range = map.Required("usual", "12-25");
        return new BenchTool(id, map.Required("name", "scale").Text)
        {
            UsualPrice = range.Text.Split('-') is [_, var most]
                && PlainFigure.Read(most) is { } price
                ? price : throw range.Refuse("tool.not-a-range", ("text", range.Text)),
            Pieces = map.OptionalText("pieces") is { } pieces ? Count(pieces, 1) : null,
            For = [.. map.Items("for").OfType<TextNode>().Select(k => k.Text)],
        };
    }

    private static decimal Figure(TextNode node) =>
        PlainFigure.Read(node.Text) is >= 0 and <= 1_000_000 and var figure
            ? figure : throw node.Refuse("tool.not-a-price", ("text", node.Text));

    private static int Count(TextNode node, int least) =>
        PlainFigure.Whole(node.Text) is { } count && count >= least && count <= 10_000
            ? count : throw node.Refuse("tool.not-a-count", ("text", node.Text), ("least", least));
}
