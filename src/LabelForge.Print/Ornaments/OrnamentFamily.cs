using LabelForge.Print.Ornaments.Families;

namespace LabelForge.Print.Ornaments;

/// <summary>How an ornament sits in its box.</summary>
public enum OrnamentManner
{
    /// <summary>It fills any box alike, so that a ring or a strip may be cut out of it.</summary>
    Fills,

    /// <summary>It stands on the foot of its box.</summary>
    Stands,

    /// <summary>It turns about the middle of its box.</summary>
    Turns,
}

/// <summary>What a scent is like, in the maker's own word.</summary>
public enum ScentFamily
{
    /// <summary>Lemon, orange, grapefruit.</summary>
    Citrus,

    /// <summary>Rose, lavender, jasmine.</summary>
    Flower,

    /// <summary>Rosemary, mint, hay.</summary>
    Herb,

    /// <summary>Cedar, moss, vetiver.</summary>
    Wood,

    /// <summary>Clove, cinnamon, pepper.</summary>
    Spice,

    /// <summary>Salt, rain, seaweed.</summary>
    Sea,

    /// <summary>Honey, vanilla, almond.</summary>
    Sweet,

    /// <summary>Birch tar, incense, leather.</summary>
    Smoke,

    /// <summary>No scent added.</summary>
    Plain,
}

/// <summary>A family of ornaments: a program that draws one from a seed.</summary>
/// <param name="Id">Its name in files.</param>
/// <param name="What">What it shows.</param>
/// <param name="Manner">How it sits in its box.</param>
/// <param name="Even">The weight at which it inks about as much as the others, a quarter of its box.</param>
/// <param name="Suits">The scents that it is proposed for.</param>
public sealed record OrnamentFamily(string Id, string What, OrnamentManner Manner, double Even, ImmutableArray<ScentFamily> Suits)
{
    private Action<OrnamentField, OrnamentPen> Program { get; init; } = (_, _) => { };

