using System.Collections.Immutable;
using LabelForge.Measures;
using LabelForge.Recipes.Files;

namespace LabelForge.Markets;

/// <summary>The markets known.</summary>
public sealed class MarketBook
{
    private static readonly Lazy<MarketBook> Loaded = new(LoadShipped);
    private readonly ImmutableDictionary<string, Lazy<Market>> markets;

    private MarketBook(ImmutableArray<string> ids)
    {
        Ids = ids;
        markets = ids.ToImmutableDictionary(id => id, id => new Lazy<Market>(() => Market.Of(MarketFolder.Embedded(id), this)));
    }

    /// <summary>The markets that ship with the program.</summary>
    public static MarketBook Shipped => Loaded.Value;

    /// <summary>Their ids, in the order in which they are listed.</summary>
    public ImmutableArray<string> Ids { get; }

    /// <summary>All of them, in that order.</summary>
    public IEnumerable<Market> All => Ids.Select(id => markets[id].Value);

    /// <summary>The market of a workshop that names none.</summary>
    public Market Usual => markets[Ids[0]].Value;

    /// <summary>The ids as a sentence lists them: <c>us, eu, uk or ca</c>.</summary>
    public string Listed => $"{string.Join(", ", Ids[..^1])} or {Ids[^1]}";

    /// <summary>A market by its id.</summary>
    public Parsed<Market> Find(string id) => markets.TryGetValue(id, out var market)
        ? Parsed<Market>.Of(market.Value)
        : Parsed<Market>.Refused("market.unknown-of-these", ("id", id), ("listed", Listed));

    private static MarketBook LoadShipped()
    {
        return new([.. ((MapNode)LawData.Tree("markets/markets.yaml")).Texts("markets").Select(t => t.Text)]);
    }
}
