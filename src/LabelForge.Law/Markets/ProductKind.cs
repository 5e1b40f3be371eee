namespace LabelForge.Markets;

/// <summary>Whether a product stays on the body.</summary>
public enum ProductUse
{
    /// <summary>Washed off after use.</summary>
    RinseOff,

    /// <summary>Left in prolonged contact with the body.</summary>
    LeaveOn,
}

/// <summary>Where a product is used, as the US rules on colour additives divide the body (21 CFR 70.3(s) and (v)).</summary>
public enum AreaOfUse
{
    /// <summary>Outside parts of the body only.</summary>
    External,

    /// <summary>On the lips, or on a mucous membrane.</summary>
    Lips,

    /// <summary>In the area of the eye.</summary>
    Eye,
}

/// <summary>Whether net quantity is stated by mass or by volume.</summary>
public enum QuantityBy
{
    /// <summary>Mass: solid, semi-solid or viscous products (21 CFR 701.13(a)).</summary>
    Mass,

    /// <summary>Volume: liquid products (21 CFR 701.13(a)).</summary>
    Volume,
}

/// <summary>A kind of product and what its rules turn on.</summary>
/// <param name="Id">The name in files, such as <c>soap-bar</c>.</param>
/// <param name="Name">The name for people.</param>
/// <param name="Use">Rinse-off or leave-on.</param>
/// <param name="IfraCategory">The category of the IFRA Standards, 49th Amendment, such as <c>9</c> or <c>5A</c>.</param>
/// <param name="Area">Where it is used.</param>
/// <param name="QuantityBy">Mass or volume.</param>
/// <param name="IsSolid">Whether the product is solid (keeps its shape), not liquid or pourable.</param>
public sealed record ProductKind(string Id, string Name, ProductUse Use, string IfraCategory, AreaOfUse Area, QuantityBy QuantityBy,
    bool IsSolid)
{
    /// <summary>Whether it is makeup, which may be sold in a range of shades under one list of colours.</summary>
    public bool IsMakeup { get; init; }

    /// <summary>The groups of the EU annexes it falls in beyond what use and area tell.</summary>
    public ImmutableArray<ProductGroup> Groups { get; init; } = [];
}
