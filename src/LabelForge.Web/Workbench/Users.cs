using LabelForge.Web.Editing;

namespace LabelForge.Web.Workbench;

/// <summary>Who would miss a file that is taken out of the workshop.</summary>
public static class Users
{
    /// <summary>The recipes and materials that use a material, by the names that people see; drafts too.</summary>
    public static IReadOnlyList<string> OfMaterial(OpenDocuments documents, string material) =>
    [
        .. documents.Ids(OpenDocuments.Recipes).Where(id => InRecipe(Text(documents, OpenDocuments.Recipes, id), material))
            .Select(id => Name(documents, OpenDocuments.Recipes, id)),
        .. documents.Ids(OpenDocuments.Materials)
            .Where(id => id != material && Lists(Text(documents, OpenDocuments.Materials, id), material, "made from"))
            .Select(id => Name(documents, OpenDocuments.Materials, id)),
    ];

    /// <summary>Whether a recipe's text uses a material: in itself or in a variant.</summary>
    public static bool InRecipe(string text, string material) => Lists(text, material, "materials")
        || Enumerable.Range(0, YamlEdit.Count(text, "variants")).Any(v => Lists(text, material, "variants", v, "add")
            || YamlEdit.Keys(text, "variants", v, "replace")
                .Any(r => r == material
                    || YamlEdit.Get(text, "variants", v, "replace", r) == material
                    || YamlEdit.Get(text, "variants", v, "replace", r, "use") == material));

    private static bool Lists(string text, string material, params Step[] list) =>
        Enumerable.Range(0, YamlEdit.Count(text, list)).Any(i => YamlEdit.Get(text, [.. list, i, "use"]) == material);

    private static string Text(OpenDocuments documents, string room, string id) => documents.Open(room, id)?.Text ?? "";

    private static string Name(OpenDocuments documents, string room, string id) =>
        YamlEdit.Get(Text(documents, room, id), "name") is { Length: > 0 } name ? name : id;
}
