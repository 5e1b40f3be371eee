using System.Collections.Immutable;

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
/// <param name="Source">Where the row comes from, and whether from memory.</param>
public sealed record ColourAdditive(
    string Name,
    ImmutableArray<string> OtherNames,
    ImmutableArray<ColourIndexNumber> ColourIndex,
    string Citation,
    bool Certified,
    bool EyeArea,
    bool Lips,
    bool External,
    string Limit,
    string Source)
{
    /// <summary>Whether it is listed for cosmetics generally, lips included, and not only for external use.</summary>
    public bool General => Lips && External;
}
