using LabelForge.Recipes.Files;

namespace LabelForge.Recipes;

/// <summary>Reads the <c>variants:</c> of a recipe.</summary>
internal static class VariantsFile
{
    /// <summary>The variants; empty where the recipe has none. One that changes nothing is the
    /// recipe as it stands, under its own name.</summary>
    /// <exception cref="InputException">Something in one is wrong.</exception>
    public static ImmutableArray<RecipeVariant> Read(MapNode recipe, ImmutableArray<MaterialUse> materials)
    {
        // Keyed by their names, as one may well write them, the first name would be told to be no key of a variant.
        if (recipe["variants"] is MapNode { Entries: [var first, ..] } byName && byName.Entries.All(e => e.Value is MapNode))
            throw byName.Refuse("recipe.variants-not-a-list", ("name", first.Key));
        var variants = recipe.Items("variants")
            .Select(n => ReadOne(n as MapNode ?? throw n.Refuse("recipe.not-a-variant", ("kind", n.Kind)), materials))
            .ToImmutableArray();
        RefuseTwice(recipe, variants, v => v.Name, "name");
        RefuseTwice(recipe, variants, v => v.Item, "item number");
        return variants;
    }

    private static RecipeVariant ReadOne(MapNode map, ImmutableArray<MaterialUse> materials)
    {
        map.OnlyKeys("A variant", "name", "item", "replace", "add", "leave out", "on the market since", "look", "price");
        var name = map.Required("name", "Rose");
        var uses = materials.ToList();
        foreach (var entry in map.OptionalMap("replace")?.Entries ?? [])
            Replace(map, uses, entry);
        foreach (var gone in map.Texts("leave out"))
            uses.RemoveAt(Place(uses, gone.Text, gone));
        uses.AddRange(MaterialUses.Read(map, "add"));
        if (uses.Count == 0)
            throw map.Refuse("recipe.variant-leaves-nothing", ("name", name.Text));
        return new RecipeVariant(name.Text, map.Line, map.OptionalText("item")?.Text,
            map.OptionalText("on the market since") is { } since ? RecipeFile.ReadDate(since) : null, [.. uses])
        { Look = LookWish.Read(map), Price = RecipeFile.ReadPrice(map) };
    }

    // The new material takes the old one's amount, unless it brings its own; what was a share of the old is a share of the new.
    private static void Replace(MapNode map, List<MaterialUse> uses, Entry entry)
    {
        var old = entry.Name;
        var at = Place(uses, entry.Key, old);
        var brought = entry.Value switch
        {
            TextNode { Text.Length: > 0 } id => uses[at] with { Material = id.Text, Line = id.Line },
            MapNode whole => MaterialUses.ReadOne(whole),
            var other => throw other.Refuse("recipe.variant-no-material", ("name", entry.Key)),
        };
        uses[at] = brought;
        for (var i = 0; i < uses.Count; i++)
        {
            if (uses[i].Amount.Of == entry.Key)
                uses[i] = uses[i] with { Amount = uses[i].Amount with { Of = brought.Material } };
        }
    }

    private static int Place(List<MaterialUse> uses, string id, Node at)
    {
        var place = uses.FindIndex(u => u.Material == id);
        if (place >= 0)
            return place;
        var nearest = Spelling.Nearest(id, uses.Select(u => u.Material));
        throw (nearest is null
            ? at.Refuse("recipe.not-used", ("id", id), ("list", string.Join(", ", uses.Select(u => u.Material))))
            : at.Refuse("recipe.not-used-in-variant", ("id", id), ("nearest", nearest)));
    }

    private static void RefuseTwice(MapNode recipe, ImmutableArray<RecipeVariant> variants, Func<RecipeVariant, string?> of, string what)
    {
        if (variants.Where(v => of(v) is not null).GroupBy(v => of(v), StringComparer.OrdinalIgnoreCase)
            .FirstOrDefault(g => g.Count() > 1) is { } twice)
            throw new InputException(recipe.File, twice.Last().Line, "recipe.variants-alike", ("what", what), ("name", twice.Key));
    }
}
