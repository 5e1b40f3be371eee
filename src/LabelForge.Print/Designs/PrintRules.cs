namespace LabelForge.Print.Designs;

/// <summary>What a market asks of print beyond letter heights, on a day; null where the market does not ask it.</summary>
internal sealed record PrintRules
{
    public LawEntry? BottomShare { get; private init; }

    public LawEntry? BottomExempt { get; private init; }

    public LawEntry? ClearAboveBelow { get; private init; }

    public LawEntry? ClearBeside { get; private init; }

    public LawEntry? Proportion { get; private init; }

    public LawEntry? IdentityShare { get; private init; }

    public LawEntry? IdentityWeight { get; private init; }

    public LawEntry? NetQuantityWeight { get; private init; }

    public LawEntry? WarningsWeight { get; private init; }

    public required LawEntry Contrast { get; init; }

    public required LawEntry SafeMargin { get; init; }

    /// <summary>Clear space above and below the net quantity, in heights of its letters; a little air where no rule asks for it.</summary>
    public double ClearAbove => (double)(ClearAboveBelow?.Figure ?? 0.5m);

    public static PrintRules For(Market market, DateOnly on)
    {
        var rules = market.On(on);
        return new PrintRules
        {
            BottomShare = rules.FigureIfAny("net-quantity.bottom-of-panel"),
            BottomExempt = rules.FigureIfAny("net-quantity.bottom-of-panel-exempt"),
            ClearAboveBelow = rules.FigureIfAny("net-quantity.clear-above-below"),
            ClearBeside = rules.FigureIfAny("net-quantity.clear-beside"),
            Proportion = rules.FigureIfAny("net-quantity.letter-proportion"),
            IdentityShare = rules.FigureIfAny("identity.share-of-largest"),
            IdentityWeight = rules.FigureIfAny("identity.weight"),
            NetQuantityWeight = rules.FigureIfAny("net-quantity.weight"),
            WarningsWeight = rules.FigureIfAny("warnings.weight"),
            Contrast = rules.Figure("print.contrast"),
            SafeMargin = rules.Figure("print.safe-margin"),
        };
    }
}
