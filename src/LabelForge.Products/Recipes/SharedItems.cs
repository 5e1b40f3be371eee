using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using LabelForge.Measures;

namespace LabelForge.Recipes;

/// <summary>Item numbers that more than one product of a workshop bears: under one prefix they make one GTIN.</summary>
public static class SharedItems
{
    /// <summary>The other products with a recipe's item number, in the order of their recipes; empty where it has no number, or the
    /// business no prefix to make a GTIN of it.</summary>
    /// <param name="workshop">The workshop; its other recipes are read from their files, where these hold the number at all.</param>
    /// <param name="recipe">The recipe, a variant's number in place.</param>
    public static ImmutableArray<string> Of(Workshop workshop, Recipe recipe)
    {
        if (workshop.Business.GtinPrefix is null || Number(recipe.Item) is not { } number)
            return [];
        var written = new Regex(string.Create(CultureInfo.InvariantCulture, $@"\bitem\W+0*{number}\b"), RegexOptions.CultureInvariant);
        return [.. workshop.RecipeIds.Where(id => Text(workshop, id) is { } text && written.IsMatch(text))
            .SelectMany(id => Named(workshop, id)).Where(p => Number(p.Item) == number).Select(p => p.Name)
            .Where(name => name != (recipe.VariantName is { } variant ? $"{recipe.Id}/{variant}" : recipe.Id))];
    }

    private static int? Number(string? item) =>
        PlainFigure.Whole(item);

    private static string? Text(Workshop workshop, string id)
    {
        try
        {
            return File.ReadAllText(Path.Combine(workshop.Folder, "recipes", id + ".yaml"));
        }
        catch (IOException)
        {
            // It went while this one was looked at.
            return null;
        }
    }

    private static IEnumerable<(string Name, string? Item)> Named(Workshop workshop, string id)
    {
        if (workshop.RecipeOrNone(id) is not { } recipe)
            return [];
        return recipe.Variants.IsEmpty ? [(id, recipe.Item)] : recipe.Variants.Select(v => ($"{id}/{v.Name}", v.Item));
    }
}
