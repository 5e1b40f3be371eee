using LabelForge.Markets;

namespace LabelForge.Checks;

/// <summary>The rules of a market, or of every one, by their ids.</summary>
public sealed class RuleBook
{
    private readonly IReadOnlyDictionary<string, Rule> _rules;

    private RuleBook(IEnumerable<Rule> rules) => _rules = rules.ToDictionary(r => r.Id);

    /// <summary>The market of the United States.</summary>
    public static Market MarketUs { get; } = MarketText.Parse("us").OrRefuse();
    /// <summary>The market of the European Union.</summary>
    public static Market MarketEu { get; } = MarketText.Parse("eu").OrRefuse();
    /// <summary>The market of the United Kingdom.</summary>
    public static Market MarketUk { get; } = MarketText.Parse("uk").OrRefuse();
    /// <summary>The market of Canada.</summary>
    public static Market MarketCa { get; } = MarketText.Parse("ca").OrRefuse();

    /// <summary>The rules of the United States.</summary>
    public static RuleBook Us { get; } = Own("us");

    /// <summary>What is noticed while a declaration is made, in any market.</summary>
    public static RuleBook Declaration { get; } = new(EveryMarket.Rules.Values);

    /// <summary>The rules of the European Union; they serve for the United Kingdom, whose differences are not checked.</summary>
    public static RuleBook Eu { get; } = Own("eu");

    /// <summary>The rules of Canada.</summary>
    public static RuleBook Ca { get; } = Own("ca");

    /// <summary>What is said of substances in a product, in any market.</summary>
    public static RuleBook Substances => Declaration;

    /// <summary>What is looked at where soap is made from oils and lye, whatever the market.</summary>
    public static RuleBook Soap => Declaration;

    /// <summary>A market's own rules.</summary>
    public static RuleBook For(Market market) => Own((market.Basis ?? market).Id);

    /// <summary>Every rule, by id.</summary>
    public IEnumerable<Rule> All => _rules.Values.OrderBy(r => r.Id, StringComparer.Ordinal);

    /// <summary>The rule of an id.</summary>
    /// <exception cref="KeyNotFoundException">There is none.</exception>
    public Rule this[string id] => _rules[id];

    private static RuleBook Own(string id) => new(MarketBook.Shipped.Find(id).OrRefuse().OwnRules);
}
