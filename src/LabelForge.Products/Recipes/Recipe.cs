using LabelForge.Quantities;
using LabelForge.Recipes.Saponification;

namespace LabelForge.Recipes;

/// <summary>How a soap is sold, which decides what its label must say (21 CFR 701.20).</summary>
public enum SoldAs
{
    /// <summary>As a cosmetic.</summary>
    Cosmetic,

    /// <summary>As true soap, for cleaning only.</summary>
    Soap,
}

/// <summary>An ingredient that a recipe names, and the line it stands on.</summary>
public sealed record NamedIngredient(string Name, int Line);

/// <summary>What is made, from recipes/ID.yaml.</summary>
public sealed record Recipe
{
    /// <summary>The file's name without its ending.</summary>
    public required string Id { get; init; }

    /// <summary>The file, for messages.</summary>
    public required string File { get; init; }

    /// <summary>The product's own name.</summary>
    public required string Name { get; init; }

    /// <summary>The statement of identity; null where the recipe has none (a finding).</summary>
    public string? Identity { get; init; }

    /// <summary>The product kind's id.</summary>
    public required string Product { get; init; }

    /// <summary>The line of the product kind, for messages.</summary>
    public required int ProductLine { get; init; }

    /// <summary>How it is sold.</summary>
    public SoldAs SoldAs { get; init; } = SoldAs.Cosmetic;

    /// <summary>What its maker has settled that its kind does not tell: whether it is sprayed, is for adults only.</summary>
    public ProductFacts Facts { get; init; } = ProductFacts.None;

    /// <summary>What the maker says of it.</summary>
    public ImmutableArray<string> Claims { get; init; } = [];

    /// <summary>Of these, the line and the words that the label's look puts on its front: a
    /// scent, a place, now and then a claim.</summary>
    public ImmutableArray<string> SaidOnFront { get; init; } = [];

    /// <summary>How its label is to look, as far as the recipe says. Its line and its words stand
    /// among the claims too, so that they are checked.</summary>
    public LookWish Look { get; init; } = LookWish.None;

    /// <summary>What goes in.</summary>
    public required ImmutableArray<MaterialUse> Materials { get; init; }

    /// <summary>What the finished batch weighed; null where the recipe does not say.</summary>
    public WrittenYield? Yield { get; init; }

    /// <summary>What left the batch while it was made, as the recipe says; none where it was weighed by its yield.</summary>
    public ImmutableArray<WrittenLoss> Losses { get; init; } = [];

    /// <summary>What all pieces of one lot weigh together, as its books say; null where none do. It sets what a piece can hold.</summary>
    public Mass? CameOut { get; init; }

    /// <summary>Soap made from oils: the superfat aimed at; null where the recipe names none.</summary>
    public WrittenSuperfat? Superfat { get; init; }

    /// <summary>Soap made from oils: how it is declared.</summary>
    public DeclareAs DeclareAs { get; init; } = DeclareAs.Charged;

    /// <summary>The line that says how it is declared, or 0.</summary>
    public int DeclareAsLine { get; init; }

    /// <summary>How many pieces the batch makes.</summary>
    public required int Pieces { get; init; }

    /// <summary>By what fraction a weighed amount may be off before it is flagged, 0.01 for 1 %; null for the usual.</summary>
    public decimal? Tolerance { get; init; }

    /// <summary>The declared net quantity of a piece; null where it is to be computed.</summary>
    public NetAmount? Net { get; init; }

    /// <summary>The line of the net quantity, or 0.</summary>
    public int NetLine { get; init; }

    /// <summary>What a piece is sold for, in the workshop's currency; null where the maker has set no price.</summary>
    public decimal? Price { get; init; }

    /// <summary>What to do at the bench, in order; empty where nothing says.</summary>
    public ImmutableArray<RecipeStep> Steps { get; init; } = [];

    /// <summary>Directions for use.</summary>
    public string? Directions { get; init; }

    /// <summary>Warnings, the maker's own text.</summary>
    public ImmutableArray<string> Warnings { get; init; } = [];

    /// <summary>The package that a piece is sold in; null where its size is not known.</summary>
    public Package? Package { get; init; }

    /// <summary>What a market may ask for beside the usual words, and the words in other languages.</summary>
    public MarketWords Words { get; init; } = new();

    /// <summary>The item's number under the business's GS1 company prefix, or null.</summary>
    public string? Item { get; init; }

    /// <summary>The day the product came on the market; null for a new one. Old and new lists of allergens turn on it.</summary>
    public DateOnly? OnMarketSince { get; init; }

    /// <summary>The active drug ingredients of a product that is also a drug (21 CFR 701.3(d)); empty for any other.</summary>
    public ImmutableArray<NamedIngredient> Actives { get; init; } = [];

    /// <summary>Colours that some batches hold and others do not.</summary>
    public ImmutableArray<NamedIngredient> MayContain { get; init; } = [];

    /// <summary>The products of an assortment that share this recipe but for fragrance or colour;
    /// empty where it makes one product.</summary>
    public ImmutableArray<RecipeVariant> Variants { get; init; } = [];

    /// <summary>The variant's name where this is a variant of a recipe; null for a recipe as its file has it.</summary>
    public string? VariantName { get; init; }

    /// <summary>The recipe of each product that it stands for: of every variant, or itself where it has none.</summary>
    public ImmutableArray<Recipe> Each => Variants.IsEmpty ? [this] : [.. Variants.Select(v => Variant(v.Name))];

    /// <summary>The recipe of one variant: its name, item number and materials take the place of the recipe's own.</summary>
    /// <param name="name">The variant's name, upper or lower case.</param>
    /// <exception cref="InputException">The recipe has no such variant.</exception>
    public Recipe Variant(string name)
    {
        if (Variants.FirstOrDefault(v => v.Name.Equals(name.Trim(), StringComparison.OrdinalIgnoreCase)) is { } variant)
            return this with
            {
                VariantName = variant.Name,
                Name = variant.Name,
                Item = variant.Item,
                Materials = variant.Materials,
                OnMarketSince = variant.OnMarketSince ?? OnMarketSince,
                Price = variant.Price ?? Price,
                Look = variant.Look.Over(Look),
                Claims = [.. Claims, .. variant.SaidOnFront],
                SaidOnFront = [.. SaidOnFront, .. variant.SaidOnFront],
                Variants = [],
            };
        throw (Variants.IsEmpty
            ? new InputException(File, 0, "recipe.not-a-variant-recipe", ("name", name.Trim()))
            : new InputException(File, 0, "recipe.not-a-variant-recipe-2", ("name", name.Trim()),
                ("list", string.Join(", ", Variants.Select(v => v.Name)))));
    }
}
