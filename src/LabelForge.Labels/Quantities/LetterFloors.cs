using LabelForge.Markets;
using LabelForge.Measures;

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
        switch (market)
        {
            case Market.Us:
                var scarce = package is not null && package.LabellingSurface.SquareInches < Law("ingredients.small-package-below.us", on).Figure;
                return new(quantity, Floor(scarce ? "ingredients.letter-height-small.us" : "ingredients.letter-height.us", on),
                    Floor("warnings.letter-height.us", on), LetterFloor.None);
            case Market.Ca:
                // The lesser height holds only where everything stands on the principal panel, which a design may not do.
                var required = Floor("print.letter-height.ca", on);
                return new(quantity, required, required, required);
            default:
                var code = MarketText.Of(market);
                var small = package is not null && panel.Area.SquareCentimetres < Law($"ingredients.small-package-below.{code}", on).Figure;
                var letters = Floor($"ingredients.letter-height{(small ? "-small" : "")}.{code}", on);
                return new(quantity, letters, letters, LetterFloor.None);
        }
    }

    private static LawEntry Law(string id, DateOnly on) => LawBook.Shipped.Get(id, on);

    private static LetterFloor Floor(string id, DateOnly on) => new(Law(id, on).Length, Law(id, on).Citation);
}
