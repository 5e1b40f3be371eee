namespace LabelForge.Recipes.Files;

/// <summary>Where a value stands in its file: a key, or a position in a list, below another place.</summary>
/// <param name="Above">The place that holds it; null for the root.</param>
/// <param name="Step">The key, or the position counted from 0.</param>
public sealed record NodePath(NodePath? Above, string Step)
{
    /// <summary>A position in a list.</summary>
    public NodePath(NodePath? above, int position) : this(above, position.ToString(System.Globalization.CultureInfo.InvariantCulture))
    {
    }

    /// <summary>Keys and positions, parted by strokes: <c>materials/2/amount</c>.</summary>
    public override string ToString() => Above is null ? Step : $"{Above}/{Step}";
}
