using LabelForge.Print.Output;

namespace LabelForge.Print.Sheets;

/// <summary>What a printer cannot reach at each edge of a sheet.</summary>
public sealed record BlankEdges(Length Left, Length Top, Length Right, Length Bottom)
{
    /// <summary>4.2 mm, a sixth of an inch, all round: common practice for desk printers; write your own printer's.</summary>
    public static BlankEdges Usual { get; } = new(Sixth, Sixth, Sixth, Sixth);

    /// <summary>None: a printer that prints to the edge, or a label printer.</summary>
    public static BlankEdges None { get; } = new(default, default, default, default);

    private static Length Sixth => Length.FromMillimetres(4.2m);
}

/// <summary>A printer as calibrated: how its print is moved and stretched, and what it cannot reach.</summary>
/// <param name="Id">The file's name without its ending.</param>
/// <param name="Registration">How prints for it are moved and stretched.</param>
/// <param name="Blank">What it cannot reach.</param>
public sealed record Printer(string Id, Registration Registration, BlankEdges Blank)
{
    /// <summary>A printer nothing is known of.</summary>
    public static Printer Unknown { get; } = new("", default, BlankEdges.Usual);

    /// <summary>The printer with another nudge or stretch; null leaves what it has.</summary>
    public Printer With((decimal X, decimal Y)? nudge, (decimal X, decimal Y)? stretch) => this with
    {
        Registration = new Registration(nudge?.X ?? Registration.NudgeXMm, nudge?.Y ?? Registration.NudgeYMm,
            stretch?.X ?? Registration.StretchXPercent, stretch?.Y ?? Registration.StretchYPercent),
    };
}
