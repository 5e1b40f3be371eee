using LabelForge.Ingredients;
using LabelForge.Recipes.Files;

namespace LabelForge.Recipes;

/// <summary>A maker's folder: the business, what is bought, what is made. Reading it changes nothing.</summary>
public sealed class Workshop
{
    private Workshop(string folder, Business business, ImmutableDictionary<string, Material> materials,
        ImmutableSortedDictionary<string, Problem> unreadable, IngredientDictionary dictionary, MarketBook markets)
    {
        Markets = markets;
        Dictionary = dictionary;
        Folder = folder;
        Business = business;
        Materials = Bound(materials);
        Unreadable = unreadable;
    }

    // Few trust the law's limits; of the others nothing is made anew.
    private ImmutableDictionary<string, Material> Bound(ImmutableDictionary<string, Material> materials) =>
        materials.Values.Where(m => m.Trusted is not null).ToArray() is { Length: > 0 } trusting
            ? materials.SetItems(trusting.Select(m => KeyValuePair.Create(m.Id, LegalLimits.Bound(m, Market, Dictionary))))
            : materials;

    /// <summary>The folder.</summary>
    public string Folder { get; }

    /// <summary>The business.</summary>
    public Business Business { get; }

    /// <summary>The markets that it may name: those that ship, and its own in the folder <c>markets</c>.</summary>
    public MarketBook Markets { get; }

    /// <summary>The market that it sells in first.</summary>
    /// <exception cref="InputException">Its folder, where it is one of the workshop's own, cannot be used.</exception>
    public Market Market => Markets.Find(Business.Market).OrRefuse();

    /// <summary>The names known, and what is known of them.</summary>
    public IngredientDictionary Dictionary { get; }

    /// <summary>The materials by id, as far as their files can be read.</summary>
    public ImmutableDictionary<string, Material> Materials { get; }

    /// <summary>The materials whose files cannot be read, and why. What does not use them goes
    /// on; what does is refused with this.</summary>
    public ImmutableSortedDictionary<string, Problem> Unreadable { get; }

    /// <summary>The ids of the recipes there are, in order.</summary>
    public ImmutableArray<string> RecipeIds => IdsIn("recipes");

    /// <summary>Reads workshop.yaml and every material; a material's file that cannot be read is
    /// put down in <see cref="Unreadable"/>.</summary>
    /// <param name="dictionary">The names known.</param>
    /// <param name="known">The markets known; those of its own folder <c>markets</c> stand beside them.</param>
    /// <exception cref="InputException">workshop.yaml is missing or wrong.</exception>
    public static Workshop Open(string folder, IngredientDictionary dictionary, MarketBook known)
    {
        var file = Path.Combine(folder, "workshop.yaml");
        if (!File.Exists(file))
            throw new InputException("call.no-workshop-yaml", ("folder", folder));
        var markets = known.With(Path.Combine(folder, "markets"));
        var business = Business.Read(YamlFile.Read(file, "workshop.yaml"), markets);
        var materials = ImmutableDictionary.CreateBuilder<string, Material>(StringComparer.Ordinal);
        var unreadable = ImmutableSortedDictionary.CreateBuilder<string, Problem>(StringComparer.Ordinal);
        foreach (var id in FilesIn(folder, "materials"))
        {
            try
            {
                materials.Add(id,
                    MaterialFile.Read(id, YamlFile.Read(Path.Combine(folder, "materials", id + ".yaml"), $"materials/{id}.yaml"),
                        markets));
            }
            catch (InputException e)
            {
                unreadable.Add(id, e.Problem);
            }
        }
        return new Workshop(folder, business, materials.ToImmutable(), unreadable.ToImmutable(),
            dictionary, markets);
    }

    /// <summary>The same workshop with other files for some materials, as they stood on another day.</summary>
    public Workshop With(IEnumerable<Material> materials) =>
        new(Folder, Business, Materials.SetItems(materials.Select(m => KeyValuePair.Create(m.Id, m))), Unreadable, Dictionary, Markets);

