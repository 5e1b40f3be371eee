namespace LabelForge.Records.Weighing;

/// <summary>One package or piece on the scale.</summary>
/// <param name="Name">Its name or number in the list.</param>
/// <param name="Net">What it holds, the empty package taken off.</param>
/// <param name="Line">The line of the list.</param>
public sealed record WeighedPiece(string Name, Mass Net, int Line);

/// <summary>The weighed pieces and their plain figures.</summary>
public sealed record WeighedSample
{
    /// <summary>A sample of at least one piece.</summary>
    public WeighedSample(ImmutableArray<WeighedPiece> pieces)
    {
        ArgumentOutOfRangeException.ThrowIfZero(pieces.Length);
        Pieces = pieces;
        Mean = pieces.Average(p => p.Net.Grams);
        Shortest = pieces.Min(p => p.Net.Grams);
        var squares = pieces.Sum(p => (p.Net.Grams - Mean) * (p.Net.Grams - Mean));
        Sd = pieces.Length == 1 ? null : (decimal)Math.Sqrt((double)(squares / (pieces.Length - 1)));
    }

    /// <summary>The pieces in the list's order.</summary>
    public ImmutableArray<WeighedPiece> Pieces { get; }

    /// <summary>How many.</summary>
    public int Count => Pieces.Length;

    /// <summary>The average, in grams.</summary>
    public decimal Mean { get; }

    /// <summary>The lightest, in grams.</summary>
    public decimal Shortest { get; }

    /// <summary>The standard deviation of a sample (n - 1), in grams; null for one piece.</summary>
    public decimal? Sd { get; }
}
