using LabelForge.Recipes.Files;

namespace LabelForge.Markets;

/// <summary>The markets known.</summary>
public sealed class MarketBook
{
    private readonly ImmutableDictionary<string, Lazy<Market>> markets;

    private MarketBook(EveryMarket every, ImmutableArray<string> shipped, ImmutableArray<string> folders)
    {
        Every = every;
        Ids = [.. shipped, .. folders.Select(f => Path.GetFileName(f))];
        markets = shipped.Select(id => KeyValuePair.Create(id, new Lazy<Market>(() => Market.Of(MarketFolder.Embedded(id), this))))
            .Concat(
                folders.Select(f => KeyValuePair.Create(Path.GetFileName(f), new Lazy<Market>(() => Market.Of(MarketFolder.At(f), this)))))
            .ToImmutableDictionary(StringComparer.OrdinalIgnoreCase);
    }

    /// <summary>The markets that ship with the program; each is read when it is first asked for.</summary>
    public static MarketBook Read() => new(new EveryMarket(MarketFolder.Embedded("every")),
        [.. ((MapNode)LawData.Tree("markets/markets.yaml")).Texts("markets").Select(t => t.Text)], []);

    /// <summary>What holds in all of them.</summary>
    public EveryMarket Every { get; }

    /// <summary>Their ids, in the order in which they are listed.</summary>
    public ImmutableArray<string> Ids { get; }

    /// <summary>All of them, in that order.</summary>
    public IEnumerable<Market> All => Ids.Select(id => markets[id].Value);

    /// <summary>The market of a workshop that names none.</summary>
    public Market Usual => markets[Ids[0]].Value;

    /// <summary>The ids as a sentence lists them: <c>us, eu, uk or ca</c>.</summary>
    public string Listed => $"{string.Join(", ", Ids[..^1])} or {Ids[^1]}";

    /// <summary>These markets, and a maker's own beside them: each folder in a folder that holds a market.yaml, by its name.</summary>
    /// <param name="folder">The folder of folders; there need not be one.</param>
    /// <exception cref="InputException">A folder bears the name of a market that is known.</exception>
    public MarketBook With(string folder)
    {
        string[] own = Directory.Exists(folder)
            ? [.. Directory.EnumerateDirectories(folder).Where(d => File.Exists(Path.Combine(d, "market.yaml")))
                .Order(StringComparer.Ordinal)]
            : [];
        if (own.Length == 0)
            return this;
        return own.FirstOrDefault(d => Ids.Contains(Path.GetFileName(d))) is { } taken
            ? throw new InputException(Path.Combine(taken, "market.yaml"), 0, "market.name-taken", ("id", Path.GetFileName(taken)))
            : new(Every, Ids, [.. own]);
    }

    /// <summary>A market by its id, upper or lower case.</summary>
    public Parsed<Market> Find(string id) => markets.TryGetValue(id.Trim(), out var market)
        ? Parsed<Market>.Of(market.Value)
        : Parsed<Market>.Refused("market.unknown", ("text", id.Trim()), ("listed", Listed));

    /// <summary>A market from a folder on disk, such as one of a maker's own, beside these.</summary>
    /// <param name="folder">The folder that holds market.yaml.</param>
    /// <exception cref="InputException">A file is missing or cannot be used; the problem names it.</exception>
    public Market At(string folder) => Market.Of(MarketFolder.At(folder), this);
}
