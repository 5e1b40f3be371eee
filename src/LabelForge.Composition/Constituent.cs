using LabelForge.Measures;

namespace LabelForge.Composition;

/// <summary>One line of a supplier's declaration.</summary>
/// <param name="Name">The ingredient's canonical name: the same ingredient has the same name in every material.</param>
/// <param name="Share">What the supplier says of its share of the material by mass; <see cref="ShareRange.Unknown"/> where nothing is said.</param>
/// <param name="IsColourant">Whether it is a colour additive, which may stand last whatever its share (21 CFR 701.3(f)(3); Regulation (EC) No 1223/2009 Art. 19(1)(g)).</param>
public sealed record Constituent(string Name, ShareRange Share, bool IsColourant);
