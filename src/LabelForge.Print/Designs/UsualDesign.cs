using System.Collections.Immutable;
using LabelForge.Recipes.Files;

namespace LabelForge.Print.Designs;

/// <summary>The design and the stock that a kind of product usually takes: data in templates/usual.yaml, common practice.</summary>
/// <param name="Design">The design's id.</param>
/// <param name="Stock">The stock's id.</param>
/// <param name="With">The stock of each design that goes on the same package.</param>
public sealed record UsualDesign(string Design, string Stock, ImmutableDictionary<string, string> With)
{
    private static readonly Lazy<ImmutableDictionary<string, UsualDesign>> Loaded = new(() =>
        Templates.Tree("usual.yaml").Entries.ToImmutableDictionary(e => e.Key, e => Read((MapNode)e.Value)));

    /// <summary>The usual design of a product kind.</summary>
    /// <param name="kind">The kind's id.</param>
    public static UsualDesign For(string kind) => Loaded.Value.GetValueOrDefault(kind) ?? Loaded.Value["any"];

    private static UsualDesign Read(MapNode map)
    {
        map.OnlyKeys("A usual design", "design", "stock", "with");
        return new UsualDesign(map.Required("design", "bar-2x4").Text, map.Required("stock", "us-letter-10-2x4in").Text,
            map.OptionalMap("with") is { } with ? with.Entries.ToImmutableDictionary(e => e.Key, e => with.Required(e.Key, "a stock").Text) : ImmutableDictionary<string, string>.Empty);
    }
}
