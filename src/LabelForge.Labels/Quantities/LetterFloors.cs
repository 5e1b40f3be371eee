namespace LabelForge.Quantities;

/// <summary>A height that letters may not fall below, and where that is written.</summary>
/// <param name="Height">The least height, of the lower-case o, or of capitals where all are capitals.</param>
/// <param name="Source">Instrument and paragraph, or "common practice".</param>
public sealed record LetterFloor(Length Height, string Source)
{
    /// <summary>No floor.</summary>
    public static LetterFloor None { get; } = new(default, "");
}

/// <summary>The least letter heights of a label, by market and package.</summary>
/// <param name="NetQuantity">Of the net quantity statement.</param>
/// <param name="Ingredients">Of the ingredient declaration.</param>
/// <param name="Warnings">Of warnings.</param>
/// <param name="Required">Of anything else that a rule asks for: identity, business and place.</param>
public sealed record LetterFloors(LetterFloor NetQuantity, LetterFloor Ingredients, LetterFloor Warnings, LetterFloor Required)
{
    /// <summary>The floors.</summary>
    /// <param name="market">The market.</param>
    /// <param name="amount">What a piece holds.</param>
    /// <param name="panel">The principal display panel.</param>
    /// <param name="package">The package, or null where its size is not known: the greater floors then stand.</param>
    /// <param name="on">The day to judge by.</param>
    public static LetterFloors For(Market market, NetAmount amount, Panel panel, Package? package, DateOnly on)
    {
        var net = LetterHeight.Least(market, amount, panel, on)!;
        var quantity = new LetterFloor(Length.FromMillimetres(net.Mm), net.Source);
        var rules = market.On(on);
        // What a market asks of every required word alike stands before what it asks of the ingredients alone.
        var required = Floor(rules, "print.letter-height");
        var small = rules.FigureIfAny("ingredients.small-package-below") is { } below
            && package is not null
            && IsBelow(market.Ways.IsSmallByWholeSurface ? package.LabellingSurface : panel.Area, below);
        var ingredients = required ?? Floor(rules, small ? "ingredients.letter-height-small" : "ingredients.letter-height")
            ?? LetterFloor.None;
        return new(quantity, ingredients, Floor(rules, "warnings.letter-height") ?? ingredients, required ?? LetterFloor.None);
    }

    private static bool IsBelow(Area area, LawEntry limit) => limit.Value switch
    {
        LawFigure { Unit: "sq in" } figure => area.SquareInches < figure.Figure,
        LawFigure { Unit: "sq cm" } figure => area.SquareCentimetres < figure.Figure,
        _ => throw new InvalidOperationException($"{limit.Id} is no area."),
    };

    private static LetterFloor? Floor(RulesOf rules, string figure) =>
        rules.FigureIfAny(figure) is { } height ? new(height.Length, height.Citation) : null;
}
