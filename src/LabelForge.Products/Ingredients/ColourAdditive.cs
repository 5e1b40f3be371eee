namespace LabelForge.Ingredients;

/// <summary>A colour additive listed for cosmetics in the United States (21 CFR parts 73 subpart C, 74 subpart C and 82).</summary>
/// <param name="Name">The name a label carries, such as <c>Red 40</c> or <c>Iron Oxides</c>.</param>
/// <param name="OtherNames">The listing's own name and others.</param>
/// <param name="ColourIndex">Colour Index numbers; empty where there is none.</param>
/// <param name="Citation">The paragraph that lists it.</param>
/// <param name="Certified">Whether each batch must be certified by the FDA; false where exempt from certification.</param>
/// <param name="EyeArea">Whether it may colour cosmetics for the area of the eye.</param>
/// <param name="Lips">Whether it may colour cosmetics for the lips.</param>
/// <param name="External">Whether it may colour cosmetics applied to the rest of the body; soap and bath products among them.</param>
/// <param name="Limit">The limit or condition in words; empty where there is none beyond good manufacturing practice.</param>
/// <param name="Only">Kinds of product and groups in which alone it may be; empty where the flags tell all.</param>
/// <param name="Most">The greatest share and the products it binds; null where none is set.</param>
/// <param name="Label">What the listing wants on a label; empty where nothing.</param>
/// <param name="Source">Where the row comes from.</param>
/// <param name="Basis">Whether the listing was read.</param>
public sealed record ColourAdditive(
    string Name,
    ImmutableArray<string> OtherNames,
    ImmutableArray<ColourIndexNumber> ColourIndex,
    string Citation,
    bool Certified,
    bool EyeArea,
    bool Lips,
    bool External,
    ImmutableArray<string> Only,
    ColourLimit? Most,
    string Limit,
    string Label,
    string Source,
    Basis Basis)
{
    /// <summary>
    /// Whether it may colour a kind of product: one of those that its listing names, or, where it names none, by the part of
    /// the body that the product goes on.
    /// </summary>
    public Applies Permits(ProductKind kind)
    {
        var area = kind.Area switch
        {
            AreaOfUse.Lips => Lips,
            AreaOfUse.Eye => EyeArea,
            _ => External || !Only.IsEmpty,
        };
        return !area ? Applies.No : Only.IsEmpty ? Applies.Yes : ProductGroup.Covers(kind, Only);
    }
}

/// <summary>The greatest share of a colour additive in some products.</summary>
/// <param name="Highest">The greatest share of the finished product, by mass.</param>
/// <param name="Groups">The kinds and groups of product that it binds.</param>
public sealed record ColourLimit(Share Highest, ImmutableArray<string> Groups);
