using LabelForge.Recipes.Files;

namespace LabelForge.Recipes;

/// <summary>What the finished batch weighed, as the recipe says.</summary>
public sealed record WrittenYield(Mass Mass, int Line);

/// <summary>What left the batch while it was made, as the recipe says: a mass, or a share of what was weighed in.</summary>
/// <param name="Amount">A mass, or a percentage of the batch.</param>
/// <param name="Ingredient">What left, as written: <c>water</c>.</param>
/// <param name="Line">The line it stands on.</param>
public sealed record WrittenLoss(Amount Amount, string Ingredient, int Line);

/// <summary>Reads what a recipe says of losses: <c>yield: 870 g</c>, or <c>loss: 3 % water</c>, <c>loss: 20 g water</c>.</summary>
internal static partial class LossText
{
    /// <summary>What leaves a batch that is melted, boiled or cured, where the recipe gives only its yield.</summary>
    public const string UsualLoss = "water";

    /// <summary>The yield, or null.</summary>
    /// <exception cref="InputException">It is no mass, or the recipe gives losses too.</exception>
    public static WrittenYield? ReadYield(MapNode file)
    {
        if (file.OptionalText("yield") is not { } node)
            return null;
        if (file["loss"] is { } loss)
            throw loss.Refuse("recipe.yield-and-loss");
        var parsed = Amount.Parse(node.Text);
        return parsed is { IsValue: true, Value.IsMass: true }
            ? new WrittenYield(parsed.Value.AsMass(), node.Line)
            : throw node.Refuse("recipe.yield", ("text", node.Text));
    }

    /// <summary>The losses; none where the recipe has none.</summary>
    /// <exception cref="InputException">One cannot be read.</exception>
    public static ImmutableArray<WrittenLoss> ReadLosses(MapNode file) => [.. file.Texts("loss").Select(ReadLoss)];

    private static WrittenLoss ReadLoss(TextNode node)
    {
        var match = Shape().Match(node.Text);
        if (!match.Success)
            throw node.Refuse("recipe.loss-how-much", ("text", node.Text));
        var written = match.Groups["amount"].Value.Trim();
        var parsed = Amount.Parse(written.EndsWith('%') ? written + " of batch" : written);
        return parsed switch
        {
            { IsValue: false } => throw node.Refuse("recipe.loss-amount", ("inner", parsed.Problem)),
            { Value.IsVolume: true } => throw node.Refuse("recipe.loss-by-volume", ("written", written)),
            _ => new WrittenLoss(parsed.Value, match.Groups["what"].Value.Trim(), node.Line),
        };
    }

    [GeneratedRegex(@"^(?<amount>-?\s*[0-9.]+\s*(?:%|[A-Za-z]+))\s+(?:of\s+batch\s+)?(?:of\s+)?(?<what>\S.*)$")]
    private static partial Regex Shape();
}
