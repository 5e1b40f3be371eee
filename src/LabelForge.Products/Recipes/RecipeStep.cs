using LabelForge.Recipes.Files;

namespace LabelForge.Recipes;

/// <summary>A step of the maker's own, in the order of work.</summary>
/// <param name="Text">What to do, in the maker's words; beside a material, what to mind when it goes in; empty where nothing.</param>
/// <param name="Adds">The id, or the kind, of the material that goes in now; null for a step that adds nothing.</param>
/// <param name="Line">The line it stands on.</param>
public sealed record RecipeStep(string Text, string? Adds, int Line)
{
    /// <summary>Reads <c>steps:</c> of a recipe.</summary>
    /// <exception cref="InputException">Something in it is wrong.</exception>
    internal static ImmutableArray<RecipeStep> ReadAll(MapNode file) => [.. file.Items("steps").Select(node => node switch
    {
        TextNode { Text.Length: > 0 } text => new RecipeStep(text.Text, null, text.Line),
        MapNode map when map.OnlyKeys("A step", "add", "note") is var step && step.Required("add", "fragrance") is var add =>
            new RecipeStep(step.OptionalText("note")?.Text ?? "", add.Text, add.Line),
        _ => throw node.Refuse("recipe.not-a-step", ("kind", node.Kind)),
    })];

    /// <summary>Whether a material goes in at this step: by its id, or by its kind.</summary>
    public bool Takes(Material material) => Adds is { } adds
        && (adds == material.Id || string.Equals(adds, material.Kind.ToString(), StringComparison.OrdinalIgnoreCase));
}
