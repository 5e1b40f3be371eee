using LabelForge.Recipes.Files;

namespace LabelForge.Recipes;

/// <summary>Reads lists of <c>{ use: ID, amount: ... }</c>.</summary>
public static class MaterialUses
{
    /// <summary>Reads the list under a key; empty where the key is not there.</summary>
    /// <exception cref="InputException">An entry is not a use, or its amount cannot be read.</exception>
    public static ImmutableArray<MaterialUse> Read(MapNode file, string key) => [.. file.Items(key).Select(ReadOne)];

    /// <summary>Reads one use.</summary>
    internal static MaterialUse ReadOne(Node node)
    {
        var map = node as MapNode ?? throw node.Refuse("material.not-a-use", ("kind", node.Kind));
        map.OnlyKeys("A material in a recipe", "use", "amount");
        var use = map.Required("use", "clear-base");
        var amount = map.Required("amount", "900 g");
        var parsed = amount.Text == Amount.BySuperfatText ? Parsed<Amount>.Of(Amount.BySuperfat) : Amount.Parse(amount.Text);
        return parsed.IsValue
            ? new MaterialUse(use.Text, parsed.Value, use.Line)
            : throw amount.Refuse(parsed.Problem);
    }
}
