using LabelForge.Recipes.Files;

namespace LabelForge.Recipes;

/// <summary>
/// What a maker wrote of how labels are to look: in workshop.yaml for the whole range, in a recipe or a variant for its own. What is
/// not written is taken from what stands above it, and at last proposed. Each value knows where it stands, for messages; whether it
/// names something known is judged where looks are known.
/// </summary>
public sealed record LookWish
{
    /// <summary>The keys that a look may have.</summary>
    public static IReadOnlyList<string> KnownKeys { get; } =
        ["arrangement", "frame", "ornament", "palette", "types", "scent", "line", "words", "claim", "price", "logo", "picture", "link",
            "code", "stock", "white ink", "name size", "ornament size", "ornament place", "moved"];

    /// <summary>Nothing written.</summary>
    public static LookWish None { get; } = new();

    /// <summary>Where things stand on the front.</summary>
    public TextNode? Arrangement { get; init; }

    /// <summary>The frame, or none.</summary>
    public TextNode? Frame { get; init; }

    /// <summary>The ornament's family, or none.</summary>
    public TextNode? Ornament { get; init; }

    /// <summary>The ornament's seed: another one is another drawing.</summary>
    public TextNode? Seed { get; init; }

    /// <summary>How close the ornament's figures stand.</summary>
    public TextNode? Density { get; init; }

    /// <summary>How heavy the ornament's lines are.</summary>
    public TextNode? Weight { get; init; }

    /// <summary>The palette's hue in degrees, or <c>proposed</c>.</summary>
    public TextNode? Hue { get; init; }

    /// <summary>How colourful the palette is.</summary>
    public TextNode? Strength { get; init; }

    /// <summary>The pair of types.</summary>
    public TextNode? Types { get; init; }

    /// <summary>What the scent is like: citrus, flower, herb, wood, spice, sea, sweet, smoke or plain.</summary>
    public TextNode? Scent { get; init; }

    /// <summary>What it smells of, in a few words on the front.</summary>
    public TextNode? Line { get; init; }

    /// <summary>The maker's own words on the front; they are checked as claims are.</summary>
    public TextNode? Words { get; init; }

    /// <summary>A claim on the front; it is checked as the recipe's other claims are.</summary>
    public TextNode? Claim { get; init; }

    /// <summary>The price on the front.</summary>
    public TextNode? Price { get; init; }

    /// <summary>The logo's file, in the folder designs.</summary>
    public TextNode? Logo { get; init; }

    /// <summary>The file of the product's own picture, in the folder designs: it stands in the window where an ornament would.</summary>
    public TextNode? Picture { get; init; }

    /// <summary>The address of a page, as a code on the back.</summary>
    public TextNode? Link { get; init; }

    /// <summary>The lot's barcode: usual, none, code128 or qr.</summary>
    public TextNode? Code { get; init; }

    /// <summary>The colour of the label stock, where it is not white.</summary>
    public TextNode? Stock { get; init; }

    /// <summary>Whether the printer lays white ink under what it prints: <c>true</c> or <c>false</c>.</summary>
    public TextNode? WhiteInk { get; init; }

    /// <summary>How large the name is, as a part of what there is room for.</summary>
    public TextNode? NameSize { get; init; }

    /// <summary>How high the ornament's window is, in times of what the arrangement wants.</summary>
    public TextNode? OrnamentSize { get; init; }

    /// <summary>Whether the ornament's window stands above or below the name.</summary>
    public TextNode? OrnamentPlace { get; init; }

    /// <summary>How far words of the front are moved: each by its part's name, with two lengths, to the right and down.</summary>
    public MapNode? Moved { get; init; }

    /// <summary>Reads the key <c>look</c>.</summary>
    /// <exception cref="InputException">It has a key that no look has.</exception>
    public static LookWish Read(MapNode file)
    {
        if (file.OptionalMap("look")?.OnlyKeys("A look", [.. KnownKeys]) is not { } map)
            return None;
        var ornament = map["ornament"] as MapNode;
        ornament?.OnlyKeys("An ornament", "family", "seed", "density", "weight");
        var palette = map["palette"] as MapNode;
        palette?.OnlyKeys("A palette", "hue", "strength");
        return new LookWish
        {
            Arrangement = map.OptionalText("arrangement"),
            Frame = map.OptionalText("frame"),
            Ornament = ornament is null ? map.OptionalText("ornament") : ornament.OptionalText("family"),
            Seed = ornament?.OptionalText("seed"),
            Density = ornament?.OptionalText("density"),
            Weight = ornament?.OptionalText("weight"),
            Hue = palette is null ? map.OptionalText("palette") : palette.OptionalText("hue"),
            Strength = palette?.OptionalText("strength"),
            Types = map.OptionalText("types"),
            Scent = map.OptionalText("scent"),
            Line = map.OptionalText("line"),
            Words = map.OptionalText("words"),
            Claim = map.OptionalText("claim"),
            Price = map.OptionalText("price"),
            Logo = map.OptionalText("logo"),
            Picture = map.OptionalText("picture"),
            Link = map.OptionalText("link"),
            Code = map.OptionalText("code"),
            Stock = map.OptionalText("stock"),
            WhiteInk = map.OptionalText("white ink"),
            NameSize = map.OptionalText("name size"),
            OrnamentSize = map.OptionalText("ornament size"),
            OrnamentPlace = map.OptionalText("ornament place"),
            Moved = map.OptionalMap("moved"),
        };
    }

    /// <summary>This look, and where it says nothing, another.</summary>
    public LookWish Over(LookWish below) => new()
    {
        Arrangement = Arrangement ?? below.Arrangement,
        Frame = Frame ?? below.Frame,
        Ornament = Ornament ?? below.Ornament,
        Seed = Seed ?? below.Seed,
        Density = Density ?? below.Density,
        Weight = Weight ?? below.Weight,
        Hue = Hue ?? below.Hue,
        Strength = Strength ?? below.Strength,
        Types = Types ?? below.Types,
        Scent = Scent ?? below.Scent,
        Line = Line ?? below.Line,
        Words = Words ?? below.Words,
        Claim = Claim ?? below.Claim,
        Price = Price ?? below.Price,
        Logo = Logo ?? below.Logo,
        Picture = Picture ?? below.Picture,
        Link = Link ?? below.Link,
        Code = Code ?? below.Code,
        Stock = Stock ?? below.Stock,
        WhiteInk = WhiteInk ?? below.WhiteInk,
        NameSize = NameSize ?? below.NameSize,
        OrnamentSize = OrnamentSize ?? below.OrnamentSize,
        OrnamentPlace = OrnamentPlace ?? below.OrnamentPlace,
        Moved = Moved ?? below.Moved,
    };
}
