namespace LabelForge.Ingredients;

/// <summary>What an ingredient does in a product. Written in the data in lower case with hyphens: <c>essential-oil</c>.</summary>
public enum IngredientRole
{
    /// <summary>An alkali, or the body of a melt-and-pour base.</summary>
    Base,

    /// <summary>A salt of fatty acids.</summary>
    Soap,

    /// <summary>Wets, cleans or foams.</summary>
    Surfactant,

    /// <summary>Softens the skin.</summary>
    Emollient,

    /// <summary>Holds water.</summary>
    Humectant,

    /// <summary>Dissolves the rest.</summary>
    Solvent,

    /// <summary>A wax.</summary>
    Wax,

    /// <summary>Holds oil and water together.</summary>
    Emulsifier,

    /// <summary>Thickens, bulks or films.</summary>
    Thickener,

    /// <summary>Keeps microbes from growing.</summary>
    Preservative,

    /// <summary>Slows rancidity.</summary>
    Antioxidant,

    /// <summary>Binds metals.</summary>
    Chelator,

    /// <summary>Grains that scrub.</summary>
    Exfoliant,

    /// <summary>Colours the product.</summary>
    Colourant,

    /// <summary>Scents the product.</summary>
    Fragrance,

    /// <summary>An oil distilled or pressed from a plant for its scent.</summary>
    EssentialOil,

    /// <summary>A fragrance substance that must be named above a threshold.</summary>
    Allergen,

    /// <summary>Added for an effect on skin or hair.</summary>
    Active,

    /// <summary>A part or an extract of a plant.</summary>
    Botanical,

    /// <summary>A mineral powder.</summary>
    Abrasive,

    /// <summary>A salt.</summary>
    Salt,
}

/// <summary>What the law or the label needs to know of an ingredient.</summary>
[Flags]
public enum IngredientFlags
{
    /// <summary>Nothing in particular.</summary>
    None = 0,

    /// <summary>Listed as a colour additive: it goes last in a declaration and by its colour name.</summary>
    Colourant = 1,

    /// <summary>From a plant and named by it.</summary>
    Botanical = 2,

    /// <summary>Used as a nanomaterial.</summary>
    Nano = 4,

    /// <summary>A fragrance substance named one by one in Annex III of Regulation (EC) No 1223/2009.</summary>
    Allergen = 8,

    /// <summary>From an animal.</summary>
    Animal = 16,
}
