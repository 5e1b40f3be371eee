using LabelForge.Declarations;
using LabelForge.Quantities;
using LabelForge.Recipes.Files;

namespace LabelForge.Print.Jobs;

/// <summary>A part of the label that reads otherwise than before.</summary>
/// <param name="Product">The product's name as it is now, or as it was where it is gone.</param>
/// <param name="Part">Which part.</param>
/// <param name="Before">How it read; empty where it said nothing.</param>
/// <param name="Now">How it reads; empty where it says nothing.</param>
public sealed record LabelChange(string Product, ChangedPart Part, string Before, string Now);

/// <summary>The parts of a label that a recipe decides.</summary>
public enum ChangedPart
{
    /// <summary>The whole label: the product is new, or gone.</summary>
    Product,

    /// <summary>The product's name.</summary>
    Name,

    /// <summary>What it is, in common words.</summary>
    Identity,

    /// <summary>The net quantity.</summary>
    NetQuantity,

    /// <summary>The ingredients, in their order.</summary>
    Ingredients,

    /// <summary>The directions.</summary>
    Directions,

    /// <summary>The warnings.</summary>
    Warnings,

    /// <summary>The time in which to use it up, and its date.</summary>
    Dates,
}

/// <summary>What labels said by the earlier texts of one file, a recipe's or a material's, each
/// with the other files as they are today.</summary>
/// <remarks>Each text is read once, though it stands in two pairs: before the one that followed it, and after the one before.</remarks>
public sealed class LabelVersions
{
    // No place for letters is asked for: the words are compared, and not how they are set.
    private static readonly Panel Any = Panel.Rectangle(Length.FromMillimetres(100), Length.FromMillimetres(60));

    private readonly Dictionary<string, ImmutableArray<Said>> _read = new(StringComparer.Ordinal);
    private readonly Func<string, (Workshop Workshop, IEnumerable<Recipe> Recipes)> _of;
    private readonly DateOnly _on;

    private LabelVersions(Func<string, (Workshop, IEnumerable<Recipe>)> of, DateOnly on) => (_of, _on) = (of, on);

    /// <summary>The labels of a recipe's products by the recipe's texts.</summary>
    /// <param name="id">The recipe's id.</param>
    /// <param name="on">The day to judge by.</param>
    public static LabelVersions OfRecipe(Workshop workshop, string id, DateOnly on) =>
        new(text => (workshop, [RecipeFile.Read(id, YamlFile.ReadText(text, $"recipes/{id}.yaml"))]), on);

    /// <summary>The labels of all products that a material goes into, itself or inside another, by the material's texts.</summary>
    /// <param name="workshop">The workshop. A recipe of it that cannot be read is left out.</param>
    /// <param name="id">The material's id.</param>
    /// <param name="on">The day to judge by.</param>
    public static LabelVersions OfMaterial(Workshop workshop, string id, DateOnly on)
    {
        Recipe[] all = [.. workshop.RecipeIds.Select(workshop.RecipeOrNone).OfType<Recipe>()];
        return new(text =>
        {
            var then = workshop.With([MaterialFile.Read(id, YamlFile.ReadText(text, $"materials/{id}.yaml"))]);
            return (then, all.Where(r => r.Each.Any(s => s.Materials.Any(m => Holds(then, m.Material, id, [])))));
        }, on);
    }

    /// <summary>What changed on the labels from one text to another.</summary>
    /// <param name="before">The earlier text.</param>
    /// <param name="now">The later one.</param>
    /// <exception cref="InputException">One of the texts cannot be used, with the other files as they are.</exception>
    public ImmutableArray<LabelChange> Between(string before, string now)
    {
        var (old, fresh) = (Read(before), Read(now));
        var changes = ImmutableArray.CreateBuilder<LabelChange>();
        foreach (var said in fresh)
        {
            // What could be made of neither text fails for another reason than the change.
            var was = old.FirstOrDefault(o => o.Key == said.Key);
            if ((said.Content, was?.Content) is (null, null) && was is not null)
                continue;
            if (said.Content is not { } content)
                throw new InputException(said.Problem!);
            if (was is null)
                changes.Add(new LabelChange(content.ProductName, ChangedPart.Product, "", content.ProductName));
            else
                changes.AddRange(Parts(was.Content ?? throw new InputException(was.Problem!)).Zip(Parts(content))
                    .Where(p => p.First.Text != p.Second.Text)
                    .Select(p => new LabelChange(content.ProductName, p.First.Part, p.First.Text, p.Second.Text)));
        }
        changes.AddRange(old.Where(o => fresh.All(f => f.Key != o.Key) && o.Content is not null)
            .Select(o => new LabelChange(o.Content!.ProductName, ChangedPart.Product, o.Content.ProductName, "")));
        return changes.ToImmutable();
    }

    private ImmutableArray<Said> Read(string text)
    {
        if (_read.TryGetValue(text, out var known))
            return known;
        var (workshop, recipes) = _of(text);
        var market = workshop.Market;
        return _read[text] = [.. recipes.SelectMany(r => r.Each).Select(r => Say(workshop, market, r))];
    }

    // By recipe and scent; a recipe without scents is one product, whatever it is called.
    private Said Say(Workshop workshop, Market market, Recipe recipe)
    {
        var key = (recipe.Id, recipe.VariantName ?? "");
        try
        {
            var product = Product.Planned(workshop, recipe);
            var declaration = DeclarationBuilder.Build(workshop, product.Batch, product.Kind, market, _on);
            return new(key, LabelContentBuilder.Build(workshop, product.Batch, product.Kind, declaration, Any, null, _on), null);
        }
        catch (InputException e)
        {
            return new(key, null, e.Problem);
        }
    }

    private static bool Holds(Workshop workshop, string material, string sought, ImmutableHashSet<string> inside) => material == sought
        || !inside.Contains(material)
            && workshop.Materials.TryGetValue(material, out var made)
            && made.MadeFrom.Any(m => Holds(workshop, m.Material, sought, inside.Add(material)));

    private static (ChangedPart Part, string Text)[] Parts(LabelContent c) =>
    [
        (ChangedPart.Name, c.ProductName), (ChangedPart.Identity, c.Identity), (ChangedPart.NetQuantity, c.NetQuantity),
        (ChangedPart.Ingredients, string.Join(", ", c.Ingredients)), (ChangedPart.Directions, c.Directions ?? ""),
        (ChangedPart.Warnings, string.Join(' ', c.Warnings)),
        (ChangedPart.Dates, string.Join(' ', new[] { c.PeriodAfterOpening, c.BestBefore }.OfType<string>())),
    ];

    private sealed record Said((string Recipe, string Scent) Key, LabelContent? Content, Problem? Problem);
}
