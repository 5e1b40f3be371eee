using LabelForge.Composition;
using LabelForge.Ingredients;
using LabelForge.Recipes.Files;

namespace LabelForge.Recipes;

/// <summary>What a material is bought as.</summary>
public enum MaterialKind
{
    /// <summary>A ready-made base.</summary>
    Base,

    /// <summary>An oil, butter or wax.</summary>
    Oil,

    /// <summary>A fragrance or essential oil.</summary>
    Fragrance,

    /// <summary>A colourant or a blend of them.</summary>
    Colourant,

    /// <summary>Anything else that goes in.</summary>
    Additive,

    /// <summary>Sodium or potassium hydroxide.</summary>
    Lye,

    /// <summary>Water.</summary>
    Water,

    /// <summary>What goes around the product.</summary>
    Packaging,
}

/// <summary>One line of a supplier's declaration.</summary>
/// <param name="Name">The name as the supplier writes it.</param>
/// <param name="Share">What the supplier says of its share of the material; <see cref="ShareRange.Unknown"/> where nothing.</param>
/// <param name="Line">The line it stands on.</param>
public sealed record DeclaredConstituent(string Name, ShareRange Share, int Line);

/// <summary>That a material keeps the legal limits of the market it was sold in.</summary>
/// <param name="Market">The market's id; null for that of the workshop.</param>
public sealed record TrustedLimits(string? Market);

/// <summary>One use of a material: its id and how much of it.</summary>
public sealed record MaterialUse(string Material, Amount Amount, int Line);

/// <summary>A certificate's highest share of the finished product for one IFRA category.</summary>
public sealed record FragranceLimit(string Category, Share Highest);

/// <summary>A certificate's figure for an allergen's share of the fragrance.</summary>
public sealed record AllergenShare(string Name, ShareRange Share);

/// <summary>A pack it can be bought in.</summary>
/// <param name="Size">As written: <c>5 lb</c>, <c>16 fl oz</c>, or <c>100 pieces</c> for packaging.</param>
/// <param name="Price">In the workshop's currency.</param>
/// <param name="Line">The line it stands on.</param>
public sealed record MaterialPack(string Size, decimal Price, int Line);

/// <summary>Something bought (or made in the shop), from materials/ID.yaml.</summary>
public sealed record Material
{
    /// <summary>The file's name without its ending.</summary>
    public required string Id { get; init; }

    /// <summary>The file, for messages.</summary>
    public required string File { get; init; }

    /// <summary>The name people say.</summary>
    public required string Name { get; init; }

    /// <summary>What it is bought as.</summary>
    public required MaterialKind Kind { get; init; }

    /// <summary>How far the supplier's order can be trusted.</summary>
    public ListedOrder Listed { get; init; } = ListedOrder.Label;

    /// <summary>The supplier's declaration, in the supplier's order; empty for packaging and for what is made in the shop.</summary>
    public ImmutableArray<DeclaredConstituent> Contains { get; init; } = [];

    /// <summary>What it was made from, where the shop made it.</summary>
    public ImmutableArray<MaterialUse> MadeFrom { get; init; } = [];

    /// <summary>Grams a millilitre, or null where not known.</summary>
    public decimal? GramsPerMillilitre { get; init; }

    /// <summary>How many drops make a millilitre.</summary>
    public decimal DropsPerMillilitre { get; init; } = Volume.DropsPerMillilitre;

    /// <summary>Whether its file says how many drops make a millilitre: it is measured by drops.</summary>
    public bool DropsAreWritten { get; init; }

    /// <summary>A fragrance's limits, by IFRA category.</summary>
    public ImmutableArray<FragranceLimit> Limits { get; init; } = [];

    /// <summary>A fragrance's allergens.</summary>
    public ImmutableArray<AllergenShare> Allergens { get; init; } = [];

    /// <summary>The packs it can be bought in.</summary>
    public ImmutableArray<MaterialPack> Packs { get; init; } = [];

    /// <summary>An oil's saponification value from its certificate, mg KOH/g; null where the
    /// dictionary's range serves, 0 where it takes up no alkali.</summary>
    public SaponificationValue? Saponification { get; init; }

    /// <summary>The name of its soap, where the maker names it.</summary>
    public string? SoapName { get; init; }

    /// <summary>A lye's share of alkali, from its certificate; null where not written.</summary>
    public Share? Purity { get; init; }

    /// <summary>Names of its list that the dictionary does not know and the maker has settled as right as they stand.</summary>
    public ImmutableArray<string> OwnNames { get; init; } = [];

    /// <summary>Whether the law's limits bound what it holds, and the market they are of; null where they are not trusted.</summary>
    public TrustedLimits? Trusted { get; init; }

    /// <summary>The bounds that were taken from the law.</summary>
    public ImmutableArray<LegalBound> LegalBounds { get; init; } = [];

    /// <summary>Where its list is from as long as nobody has held it against the wrapper: the usual list of such goods, for instance; null
    /// where it is the supplier's own.</summary>
    public string? ToConfirm { get; init; }

    /// <summary>The day on which its supplier was asked what its list leaves open; null where nobody wrote that down.</summary>
    public DateOnly? Asked { get; init; }

    /// <summary>Who sells it, where written.</summary>
    public string? Supplier { get; init; }

    /// <summary>A colourant's colour in the product, as <c>#8a5aa0</c>; null where not written.</summary>
    public TextNode? Swatch { get; init; }

    /// <summary>The share of the product at which a colourant gives its swatch; null where not written.</summary>
    public Share? SwatchAt { get; init; }

    /// <summary>What a fragrance is like: citrus, flower, herb, wood, spice, sea, sweet, smoke or plain; null where not written.</summary>
    public TextNode? Scent { get; init; }

    /// <summary>Packaging that is label sheets: the id of their stock, so that printing uses them
    /// up label by label; null for any other.</summary>
    public string? LabelStock { get; init; }

    /// <summary>For how many months after it was first used a bottle keeps; null where not written.</summary>
    public int? MonthsAfterOpening { get; init; }

    /// <summary>The supplier's lot in use, where written.</summary>
    public string? Lot { get; init; }
}
