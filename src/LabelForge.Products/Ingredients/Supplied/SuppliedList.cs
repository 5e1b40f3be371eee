namespace LabelForge.Ingredients.Supplied;

/// <summary>One name read from a supplier's paper.</summary>
/// <param name="Position">Its place in the supplier's list, from 1; what may be contained is counted on.</param>
/// <param name="Text">The name as the supplier wrote it, without its share and its footnote marks.</param>
/// <param name="Share">What the paper says of its share of the material by mass;
/// <see cref="ShareRange.Unknown"/> where it says nothing.</param>
/// <param name="Organic">Whether the paper calls it organic, by a word beside the name or by a footnote.</param>
/// <param name="MayContain">Whether it stands among what the material only may contain.</param>
/// <param name="Cas">The CAS number written beside it, if its check digit is right; else null.</param>
/// <param name="Remarks">What else stood beside it and was not taken as a fact, in plain words; usually empty.</param>
public sealed record SuppliedName(
    int Position, string Text, ShareRange Share, bool Organic, bool MayContain, CasNumber? Cas, ImmutableArray<string> Remarks);

/// <summary>What was read from a supplier's paper.</summary>
/// <param name="Names">The names in the supplier's order; at least one.</param>
/// <param name="LeftOut">Text that is no name, as it stood: the product's title, footnotes, closing sentences.</param>
public sealed record SuppliedList(ImmutableArray<SuppliedName> Names, ImmutableArray<string> LeftOut)
{
    /// <summary>The lines of the paper, from 1, on which <see cref="LeftOut"/> begins, in its
    /// order; 0 where it was not found as it stood.</summary>
    public ImmutableArray<int> LeftOutLines { get; init; } = [];

    /// <summary>What was left out, each with its line of the paper, as the material's file keeps it.</summary>
    public ImmutableArray<string> Said =>
        [.. LeftOut.Select((left, at) => LeftOutLines.ElementAtOrDefault(at) is var line and > 0 ? $"line {line}: {left}" : left)];
}
