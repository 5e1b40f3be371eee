using LabelForge.Web.Editing;

namespace LabelForge.Web.Workbench;

/// <summary>The products of a workshop to choose from: every recipe, or each of its variants, as their files stand now.</summary>
public static class ProductChoices
{
    /// <summary>The products by the name that <see cref="ProductNames"/> reads, with the name to show.</summary>
    public static IEnumerable<(string Id, string Name)> Of(OpenDocuments documents, Workshop workshop) =>
        workshop.RecipeIds.SelectMany(id => Of(documents, id));

    /// <summary>The products of one recipe.</summary>
    public static IEnumerable<(string Id, string Name)> Of(OpenDocuments documents, string recipe)
    {
        if (documents.Open(OpenDocuments.Recipes, recipe) is not { } file)
            return [(recipe, recipe)];
        var name = YamlEdit.Get(file.Text, "name") is { Length: > 0 } written ? written : recipe;
        var variants = Variants(file.Text);
        return variants.Length == 0 ? [(recipe, name)] : variants.Select(v => ($"{recipe}/{v}", $"{v} ({name})"));
    }

    /// <summary>The names of a recipe's variants.</summary>
    public static string[] Variants(string text) =>
        [.. Enumerable.Range(0, YamlEdit.Count(text, "variants")).Select(i => YamlEdit.Get(text, "variants", i, "name") ?? "")
            .Where(n => n.Length > 0)];

    /// <summary>The name to show for a product.</summary>
    public static string Name(OpenDocuments documents, string product) =>
        product.IndexOf('/') is > 0 and var at
            ? product[(at + 1)..]
            : Of(documents, product) is var all && all.Count() == 1
            ? all.First().Name
            : product;

    /// <summary>A product's name as part of an element's id.</summary>
    public static string ElementId(string product) => string.Concat(product.Select(c => char.IsLetterOrDigit(c) ? c : '-'));
}
