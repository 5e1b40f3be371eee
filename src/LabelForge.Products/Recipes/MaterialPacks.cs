using System.Collections.Immutable;
using System.Globalization;
using LabelForge.Measures;
using LabelForge.Recipes.Files;

namespace LabelForge.Recipes;

/// <summary>Reads a material's <c>packs: [ { size: 5 lb, price: 31.50 } ]</c>.</summary>
internal static class MaterialPacks
{
    public static ImmutableArray<MaterialPack> Read(MapNode file) => [.. file.Items("packs").Select(node =>
    {
        var map = (node as MapNode ?? throw node.Refuse($"This is {node.Kind}, not a pack.", "Write { size: 5 lb, price: 31.50 }")).OnlyKeys("A pack", "size", "price");
        var size = map.Required("size", "5 lb");
        var price = map.Required("price", "31.50");
        if (!size.Text.EndsWith(" pieces", StringComparison.Ordinal) && Amount.Parse(size.Text) is { IsValue: false } refused)
            throw size.Refuse(refused.Wrong, refused.Write);
        return decimal.TryParse(price.Text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var money)
            ? new MaterialPack(size.Text, money, map.Line)
            : throw price.Refuse($"\"{price.Text}\" is not a price.", "Write a plain figure with a decimal point: price: 31.50");
    })];
}
