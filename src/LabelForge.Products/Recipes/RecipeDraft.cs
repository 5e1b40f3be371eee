using LabelForge.Recipes.Files;

namespace LabelForge.Recipes;

/// <summary>A new recipe's file, from the few things that it cannot do without. What is empty is left out.</summary>
/// <param name="Name">The product's own name.</param>
/// <param name="Identity">What it is, in common words.</param>
/// <param name="Product">The product kind's id.</param>
/// <param name="Material">The id of the material that makes up most of it.</param>
/// <param name="Amount">How much of it.</param>
/// <param name="Pieces">How many pieces the batch makes.</param>
public sealed record RecipeDraft(string Name, string Identity, string Product, string Material, string Amount, string Pieces)
{
    /// <summary>The file's text; it can be read back at once.</summary>
    /// <exception cref="InputException">Something in it cannot be used.</exception>
    public string ToYaml()
    {
        var text = new StringBuilder();
        Line(text, "name", Name);
        Line(text, "identity", Identity);
        Line(text, "product", Product);
        text.Append(CultureInfo.InvariantCulture, $"materials:\n  - {{ use: {YamlScalar.Line(Material)}, amount: {YamlScalar.Line(Amount)} }}\n");
        Line(text, "pieces", Pieces);
        RecipeFile.Read("new", YamlFile.ReadText(text.ToString(), "The recipe"));
        return text.ToString();
    }

    private static void Line(StringBuilder text, string key, string value)
    {
        if (!string.IsNullOrWhiteSpace(value))
            text.Append(CultureInfo.InvariantCulture, $"{key}: {YamlScalar.Line(value)}\n");
    }
}
