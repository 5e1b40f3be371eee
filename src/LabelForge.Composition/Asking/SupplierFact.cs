using System.Collections.Immutable;

namespace LabelForge.Composition.Asking;

/// <summary>A line drawn through a material's list: who is at or over it, who at or under it.</summary>
/// <param name="AtMost">The share that those under it keep to, a fraction of the material.</param>
/// <param name="AtLeast">The share that those over it have at the least; the same, or the next figure up.</param>
public readonly record struct ShareLine(decimal AtMost, decimal AtLeast);

/// <summary>A fact that a supplier could state about a material's list: the share of a constituent, or who is over a line.</summary>
/// <param name="Material">The material, as the maker calls it.</param>
/// <param name="Constituent">The constituent whose share to ask for; null where the question is who is over a line.</param>
/// <param name="Line">The line; null where the question is a share.</param>
/// <param name="Settles">How many open pairs the answer is expected to settle, after the facts before it: an average over compositions that the lists allow.</param>
/// <param name="Pairs">The pairs it would settle at the estimate: canonical names, the first standing first now.</param>
public sealed record SupplierFact(string Material, string? Constituent, ShareLine? Line, double Settles, ImmutableArray<(string First, string Second)> Pairs);

/// <summary>What to ask, the most useful first.</summary>
/// <param name="Facts">The facts, in the order to ask for them.</param>
/// <param name="Open">How many pairs are open now, over all products.</param>
/// <param name="Settled">How many of them the answers together are expected to settle.</param>
public sealed record AskedFacts(ImmutableArray<SupplierFact> Facts, int Open, double Settled);
