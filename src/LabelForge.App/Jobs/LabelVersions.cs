using System.Collections.Immutable;
using LabelForge.Declarations;
using LabelForge.Markets;
using LabelForge.Measures;
using LabelForge.Quantities;
using LabelForge.Recipes;
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

/// <summary>What the labels of a recipe said by its earlier texts, each with the materials as they are today.</summary>
/// <remarks>Each text is read once, though it stands in two pairs: before the one that followed it, and after the one before.</remarks>
/// <param name="workshop">The workshop.</param>
/// <param name="id">The recipe's id.</param>
/// <param name="on">The day to judge by.</param>
public sealed class LabelVersions(Workshop workshop, string id, DateOnly on)
{
    // No place for letters is asked for: the words are compared, and not how they are set.
    private static readonly Panel Any = Panel.Rectangle(Length.FromMillimetres(100), Length.FromMillimetres(60));

    private readonly Dictionary<string, ImmutableArray<(string Key, LabelContent Content)>> _read = new(StringComparer.Ordinal);

    /// <summary>What changed on the labels of all products of the recipe from one text to another.</summary>
    /// <param name="before">The earlier text.</param>
    /// <param name="now">The later one.</param>
    /// <exception cref="InputException">One of the texts cannot be used, with the materials as they are.</exception>
    public ImmutableArray<LabelChange> Between(string before, string now)
    {
        var (old, fresh) = (Contents(before), Contents(now));
        var changes = ImmutableArray.CreateBuilder<LabelChange>();
        foreach (var (key, content) in fresh)
        {
            if (old.FirstOrDefault(o => o.Key == key).Content is not { } was)
                changes.Add(new LabelChange(content.ProductName, ChangedPart.Product, "", content.ProductName));
            else
                changes.AddRange(Parts(was).Zip(Parts(content)).Where(p => p.First.Text != p.Second.Text).Select(p => new LabelChange(content.ProductName, p.First.Part, p.First.Text, p.Second.Text)));
        }
        changes.AddRange(old.Where(o => fresh.All(f => f.Key != o.Key)).Select(o => new LabelChange(o.Content.ProductName, ChangedPart.Product, o.Content.ProductName, "")));
        return changes.ToImmutable();
    }

    // By the scent's name; a recipe without scents is one product, whatever it is called.
    private ImmutableArray<(string Key, LabelContent Content)> Contents(string text)
    {
        if (_read.TryGetValue(text, out var known))
            return known;
        var recipe = RecipeFile.Read(id, YamlFile.ReadText(text, $"recipes/{id}.yaml"));
        var market = workshop.Market;
        return _read[text] =
        [
            .. (recipe.Variants.IsEmpty ? [recipe] : recipe.Variants.Select(v => recipe.Variant(v.Name))).Select(r =>
            {
                var product = Product.Planned(workshop, r);
                var declaration = DeclarationBuilder.Build(workshop, product.Batch, product.Kind, market, on);
                return (r.VariantName ?? "", LabelContentBuilder.Build(workshop, product.Batch, product.Kind, declaration, Any, null, on));
            }),
        ];
    }

    private static (ChangedPart Part, string Text)[] Parts(LabelContent c) =>
    [
        (ChangedPart.Name, c.ProductName), (ChangedPart.Identity, c.Identity), (ChangedPart.NetQuantity, c.NetQuantity), (ChangedPart.Ingredients, string.Join(", ", c.Ingredients)),
        (ChangedPart.Directions, c.Directions ?? ""), (ChangedPart.Warnings, string.Join(' ', c.Warnings)), (ChangedPart.Dates, string.Join(' ', new[] { c.PeriodAfterOpening, c.BestBefore }.OfType<string>())),
    ];
}