    /// <summary>All families.</summary>
    public static ImmutableArray<OrnamentFamily> All { get; } =
    [
        Of("sprig", "twigs with leaves and small flowers", OrnamentManner.Stands, 1, Branching.Sprig, ScentFamily.Flower,
            ScentFamily.Herb),
        Of("coral", "coral", OrnamentManner.Stands, 1, Branching.Coral, ScentFamily.Sea, ScentFamily.Spice),
        Of("fern", "ferns", OrnamentManner.Stands, 0.9, Stems.Fern, ScentFamily.Wood, ScentFamily.Herb),
        Of("meadow", "grasses in ear", OrnamentManner.Stands, 1, Stems.Meadow, ScentFamily.Herb),
        Of("umbels", "umbels", OrnamentManner.Stands, 1, Stems.Umbels, ScentFamily.Herb, ScentFamily.Flower),
        Of("spikes", "spikes of small flowers, as of lavender", OrnamentManner.Stands, 1, Stems.Spikes, ScentFamily.Flower,
            ScentFamily.Herb),
        Of("seed-head", "a head of seeds", OrnamentManner.Turns, 1, Spirals.SeedHead, ScentFamily.Sweet, ScentFamily.Spice),
        Of("dahlia", "double flowers", OrnamentManner.Fills, 1, Spirals.Dahlia, ScentFamily.Flower, ScentFamily.Sweet),
        Of("leaves", "strewn leaves", OrnamentManner.Fills, 1, Leaves.Strewn, ScentFamily.Herb, ScentFamily.Wood),
        Of("feathers", "feathers", OrnamentManner.Fills, 1, Leaves.Feathers, ScentFamily.Plain, ScentFamily.Smoke),
        Of("hills", "contour lines", OrnamentManner.Fills, 1, Fields.Hills, ScentFamily.Wood, ScentFamily.Plain),
        Of("tide", "lines of waves", OrnamentManner.Fills, 1, Fields.Tide, ScentFamily.Sea),
        Of("moss", "a labyrinth of moss", OrnamentManner.Fills, 0.8, Fields.Moss, ScentFamily.Wood, ScentFamily.Herb),
        Of("smoke", "rising lines", OrnamentManner.Fills, 1, Fields.Smoke, ScentFamily.Smoke, ScentFamily.Wood),
        Of("grain", "fine dots", OrnamentManner.Fills, 1, Fields.Grain, ScentFamily.Plain, ScentFamily.Sweet),
        Of("ridges", "ridges one behind the other", OrnamentManner.Stands, 1, Fields.Ridges, ScentFamily.Smoke, ScentFamily.Wood),
        Of("pebbles", "pebbles", OrnamentManner.Fills, 0.8, Cells.Pebbles, ScentFamily.Sea, ScentFamily.Plain),
        Of("comb", "honeycomb", OrnamentManner.Fills, 0.9, Cells.Comb, ScentFamily.Sweet),
        Of("bubbles", "bubbles", OrnamentManner.Fills, 1, Cells.Bubbles, ScentFamily.Plain, ScentFamily.Sea),
        Of("rain", "rings of rain on water", OrnamentManner.Fills, 1, Rounds.Rain, ScentFamily.Sea, ScentFamily.Plain),
        Of("rays", "a sun with rays", OrnamentManner.Turns, 1, Rounds.Rays, ScentFamily.Citrus, ScentFamily.Sweet),
        Of("rosette", "a turned rosette", OrnamentManner.Turns, 1, Rounds.Rosette, ScentFamily.Spice, ScentFamily.Flower),
        Of("slices", "slices of citrus", OrnamentManner.Fills, 0.9, Rounds.Slices, ScentFamily.Citrus),
        Of("snow", "snow crystals", OrnamentManner.Fills, 1, Rounds.Snow, ScentFamily.Plain, ScentFamily.Smoke),
        Of("turns", "quarter circles that turn", OrnamentManner.Fills, 0.85, Tilings.Turns, ScentFamily.Spice, ScentFamily.Plain),
        Of("stars", "stars on squares and octagons", OrnamentManner.Fills, 1, Tilings.Stars, ScentFamily.Spice, ScentFamily.Smoke),
        Of("plait", "a plait of two straps", OrnamentManner.Fills, 0.9, Tilings.Plait, ScentFamily.Sweet, ScentFamily.Spice),
        Of("scales", "scales with rings", OrnamentManner.Fills, 1, Tilings.Scales, ScentFamily.Sea, ScentFamily.Citrus),
        Of("tile", "tiles in one of the seventeen plane groups", OrnamentManner.Fills, 1, Wallpaper.Draw, ScentFamily.Spice,
            ScentFamily.Citrus),
        Of("brush", "brush strokes", OrnamentManner.Fills, 0.9, Strokes.Brush, ScentFamily.Smoke, ScentFamily.Sea),
        Of("bees", "bees", OrnamentManner.Fills, 1, Strokes.Bees, ScentFamily.Sweet),
    ];

    /// <summary>A family by its id, or null.</summary>
    public static OrnamentFamily? Named(string id) => All.FirstOrDefault(f => f.Id == id);

    /// <summary>Draws one into a box. The same arguments give the same drawing.</summary>
    /// <param name="width">Millimetres, from 1.</param>
    /// <param name="height">Millimetres, from 1.</param>
    /// <param name="seed">Any text; two seeds give two drawings.</param>
    /// <param name="density">From 0.4 to 2.5; 1 as the family is meant.</param>
    /// <param name="weight">From 0.4 to 2.5; 1 as the family is meant.</param>
    public OrnamentDrawing Draw(double width, double height, string seed, double density = 1, double weight = 1) =>
        Draw(width, height, seed, density, weight, about: false);

    internal OrnamentDrawing Draw(double width, double height, string seed, double density, double weight, bool about)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(width, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(height, 1);
        ArgumentOutOfRangeException.ThrowIfNotEqual(density is >= 0.4 and <= 2.5 && weight is >= 0.4 and <= 2.5, true);
        return Drawn.Of((Id, width, height, seed, density, weight, about), () =>
        {
            var field = new OrnamentField(width, height, density, weight * Even, new SeededNumbers($"{Id}/{seed}")) { About = about };
            var pen = new OrnamentPen();
            Program(field, pen);
            return pen.Drawing(field);
        });
    }

    // A label is drawn anew at each letter that is typed, and most letters leave its ornaments as they were.
    private static readonly FoundBefore<(string, double, double, string, double, double, bool), OrnamentDrawing> Drawn = new(200);

    private static OrnamentFamily Of(string id, string what, OrnamentManner manner, double even,
        Action<OrnamentField, OrnamentPen> program, params ScentFamily[] suits) =>
        new(id, what, manner, even, [.. suits]) { Program = program };
}
