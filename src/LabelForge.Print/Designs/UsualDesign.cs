using LabelForge.Quantities;
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

    /// <summary>What is taken instead where its stock lies in the workshop and the first one's does not; null for nothing else.</summary>
    public UsualDesign? Or { get; init; }

    /// <summary>The usual design of a product kind.</summary>
    /// <param name="kind">The kind's id.</param>
    /// <param name="atHand">The ids of the stock that the workshop has; none where it does not say.</param>
    /// <param name="package">The product's package; where the kind's design is for another shape,
    /// the one for any product is taken.</param>
    public static UsualDesign For(string kind, IReadOnlyCollection<string>? atHand = null, Package? package = null)
    {
        var usual = Loaded.Value.GetValueOrDefault(kind) is { } own && Suits(own, package) ? own : Loaded.Value["any"];
        return usual.Or is { } other && atHand is not null && atHand.Contains(other.Stock) && !atHand.Contains(usual.Stock)
            ? other
            : usual;
    }

    private static bool Suits(UsualDesign usual, Package? package) =>
        package is null || LabelDesign.Load(usual.Design).Package is not { } drawnFor || drawnFor.Shape == package.Shape;

    private static UsualDesign Read(MapNode map)
    {
        map.OnlyKeys("A usual design", "design", "stock", "with", "or");
        return new UsualDesign(map.Required("design", "bar-2x4").Text, map.Required("stock", "us-letter-10-2x4in").Text,
            map.OptionalMap("with") is { } with
                ? with.Entries.ToImmutableDictionary(e => e.Key, e => with.Required(e.Key, "a stock").Text)
                : ImmutableDictionary<string, string>.Empty)
        {
            Or = map.OptionalMap("or") is { } other ? Read(other) : null,
        };
    }
}
