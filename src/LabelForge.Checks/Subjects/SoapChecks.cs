using LabelForge.Ingredients;

namespace LabelForge.Checks.Subjects;

/// <summary>Whether what is sold as soap is soap: what cleans in it must be the salts of fatty acids alone, whether a label names another
/// cleanser or a recipe holds one.</summary>
internal static partial class SoapChecks
{
    public static void Check(CheckCase label)
    {
        if (label.SoldAs != SoldAs.Soap)
            return;
        // A soap need not list what is in it: of a recipe its composition tells.
        var names = label.Product is { } product
            ? product.Declaration.Ingredients.Select(i => (i.Name, Known: label.Dictionary.Find(i.Name)))
            : label.Names;
        if (names.Where(n => IsDetergent(n.Name, n.Known)).Select(n => n.Name).ToArray() is { Length: > 0 } found)
            label.Tell("claim.soap-with-detergent", "ingredients", string.Join(", ", found));
    }

    private static bool IsDetergent(string name, Ingredient? known) =>
        known?.Roles[0] == IngredientRole.Surfactant || Synthetic().IsMatch(name);

    [GeneratedRegex(@"laureth sulfate|lauryl sulfate|coco[- ]sulfate|isethionate|sulfosuccinate|olefin sulfonate|[- "
        + @"]betaine|glucoside|taurate|sulfoacetate", RegexOptions.IgnoreCase)]
    private static partial Regex Synthetic();
}
