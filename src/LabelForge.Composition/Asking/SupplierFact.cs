namespace LabelForge.Composition.Asking;

/// <summary>A line drawn through a material's list: who is at or over it, who at or under it.</summary>
/// <param name="AtMost">The share that those under it keep to, a fraction of the material.</param>
/// <param name="AtLeast">The share that those over it have at the least; the same, or the next figure up.</param>
public readonly record struct ShareLine(decimal AtMost, decimal AtLeast);

/// <summary>Bands that a supplier who gives no figures can sort a material's list into.</summary>
public static class ShareBands
{
    /// <summary>
    /// Where the bands meet, as fractions of the material. Some of the ends of the concentration ranges that safety data sheets
    /// may give in place of figures (29 CFR 1910.1200(i)(1)(iv)), with 2 % and 20 % between them.
    /// </summary>
    public static ImmutableArray<decimal> Edges { get; } = [0.01m, 0.02m, 0.05m, 0.10m, 0.20m, 0.40m];
}

/// <summary>A fact that a supplier could state about a material's list: the share of a
/// constituent, who is over a line, or each one's band.</summary>
/// <param name="Material">The material, as the maker calls it.</param>
/// <param name="Constituent">The constituent whose share to ask for; null where the question is of the whole list.</param>
/// <param name="Line">The line; null where the question is another.</param>
/// <param name="Settles">How many open pairs the answer is expected to settle, after the facts
/// before it: an average over compositions that the lists allow.</param>
/// <param name="Pairs">The pairs it would settle at the estimate: canonical names, the first standing first now.</param>
public sealed record SupplierFact(string Material, string? Constituent, ShareLine? Line, double Settles,
    ImmutableArray<(string First, string Second)> Pairs)
{
    /// <summary>Whether the question is in which of <see cref="ShareBands"/> each constituent lies.</summary>
    public bool IsBands => Constituent is null && Line is null;
}

/// <summary>What to ask, the most useful first.</summary>
/// <param name="Facts">The facts, in the order to ask for them.</param>
/// <param name="Open">How many pairs are open now, over all products.</param>
/// <param name="Settled">How many of them the answers together are expected to settle.</param>
public sealed record AskedFacts(ImmutableArray<SupplierFact> Facts, int Open, double Settled);
