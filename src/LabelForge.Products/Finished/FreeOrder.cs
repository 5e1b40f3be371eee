using LabelForge.Composition;

namespace LabelForge.Declarations;

/// <summary>Where the order by weight ends, by the law.</summary>
public static class FreeOrder
{
    /// <summary>The lines for a label of a market on a day. A market that sets none wants the order of weight throughout.</summary>
    /// <exception cref="Measures.InputException">The market has a line, and none is known for that day.</exception>
    public static OnePercentLines Of(RulesOf rules) =>
        new(rules.Market.Figures.Has("ingredients.one-percent-line") ? rules.Figure("ingredients.one-percent-line").Figure / 100 : 0,
            OfLists(rules.Market.Book));

    /// <summary>The line of suppliers' lists, a fraction: whose law and which day a list was
    /// written by is not known, so the widest.</summary>
    public static decimal OfLists(MarketBook markets) =>
        markets.Every.Figures.Entries.Where(e => e.Id == "lists.free-order-line").Max(e => e.Figure) / 100;

    /// <summary>For sums and bounds, which ask for no order: the line of the lists, and none for a label.</summary>
    internal static OnePercentLines OfListsAlone(MarketBook markets) => new(0, OfLists(markets));
}
