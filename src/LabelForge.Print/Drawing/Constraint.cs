using LabelForge.Print.Designs;

namespace LabelForge.Print.Drawing;

/// <summary>A rule that a label was measured against: what it measures, what the rule allows, and the margin to spare.</summary>
/// <param name="Id">The rule, such as <c>net-quantity.letter-height</c>.</param>
/// <param name="Role">The element it is about; null for the label as a whole.</param>
/// <param name="Measured">What the drawn label measures.</param>
/// <param name="Limit">The least, or the most, that the rule allows.</param>
/// <param name="Unit">The unit of both: mm, times, to 1, %.</param>
/// <param name="AtLeast">Whether the limit is a least; else it is a most.</param>
/// <param name="Source">Instrument and paragraph, or "common practice".</param>
/// <param name="Required">Whether a label that breaks it is refused.</param>
/// <param name="Rule">What is measured, and what to do where it is not kept.</param>
public sealed record Constraint(
    string Id, Role? Role, decimal Measured, decimal Limit, string Unit, bool AtLeast, string Source, bool Required,
    Problem Rule)
{
    // Lengths are rounded down to a ten-thousandth of a millimetre on their way; that much is no breach.
    private const decimal Rounding = 0.0002m;

    // What is within a hundredth of its limit holds the layout back.
    private const decimal Near = 0.01m;

    /// <summary>The room between what is measured and the limit; below zero where the rule is broken.</summary>
    public decimal Margin => AtLeast ? Measured - Limit : Limit - Measured;

    /// <summary>Whether the rule is kept.</summary>
    public bool Kept => Margin >= -Rounding;

    /// <summary>Whether this rule holds the layout back: it is kept with next to nothing to spare.</summary>
    public bool Binds => Kept && Margin <= Limit * Near;

    /// <summary>By how much a length falls short; no length where it is kept or is no length.</summary>
    public Length Shortfall => Unit == "mm" && Margin < 0 ? Length.FromMillimetres(-Margin) : default;

    /// <summary>What is measured, in words.</summary>
    public string What => Rule.Wrong;

    /// <summary>That it is not kept: what was measured, what is allowed, by which rule.</summary>
    public Problem Broken => AtLeast
        ? new Problem("fit.less-than-the-least", ("rule", Rule), ("measured", Figure(Measured)), ("limit", Figure(Limit)),
            ("unit", Unit), ("source", Source))
        : new Problem("fit.more-than-the-most", ("rule", Rule), ("measured", Figure(Measured)), ("limit", Figure(Limit)),
            ("unit", Unit), ("source", Source));

    private static string Figure(decimal figure) => figure.ToString("0.##", CultureInfo.InvariantCulture);
}
