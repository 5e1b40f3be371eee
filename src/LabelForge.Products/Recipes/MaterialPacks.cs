using LabelForge.Recipes.Files;

namespace LabelForge.Recipes;

/// <summary>Reads a material's <c>packs: [ { size: 5 lb, price: 31.50 } ]</c>.</summary>
internal static class MaterialPacks
{
    public static ImmutableArray<MaterialPack> Read(MapNode file) => [.. file.Items("packs").Select(node =>
    {
        var map = (node as MapNode ?? throw node.Refuse("material.not-a-pack", ("kind", node.Kind))).OnlyKeys("A pack", "size", "price");
        var size = map.Required("size", "5 lb");
        var price = map.Required("price", "31.50");
        if (!size.Text.EndsWith(" pieces", StringComparison.Ordinal) && Amount.Parse(size.Text) is { IsValue: false } refused)
            throw size.Refuse(refused.Problem);
        return PlainFigure.Read(price.Text) is { } money
            ? new MaterialPack(size.Text, money, map.Line)
            : throw price.Refuse("material.not-a-price", ("price", price.Text));
    })];
}
