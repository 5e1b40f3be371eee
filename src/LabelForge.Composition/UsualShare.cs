namespace LabelForge.Composition;

/// <summary>How much of a constituent a material usually holds. It chooses where the supplier's
/// paper is silent, and proves nothing.</summary>
/// <param name="Fraction">The usual share of the material, above 0 up to 1.</param>
/// <param name="Sources">Where figures for this very ingredient were published; empty where only
/// its like or its place in the list was gone by.</param>
public sealed record UsualShare(double Fraction, ImmutableArray<string> Sources)
{
    /// <summary>Whether figures for this very ingredient are published.</summary>
    public bool IsPublished => !Sources.IsEmpty;
}

/// <summary>On what an ingredient's place in a declaration rests.</summary>
public enum Placed
{
    /// <summary>On the suppliers' papers: its order against every other is right for every composition that they allow.</summary>
    Proved,

    /// <summary>On published usual levels, where the papers leave a pair open.</summary>
    Usual,

    /// <summary>On what its like or its place in a list usually is: a guess.</summary>
    Guess,
}