    /// <summary>Reads a recipe, by id or by the path of its file.</summary>
    /// <exception cref="InputException">There is no such recipe, or something in it is wrong.</exception>
    public Recipe Recipe(string idOrPath)
    {
        var id = Path.GetFileNameWithoutExtension(idOrPath);
        var path = idOrPath.EndsWith(".yaml", StringComparison.OrdinalIgnoreCase) && File.Exists(idOrPath)
            ? idOrPath
            : Path.Combine(Folder, "recipes", id + ".yaml");
        if (!File.Exists(path))
        {
            var nearest = Spelling.Nearest(id, RecipeIds);
            throw (nearest is null
                ? new InputException("workshop.no-recipe", ("id", id), ("file", Path.Combine(Folder, "recipes")),
                    ("known", Known(RecipeIds)))
                : new InputException("workshop.no-recipe-near", ("id", id), ("file", Path.Combine(Folder, "recipes")),
                    ("nearest", nearest)));
        }
        return RecipeFile.Read(id, YamlFile.Read(path, $"recipes/{id}.yaml"));
    }

    /// <summary>A recipe of the workshop, or null where it cannot be read: that is told where it is opened, and stops no other.</summary>
    public Recipe? RecipeOrNone(string id)
    {
        try
        {
            return Recipe(id);
        }
        catch (InputException)
        {
            return null;
        }
    }

    /// <summary>The products of a recipe; none where it cannot be used yet.</summary>
    public ImmutableArray<Product> ProductsOrNone(string id)
    {
        try
        {
            return this.ProductsOf(id);
        }
        catch (InputException)
        {
            return [];
        }
    }

    /// <summary>The code of the problem that a material is not there: it is about what a line uses, and not how much.</summary>
    public const string MaterialUnknown = "material.unknown";

    /// <summary>The code of the same problem where a material is named nearly so.</summary>
    public const string MaterialUnknownNearest = "material.unknown-nearest";

    /// <summary>The material of an id, as used on a line of a file.</summary>
    /// <exception cref="InputException">There is no such material.</exception>
    public Material Material(string id, string file, int line)
    {
        if (Materials.TryGetValue(id, out var material))
            return material;
        if (Unreadable.TryGetValue(id, out var broken))
            throw new InputException(broken);
        var nearest = Spelling.Nearest(id, Materials.Keys);
        throw nearest is null
            ? new InputException(file, line, MaterialUnknown, ("id", id), ("known", Known(Materials.Keys)))
            : new InputException(file, line, MaterialUnknownNearest, ("id", id), ("nearest", nearest));
    }

    // A dozen fit one message; the folder holds the rest.
    private static string Known(IEnumerable<string> ids)
    {
        var all = ids.Order(StringComparer.Ordinal).ToArray();
        return all.Length == 0 ? "none yet" : string.Join(", ", all.Take(12)) + (all.Length > 12 ? $" and {all.Length - 12} more" : "");
    }

    /// <summary>The folder of the workshop that a recipe's file lies in.</summary>
    public static string FolderOf(string recipePath) =>
        Path.GetDirectoryName(Path.GetDirectoryName(Path.GetFullPath(recipePath))) ?? Directory.GetCurrentDirectory();

    private ImmutableArray<string> IdsIn(string room) => [.. FilesIn(Folder, room)];

    // Two files whose names differ only in letter case would be one file on some machines, so the id is refused twice.
    private static IEnumerable<string> FilesIn(string folder, string room)
    {
        var inside = Path.Combine(folder, room);
        if (!Directory.Exists(inside))
            return [];
        var ids = Directory.EnumerateFiles(inside, "*.yaml").Select(f => Path.GetFileNameWithoutExtension(f)!)
            .Order(StringComparer.Ordinal)
            .ToArray();
        var twice = ids.GroupBy(i => i, StringComparer.OrdinalIgnoreCase).FirstOrDefault(g => g.Count() > 1);
        return twice is null
            ? ids
            : throw new InputException($"{room}/{twice.Last()}.yaml", 0, "workshop.id-stands-twice", ("name", twice.Key), ("room", room));
    }
}
