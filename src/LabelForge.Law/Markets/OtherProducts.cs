namespace LabelForge.Markets;

/// <summary>A kind of product that the rules of a market are not for.</summary>
/// <param name="Id">Its id, such as <c>candle</c>.</param>
/// <param name="What">What it is, with its article.</param>
/// <param name="Words">The names that labels give it.</param>
/// <param name="Unless">Words in the same line that make it soap or a cosmetic again.</param>
/// <param name="MayBeScent">Whether such a word may be a scent's name, so that a label that says elsewhere what it is, is that.</param>
/// <param name="Whose">By market, who makes the rules for it and where.</param>
public sealed record OtherProduct(string Id, string What, ImmutableArray<string> Words, ImmutableArray<string> Unless, bool MayBeScent,
    ImmutableDictionary<string, string> Whose)
{
    /// <summary>Who makes the rules for it in a market and where; null where it is one of the cosmetics there.</summary>
    public string? WhoseIn(Market market) => Whose.GetValueOrDefault(market.Id);
}

/// <summary>The products that are not for these rules: a vocabulary, as the kinds of product are.</summary>
public static class OtherProducts
{
    private static readonly Lazy<ImmutableArray<OtherProduct>> Held =
        new(() => [.. YamlRecord.Embedded("markets/Words/others.yaml").Select(One)]);

    /// <summary>All of them.</summary>
    public static ImmutableArray<OtherProduct> All => Held.Value;

    private static OtherProduct One(YamlRecord record)
    {
        record.OnlyKeys("id", "what", "words", "unless", "scent", "whose");
        var whose = record.Record("whose", "{ us: \"the FDA: ...\" }");
        return new(
            record.Text("id", "candle"), record.Text("what", "a candle"), [.. record.Texts("words", "[candle, candles]")],
            record.Has("unless") ? [.. record.Texts("unless", "[massage candle]")] : [], record.Has("scent"),
            whose.Keys.ToImmutableDictionary(id => id, id => whose.Text(id, "who makes the rules")));
    }
}
