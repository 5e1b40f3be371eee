namespace LabelForge.Recipes;

/// <summary>How the amounts of a product are known other than from its recipe: from the weighings of one lot.</summary>
/// <param name="Lot">The lot's code.</param>
/// <param name="Changes">What that changes on the label, one sentence each; empty where the label holds.</param>
public sealed record WeighedLot(string Lot, ImmutableArray<string> Changes);

/// <summary>
/// One thing that is made and sold: a recipe, or one variant of it, as planned or as it was weighed in a lot. Declarations,
/// checks, labels, costs and batches are of a product; a recipe with variants stands for all its products.
/// </summary>
public sealed record Product
{
    private Product(Workshop workshop, Recipe recipe, BatchFormula batch)
    {
        Workshop = workshop;
        Recipe = recipe;
        Batch = batch;
    }

    /// <summary>The workshop; its materials are as they stood when the lot was begun, where the product is known from a lot.</summary>
    public Workshop Workshop { get; private init; }

    /// <summary>The recipe, the variant's name and materials in place; with the weighed amounts,
    /// where the product is known from a lot.</summary>
    public Recipe Recipe { get; private init; }

    /// <summary>What goes into a batch and what leaves it.</summary>
    public BatchFormula Batch { get; private init; }

    /// <summary>The lot that the amounts are known from; null for a product as planned.</summary>
    public WeighedLot? Weighed { get; private init; }

    /// <summary>As it is named where a recipe is asked for: <c>bramble-bar</c>, or <c>bramble-bar/Moss Wall</c>.</summary>
    public string Name => Recipe.VariantName is { } variant ? $"{Recipe.Id}/{variant}" : Recipe.Id;

    /// <summary>Its kind.</summary>
    /// <exception cref="InputException">The recipe's kind is not known.</exception>
    public ProductKind Kind => ProductKindOf.Recipe(Recipe);

    /// <summary>The product of a recipe, or of a variant of one, as planned.</summary>
    /// <exception cref="InputException">The amounts cannot be worked out.</exception>
    public static Product Planned(Workshop workshop, Recipe recipe) => new(workshop, recipe, BatchFormula.Of(workshop, recipe));

    /// <summary>The same product as one lot was weighed.</summary>
    /// <param name="lot">The lot, and what it changes.</param>
    /// <param name="stood">The workshop as it stood when the lot was begun.</param>
    /// <param name="weighed">What was weighed in and what left.</param>
    public static Product AsWeighed(WeighedLot lot, Workshop stood, BatchFormula weighed) =>
        new(stood, weighed.Recipe, weighed) { Weighed = lot };

    /// <summary>All products of a recipe: one for each variant, or the one that a recipe without variants makes.</summary>
    /// <exception cref="InputException">The amounts of one cannot be worked out; where there are
    /// several, the message names it.</exception>
    public static ImmutableArray<Product> AllOf(Workshop workshop, Recipe recipe)
    {
        var each = recipe.Each;
        return [.. each.Select(r => each.Length == 1 ? Planned(workshop, r) : Naming(r.Name, () => Planned(workshop, r)))];
    }

    /// <summary>Does something for each of several products; a refusal names the product that it is about.</summary>
    public static ImmutableArray<T> Each<T>(ImmutableArray<Product> products, Func<Product, T> ask) =>
        [.. products.Select(p => products.Length == 1 ? ask(p) : Naming(p.Recipe.Name, () => ask(p)))];

    private static T Naming<T>(string product, Func<T> ask)
    {
        try
        {
            return ask();
        }
        catch (InputException e)
        {
            throw new InputException(new Problem(e.Problem.File, e.Problem.Line, "recipe.of-product", ("product", product),
                ("inner", e.Problem))
            { Path = e.Problem.Path, Letter = e.Problem.Letter });
        }
    }
}
