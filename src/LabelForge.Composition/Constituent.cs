namespace LabelForge.Composition;

/// <summary>One line of a supplier's declaration.</summary>
/// <param name="Name">
/// The name it goes by in the product: the same ingredient has the same name in every material. Several substances may go
/// by one name, even in one list, as the iron oxides do on a US label; they are one ingredient then.
/// </param>
/// <param name="Share">What the supplier says of its share of the material by mass;
/// <see cref="ShareRange.Unknown"/> where nothing is said.</param>
/// <param name="IsColourant">Whether it is a colour additive, which may stand last whatever its
/// share (21 CFR 701.3(f)(3); Regulation (EC) No 1223/2009 Art. 19(1)(g)).</param>
public sealed record Constituent(string Name, ShareRange Share, bool IsColourant)
{
    /// <summary>The substance that the line means, which stands in a list once; the name itself where no other is set.</summary>
    public string Substance { get; init; } = Name;

    /// <summary>How much of it is usual; null where nothing is known, and the middle of what is possible serves.</summary>
    public UsualShare? Usual { get; init; }
}
