using LabelForge.Markets;

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

    public required LawEntry Contrast { get; init; }

    public required LawEntry SafeMargin { get; init; }

    /// <summary>Clear space above and below the net quantity, in heights of its letters; a little air where no rule asks for it.</summary>
    public double ClearAbove => (double)(ClearAboveBelow?.Figure ?? 0.5m);

    public static PrintRules For(Market market, DateOnly on)
    {
        LawEntry? Of(string id) => LawBook.Shipped.Entries.Any(e => e.Id == id && e.HoldsOn(on)) ? LawBook.Shipped.Get(id, on) : null;
        var code = MarketText.Of(market);
        return new PrintRules
        {
            BottomShare = Of($"net-quantity.bottom-of-panel.{code}"),
            BottomExempt = Of($"net-quantity.bottom-of-panel-exempt.{code}"),
            ClearAboveBelow = Of($"net-quantity.clear-above-below.{code}"),
            ClearBeside = Of($"net-quantity.clear-beside.{code}"),
            Proportion = Of($"net-quantity.letter-proportion.{code}"),
            IdentityShare = Of($"identity.share-of-largest.{code}"),
            IdentityWeight = Of($"identity.weight.{code}"),
            NetQuantityWeight = Of($"net-quantity.weight.{code}"),
            Contrast = LawBook.Shipped.Get($"print.contrast.{code}", on),
            SafeMargin = LawBook.Shipped.Get($"print.safe-margin.{code}", on),
        };
    }
}
