using LabelForge.Recipes.Files;

namespace LabelForge.Recipes;

/// <summary>Moulds of one kind in the workshop.</summary>
/// <param name="Cavities">How many pieces one mould makes.</param>
/// <param name="Holds">What a cavity holds.</param>
/// <param name="Number">How many such moulds there are.</param>
/// <param name="Written">What a cavity holds, as it was written.</param>
public sealed record MouldSet(int Cavities, Mass Holds, int Number, string Written)
{
    /// <summary>Reads <c>moulds:</c> of workshop.yaml.</summary>
    /// <exception cref="InputException">Something in it is wrong.</exception>
    internal static ImmutableArray<MouldSet> ReadAll(MapNode file) => [.. file.Items("moulds").Select(node =>
    {
        var map = (node as MapNode ?? throw node.Refuse("business.not-a-mould", ("kind", node.Kind)))
            .OnlyKeys("A mould", "cavities", "holds", "number");
        var holds = map.Required("holds", "113 g");
        var amount = Amount.Parse(holds.Text);
        return new MouldSet(Count(map.Required("cavities", "6")),
            amount is { IsValue: true, Value.IsMass: true } && amount.Value.AsMass() is { Grams: > 0 and <= 100_000 } mass
            ? mass
            : throw holds.Refuse("business.mould-cavity", ("holds", holds.Text)),
            map.OptionalText("number") is { } number ? Count(number) : 1, holds.Text);
    })];

    private static int Count(TextNode node) =>
        PlainFigure.Whole(node.Text) is > 0 and <= 10_000 and var count
            ? count
            : throw node.Refuse("business.mould-count", ("text", node.Text));
}
