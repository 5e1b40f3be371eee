namespace LabelForge.Ingredients.Levels;

/// <summary>What a product is like, as far as usual levels turn on it. Written in the data in lower case.</summary>
public enum ProductForm
{
    /// <summary>Counts for any: a figure that says no kind of product.</summary>
    Any,

    /// <summary>A bar that cleans.</summary>
    Soap,

    /// <summary>A liquid that cleans.</summary>
    Wash,

    /// <summary>A lotion, a cream, a conditioner.</summary>
    Emulsion,

    /// <summary>Oils, butters and waxes, with or without grains.</summary>
    Anhydrous,

    /// <summary>Salts and powders.</summary>
    Dry,

    /// <summary>A stick for under the arms.</summary>
    Stick,

    /// <summary>A spray.</summary>
    Spray,
}
