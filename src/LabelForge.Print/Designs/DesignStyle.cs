using LabelForge.Print.Lettering;
using LabelForge.Recipes.Files;

namespace LabelForge.Print.Designs;

/// <summary>Whether a label is dark on light or light on dark.</summary>
public enum Tone
{
    /// <summary>Dark ink on a light ground.</summary>
    Light,

    /// <summary>Light letters on a dark ground.</summary>
    Dark,
}

/// <summary>The look of a label apart from its layout: type pairing, rules, spacing, colours. From templates/styles.</summary>
public sealed record DesignStyle
{
    private static readonly FoundBefore<string, DesignStyle> Loaded = new(100);

    private static readonly string[] FaceNames = ["display", "business", "regular", "medium", "semibold", "bold"];

    /// <summary>The file's name without its ending.</summary>
    public required string Id { get; init; }

    /// <summary>Its faces by what they are for.</summary>
    public required ImmutableDictionary<string, TypeFace> Faces { get; init; }

    /// <summary>Whether the business's name is set in capitals.</summary>
    public required bool Capitals { get; init; }

    /// <summary>The space after each letter of the business's name, in em.</summary>
    public required double Tracking { get; init; }

    /// <summary>The thickness of rules.</summary>
    public required Length Rule { get; init; }

    /// <summary>Whether the product's name is set in capitals on arranged fronts.</summary>
    public bool NameCapitals { get; init; }

    /// <summary>The space after each letter of the product's name, in em.</summary>
    public double NameTracking { get; init; }

    /// <summary>From line to line of the product's name, in em.</summary>
    public double NameLeading { get; init; } = 0.96;

    /// <summary>Ground and ink of each tone.</summary>
    public required ImmutableDictionary<Tone, (Colour Ground, Colour Ink)> Colours { get; init; }

    /// <summary>The ids of the styles that ship with the tool.</summary>
    public static IReadOnlyList<string> Known => Templates.Ids("styles");

    /// <summary>A style that ships with the tool.</summary>
    /// <exception cref="InputException">There is none of that id.</exception>
    public static DesignStyle Load(string id) => Known.Contains(id)
        ? Loaded.Of(id, () => Read(Templates.Tree($"styles/{id}.yaml"), id))
        : throw Templates.Unknown("style", id, Known);

    private static DesignStyle Read(MapNode map, string id)
    {
        map.OnlyKeys("A style", "name", "faces", "capitals", "tracking", "rule", "light", "dark", "name capitals", "name tracking",
            "name leading");
        var faces = map.OptionalMap("faces")?.OnlyKeys("A style's faces", FaceNames) ?? throw map.Refuse("design.style-needs-faces");
        var named = faces.Entries.ToImmutableDictionary(e => e.Key, e => BundledFaces.OfFile(((TextNode)e.Value).Text));
        return new DesignStyle
        {
            Id = id,
            Faces = named.ContainsKey("business") ? named : named.Add("business", named["medium"]),
            Capitals = map.Required("capitals", "true").Text == "true",
            Tracking = map.NumberOr("tracking", 0),
            Rule = map.RequiredLength("rule"),
            NameCapitals = map.OptionalText("name capitals")?.Text == "true",
            NameTracking = map.NumberOr("name tracking", 0),
            NameLeading = map.NumberOr("name leading", 0.96),
            Colours = ImmutableDictionary<Tone, (Colour, Colour)>.Empty.Add(Tone.Light, Pair(map, "light"))
                .Add(Tone.Dark, Pair(map, "dark")),
        };
    }

    private static (Colour Ground, Colour Ink) Pair(MapNode map, string tone)
    {
        var pair = map.OptionalMap(tone) ?? throw map.Refuse("design.style-needs", ("tone", tone));
        return (ColourOf(pair, "ground"), ColourOf(pair, "ink"));
    }

    internal static Colour ColourOf(MapNode map, string key)
    {
        var node = map.Required(key, "\"#23292e\"");
        return Colour.Parse(node.Text) ?? throw node.Refuse("design.not-a-colour", ("text", node.Text));
    }
}
