using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;

namespace LabelForge.Print.Fitting;

/// <summary>What came of fitting content into a design: a layout, or why there is none.</summary>
public abstract record Fit
{
    private Fit()
    {
    }

    /// <summary>The layout.</summary>
    /// <exception cref="InputException">It does not fit.</exception>
    public LabelLayout OrRefuse() => this switch
    {
        Fits fits => fits.Layout,
        DoesNotFit not => throw new InputException(not.Problem),
        _ => throw new InvalidOperationException(),
    };

    /// <summary>It fits, every floor kept.</summary>
    public sealed record Fits(LabelLayout Layout) : Fit;

    /// <summary>It does not fit with every letter at its floor.</summary>
    /// <param name="Panel">The panel that is too small.</param>
    /// <param name="Role">The element that is too wide, or null where the panel as a whole is too low.</param>
    /// <param name="Excess">How much room is missing.</param>
    /// <param name="Problem">What is wrong, and what to do.</param>
    public sealed record DoesNotFit(string Panel, Role? Role, Length Excess, Problem Problem) : Fit
    {
        /// <summary>What is wrong.</summary>
        public string Wrong => Problem.Wrong;

        /// <summary>What to do.</summary>
        public string Write => Problem.Write;
    }
}
