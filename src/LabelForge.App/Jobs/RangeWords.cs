using System.Collections.Concurrent;
using System.Runtime.CompilerServices;
using LabelForge.Declarations;
using LabelForge.Ingredients;

namespace LabelForge.Print.Jobs;

/// <summary>What the labels of a range say, as far as their letters are fitted by it.</summary>
internal static class RangeWords
{
    // A range is asked for with each of its labels. As long as a workshop is open its materials stay as they were read, so a declaration
    // stays true as long as the recipe's file does.
    private static readonly ConditionalWeakTable<Workshop, ConcurrentDictionary<(string, Market, DateOnly, NameStyle,
        DateTime), (Product, Declaration)?>> Known = [];

    /// <summary>What the labels of a product and of those beside it say. One that cannot be declared counts with its name alone.</summary>
    /// <param name="workshop">The workshop as it stands for the product.</param>
    /// <param name="recipe">The product's recipe.</param>
    /// <param name="own">What the product's own label says.</param>
    /// <param name="names">In whose words the ingredients are named.</param>
    public static IReadOnlyList<LabelContent> Of(WorkshopRange range, Workshop workshop, Recipe recipe, LabelContent own,
        NameStyle names) =>
        [own, .. range.Beside(recipe).Select(other => Beside(workshop, other, own, names))];

    private static LabelContent Beside(Workshop workshop, Recipe recipe, LabelContent own, NameStyle names)
    {
        var file = Path.Combine(workshop.Folder, recipe.File);
        var key = ($"{recipe.Id}/{recipe.Name}", own.Market, own.On, names, File.Exists(file) ? File.GetLastWriteTimeUtc(file) : default);
        try
        {
            return Known.GetOrCreateValue(workshop)
                .GetOrAdd(key, _ => Declared(workshop, recipe, own, names)) is (var product, var declaration)
                && own.PrincipalPanel is { } panel
                ? WorkshopRange.WithWords(LabelContentBuilder.Build(workshop, product.Batch, product.Kind, declaration, panel, null,
                    own.On), workshop, recipe) with
                { Lot = own.Lot, LotElementString = own.LotElementString }
                : NameAlone(recipe, own);
        }
        catch (InputException)
        {
            return NameAlone(recipe, own);
        }
    }

    private static (Product, Declaration)? Declared(Workshop workshop, Recipe recipe, LabelContent own, NameStyle names)
    {
        try
        {
            var product = Product.Planned(workshop, recipe);
            return (product, DeclarationBuilder.Build(workshop, product.Batch, product.Kind, own.Market, own.On, names));
        }
        catch (InputException)
        {
            return null;
        }
    }

    private static LabelContent NameAlone(Recipe recipe, LabelContent own) =>
        own with { ProductName = recipe.Name, Identity = recipe.Identity ?? own.Identity, ScentLine = recipe.Look.Line?.Text };
}
