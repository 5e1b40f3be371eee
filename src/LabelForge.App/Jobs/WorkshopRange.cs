using System.Collections.Concurrent;
using System.Runtime.CompilerServices;
using LabelForge.Declarations;
using LabelForge.Print.Designs;
using LabelForge.Print.Looks;

namespace LabelForge.Print.Jobs;

/// <summary>The products of a workshop as one range, and the look of each.</summary>
public sealed class WorkshopRange
{
    // The range is asked for with each of its labels and at each letter that is typed: a file is read again when it was written again.
    private static readonly ConditionalWeakTable<Workshop, ConcurrentDictionary<string, ((DateTime, long) State,
        Recipe? Recipe)>> AsRead = [];

    private readonly ImmutableArray<Recipe> _recipes;
    private readonly ImmutableArray<Look> _looks;

    private WorkshopRange(ImmutableArray<Recipe> recipes, ImmutableArray<Look> looks) => (_recipes, _looks) = (recipes, looks);

    /// <summary>Every product: recipes without variants, and each variant.</summary>
    public ImmutableArray<Recipe> Products => _recipes;

    /// <summary>The range that a product belongs to, the product as it is in hand, which may differ from its file.</summary>
    /// <exception cref="InputException">A look of this product's names what is not known.</exception>
    public static WorkshopRange Of(Workshop workshop, Recipe? inHand = null)
    {
        var recipes = new List<Recipe>();
        foreach (var id in workshop.RecipeIds)
        {
            if (Read(workshop, id) is { } recipe)
                recipes.AddRange(recipe.Each);
        }
        if (inHand is not null && recipes.FindIndex(r => Key(r) == Key(inHand)) is var at)
        {
            if (at >= 0) recipes[at] = inHand; else recipes.Add(inHand);
        }
        return new WorkshopRange([.. recipes], RangeLooks.Of([.. recipes.Select(r => Product(workshop, r, inHand))]));
    }

    /// <summary>A product's look, its letters not yet fitted to the range.</summary>
    public Look LookOf(Recipe recipe) => _looks[_recipes.ToList().FindIndex(r => Key(r) == Key(recipe))];

    /// <summary>Those that stand beside a product on a table: of its kind, in its package.</summary>
    public IEnumerable<Recipe> Beside(Recipe recipe) =>
        _recipes.Where(r => Key(r) != Key(recipe) && r.Product == recipe.Product && Size(r) == Size(recipe));

    /// <summary>What the look of a product adds to the words of its label.</summary>
    public static LabelContent WithWords(LabelContent content, Workshop workshop, Recipe recipe)
    {
        var wish = recipe.Look.Over(workshop.Business.Look);
        return content with
        {
            ScentLine = wish.Line?.Text,
            OwnWords = wish.Words?.Text,
            Claim = wish.Claim?.Text,
            Price = wish.Price?.Text,
            Link = wish.Link?.Text,
        };
    }

    private static string Key(Recipe recipe) => $"{recipe.Id}/{recipe.Name}";

    private static string Size(Recipe recipe) => recipe.Package?.Key ?? "";

    // Another recipe that cannot be read is told where it is opened; this product's label can be made without it.
    private static Recipe? Read(Workshop workshop, string id)
    {
        var file = new FileInfo(Path.Combine(workshop.Folder, "recipes", id + ".yaml"));
        var state = file.Exists ? (file.LastWriteTimeUtc, file.Length) : default;
        var read = AsRead.GetOrCreateValue(workshop);
        if (read.TryGetValue(id, out var known) && known.State == state)
            return known.Recipe;
        var recipe = workshop.RecipeOrNone(id);
        read[id] = (state, recipe);
        return recipe;
    }

    private static RangeProduct Product(Workshop workshop, Recipe recipe, Recipe? inHand)
    {
        var materials = recipe.Materials.Select(m => workshop.Materials.GetValueOrDefault(m.Material)).OfType<Material>()
            .ToImmutableArray();
        var product = new RangeProduct(Key(recipe), recipe.Name, recipe.Look.Over(workshop.Business.Look), materials);
        if (inHand is null || Key(recipe) == Key(inHand))
            return product;
        try
        {
            RangeLooks.Of([product]);
            return product;
        }
        catch (InputException)
        {
            return product with { Wish = LookWish.None };
        }
    }
}
