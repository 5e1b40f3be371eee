using LabelForge.Print.Designs;

namespace LabelForge.Print.Fitting;

/// <summary>What a maker may lawfully do where a label's words do not fit.</summary>
internal static class WaysOut
{
    /// <summary>The ways, for a panel, where the market's law is this.</summary>
    public static string Of(DesignPanel panel, RulesOf law)
    {
        if (panel.Principal)
            return "Choose a larger label, a design with a longer principal panel, or move what need not stand there to a second panel.";
        const string Larger = "Choose a larger label, a design with a second panel, a fold-out or a tag";
        // Where every required word has a height of its own, a small package helps the ingredients no further.
        return law.FigureIfAny("print.letter-height") is null
            && law.FigureIfAny("ingredients.small-package-below") is { Value: LawFigure below } small
            && law.FigureIfAny("ingredients.letter-height-small") is { Value: LawFigure height }
            ? $"{Larger}; or a package with less surface than {Shown(below)} for labels, where "
                + $"ingredients may be {Shown(height)} high ({small.Citation}; write package: in the recipe)."
            : $"{Larger}.";
    }

    private static string Shown(LawFigure figure) => (figure.Figure, figure.Unit) switch
    {
        (0.03125m, "in") => "1/32 in",
        _ => figure.Figure.ToString("0.###", CultureInfo.InvariantCulture) + " " + figure.Unit,
    };
}
