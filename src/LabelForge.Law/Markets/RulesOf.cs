using LabelForge.Checks;

namespace LabelForge.Markets;

/// <summary>The rules and figures of a market that are in force on a day. Whatever depends on the
/// law asks here and nowhere else.</summary>
/// <param name="day">The day to judge by.</param>
public sealed class RulesOf(Market market, DateOnly day)
{
    /// <summary>The market.</summary>
    public Market Market { get; } = market;

    /// <summary>The day to judge by.</summary>
    public DateOnly Day { get; } = day;

    /// <summary>The figure of a name.</summary>
    /// <exception cref="InputException">The market's folder has none of that name, or no version
    /// of it that is known held on that day.</exception>
    public LawEntry Figure(string id) => Market.Figures.Has(id) ? Market.Figures.Get(id, Day)
        : Market.Book.Every.Figures.Has(id) ? Market.Book.Every.Figures.Get(id, Day)
        : throw new InputException($"{Market.Id}/figures.yaml", 0, "figure.missing", ("market", Market.Name), ("id", id));

    /// <summary>The figure of a name; null where the market has none, or none in force on that day.</summary>
    public LawEntry? FigureIfAny(string id) => Market.Figures.Find(id, Day) ?? Market.Book.Every.Figures.Find(id, Day);

    /// <summary>The rule of an id; null where the market has none, or none in force on that day.</summary>
    public Rule? Rule(string id) => Market.RuleOf(id) is { } rule && rule.HoldsOn(Day) ? rule : null;
}
