using LabelForge.Composition;

namespace LabelForge.Declarations;

/// <summary>The declaration of one product of an assortment.</summary>
/// <param name="Variant">The product.</param>
/// <param name="Declaration">Its declaration.</param>
public sealed record VariantDeclaration(RecipeVariant Variant, Declaration Declaration);

/// <summary>One label for a whole assortment, where that is lawful.</summary>
/// <param name="Declaration">The declaration that may stand on all of them; null where there is none.</param>
/// <param name="Why">Why it may, or why there is none.</param>
/// <param name="Source">The provision behind it.</param>
public sealed record CommonLabel(Declaration? Declaration, string Why, string Source);

/// <summary>The declarations of a recipe's variants, and their common one.</summary>
/// <param name="Variants">One for each variant, in the order of the recipe.</param>
/// <param name="Common">Their common label.</param>
public sealed record Assortment(ImmutableArray<VariantDeclaration> Variants, CommonLabel Common)
{
    /// <summary>Declares each variant of a recipe; null where it has none.</summary>
    /// <exception cref="InputException">A variant's data is wrong; the same as for a recipe.</exception>
    public static Assortment? Of(Workshop workshop, Recipe recipe, ProductKind kind, Market market, DateOnly on,
        NameStyle style = NameStyle.Market)
    {
        if (recipe.Variants.IsEmpty)
            return null;
        var products = Product.AllOf(workshop, recipe);
        return Of(products, Product.Each(products, p => DeclarationBuilder.Build(p.Workshop, p.Batch, kind, market, on, style)), market,
            on);
    }

    /// <summary>The assortment of products that are declared already; null where there is one alone, and it is no variant.</summary>
    public static Assortment? Of(ImmutableArray<Product> products, ImmutableArray<Declaration> declarations, Market market, DateOnly on)
    {
        if (products is [{ Recipe.VariantName: null }])
            return null;
        var declared = products.Zip(declarations, (p, d) => new VariantDeclaration(VariantOf(p.Recipe), d)).ToImmutableArray();
        return new Assortment(declared, CommonOf(declared, products[0].Kind, market, on));
    }

    private static RecipeVariant VariantOf(Recipe recipe) => new(recipe.Name, 0, recipe.Item, recipe.OnMarketSince, recipe.Materials);

    private static CommonLabel CommonOf(ImmutableArray<VariantDeclaration> variants, ProductKind kind, Market market, DateOnly on)
    {
        var first = variants[0].Declaration;
        var rule = MayContainColours.ShadeRule(market, on);
        var merged = Merged(variants);
        if (variants.All(v => v.Declaration.Statement == first.Statement))
            return new CommonLabel(merged, "Every variant declares the same names in the same order, so one ingredient list serves all.",
                rule.Citation);
        if (variants.FirstOrDefault(v => !Uncoloured(v.Declaration).SequenceEqual(Uncoloured(first))) is { } other)
            return new CommonLabel(null, Difference(variants[0], other), rule.Citation);
        return kind.IsMakeup
            ? new CommonLabel(merged,
                "The variants differ in colour only and are makeup sold in several shades, so one list may name every colour.",
                rule.Citation)
            : new CommonLabel(null,
                $"The variants differ in colour. Only makeup sold in several shades may share one list "
                    + $"of colours; {kind.Name.ToLowerInvariant()} needs a list for each.", rule.Citation);
    }

    private static IEnumerable<string> Uncoloured(Declaration declaration) =>
        declaration.Ingredients.Where(i => i.Part != Part.Colour || i.IsActive).Select(i => i.Name);

    private static string Difference(VariantDeclaration one, VariantDeclaration other)
    {
        string[] of = [.. Uncoloured(one.Declaration)], and = [.. Uncoloured(other.Declaration)];
        string Only(string[] has, string[] lacks, string name) =>
        has.Except(lacks).ToArray() is { Length: > 0 } only ? $" Only {name} has {string.Join(", ", only)}." : "";
        var sets = Only(of, and, one.Variant.Name) + Only(and, of, other.Variant.Name);
        return $"{one.Variant.Name} and {other.Variant.Name} differ in more than colour, so each needs "
            + $"its own list.{(sets.Length > 0 ? sets : " They have the same ingredients in another order.")}";
    }

    // What all hold stands with its widest bounds; colours that some lack may be contained.
    private static Declaration Merged(ImmutableArray<VariantDeclaration> variants)
    {
        var declarations = variants.Select(v => v.Declaration).ToArray();
        var first = declarations[0];
        var all = declarations.SelectMany(d => d.Ingredients).GroupBy(i => i.Name, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => g.ToArray());
        var common = first.Ingredients
            .Where(i => all[i.Name].Length == declarations.Length)
            .Select(i => i with
            {
                Low = all[i.Name].Min(x => x.Low),
                High = all[i.Name].Max(x => x.High),
                Estimate = all[i.Name].Average(x => x.Estimate),
                Part = all[i.Name].Min(x => x.Part),
            });
        return first with
        {
            Ingredients = [.. common],
            Composition = null,
            Unsettled = [.. declarations.SelectMany(d => d.Unsettled).Distinct()],
            Findings = [.. declarations.SelectMany(d => d.Findings).Distinct()],
            MayContain = [.. declarations.SelectMany(d => d.Ingredients).Select(i => i.Name)
                .Where(n => all[n].Length < declarations.Length)
                .Concat(declarations.SelectMany(d => d.MayContain)).Distinct()],
        };
    }
}
