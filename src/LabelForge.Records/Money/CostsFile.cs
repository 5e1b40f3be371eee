using LabelForge.Recipes.Files;

namespace LabelForge.Records.Money;

/// <summary>What a piece costs besides its materials, from costs.yaml in the workshop; all zero where there is no such file.</summary>
/// <param name="Wage">Paid for an hour of work, the maker's own too.</param>
/// <param name="Minutes">Minutes of work a batch.</param>
/// <param name="Overhead">Rent, insurance and the like, a batch.</param>
/// <param name="Label">A printed label, ink and all, a piece.</param>
/// <param name="FeeShare">The share of the price that a marketplace or card takes.</param>
/// <param name="FeeEach">The fixed fee a sale of one piece.</param>
/// <param name="Margin">The share of the price wanted as profit.</param>
/// <param name="Packaging">Packaging a piece: material id and how many.</param>
public sealed record CostsFile(decimal Wage, decimal Minutes, decimal Overhead, decimal Label, decimal FeeShare, decimal FeeEach,
    decimal Margin, ImmutableArray<(string Material, decimal Count)> Packaging)
{
    /// <summary>The file's name.</summary>
    public const string FileName = "costs.yaml";

    /// <summary>The things that pouring needs, as the maker has or buys them; what is left out is as usual.</summary>
    public ImmutableArray<BenchTool> Tools { get; init; } = [];

    /// <summary>No costs besides the materials, and half of the price as profit wanted: common practice.</summary>
    public static CostsFile None { get; } = new(0, 0, 0, 0, 0, 0, 0.5m, []);

    /// <summary>Reads a workshop's costs.yaml.</summary>
    /// <exception cref="InputException">Something in it is wrong.</exception>
    public static CostsFile Of(Workshop workshop)
    {
        var path = Path.Combine(workshop.Folder, FileName);
        if (!File.Exists(path))
            return None;
        return Read(YamlFile.Read(path, FileName), workshop);
    }

    /// <summary>Reads costs as they stand in a file.</summary>
    /// <param name="costs">The file.</param>
    /// <param name="workshop">The workshop that its packaging must be in; null where that is looked at later.</param>
    /// <exception cref="InputException">Something in it is wrong.</exception>
    public static CostsFile Read(MapNode costs, Workshop? workshop)
    {
        var file = costs.OnlyKeys("The costs", "wage", "minutes", "overhead", "label", "fee share", "fee each", "margin", "packaging",
            "tools");
        decimal Figure(string key, decimal otherwise) => file.OptionalText(key) is not { } node ? otherwise
            : PlainFigure.Read(node.Text) is { } figure ? figure
            : throw node.Refuse("money.not-a-figure", ("text", node.Text), ("key", key));
        decimal Share(string key, decimal otherwise) => file.OptionalText(key) is not { } node ? otherwise
            : node.Text.EndsWith('%')
                && PlainFigure.Read(node.Text.TrimEnd('%', ' ')) is < 100 and var figure ? figure / 100m
            : throw node.Refuse("money.not-a-share", ("text", node.Text), ("key", key));
        return new CostsFile(Figure("wage", 0), Figure("minutes", 0), Figure("overhead", 0), Figure("label", 0), Share("fee share", 0),
        Figure("fee each", 0), Share("margin", None.Margin), [.. file.Items("packaging").Select(node =>
        {
            var map = (node as MapNode ?? throw node.Refuse("money.not-packaging")).OnlyKeys("Packaging", "use", "count");
            var use = map.Required("use", "clear-bag");
            var count = map.Required("count", "1");
            workshop?.Material(use.Text, FileName, use.Line);
            return PlainFigure.Read(count.Text) is > 0 and var n
                ? (use.Text, n)
                : throw count.Refuse("money.not-a-number", ("count", count.Text));
        })])
        { Tools = BenchTool.ReadAll(file) };
    }
}
