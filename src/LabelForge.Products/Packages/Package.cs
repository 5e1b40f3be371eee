namespace LabelForge.Quantities;

/// <summary>
/// The package that a label is for. From its size come the area of its principal display panel (21 CFR 701.10), which
/// sets the least height of the net quantity, and the surface it has for labels, below which ingredients may be set
/// smaller (21 CFR 701.3(p)).
/// </summary>
public sealed partial record Package
{
    private const decimal Pi = 3.14159265358979m;

    private static readonly ImmutableArray<(string Word, PackageShape Shape, string[] Sides)> Shapes =
    [
        ("bar", PackageShape.Box, ["width", "height", "depth"]),
        ("box", PackageShape.Box, ["width", "height", "depth"]),
        ("tube", PackageShape.Tube, ["diameter", "height"]),
        ("jar", PackageShape.Jar, ["diameter", "height"]),
        ("bottle", PackageShape.Bottle, ["diameter", "height"]),
        ("tin", PackageShape.Tin, ["diameter", "height"]),
        ("bag", PackageShape.Bag, ["width", "height"]),
        ("card", PackageShape.Card, ["width", "height"]),
    ];

    private Package(PackageShape shape, ImmutableDictionary<string, Length> sides) => (Shape, Sides) = (shape, sides);

    /// <summary>The words for shapes, as files write them.</summary>
    public static IEnumerable<string> ShapeWords => Shapes.Select(s => s.Word);

    /// <summary>The shape.</summary>
    public PackageShape Shape { get; }

    /// <summary>Its measures by name: width, height, depth, diameter and, of what is round, circumference.</summary>
    public ImmutableDictionary<string, Length> Sides { get; }

    /// <summary>The shape and every measure as one text: two packages of one key are the same.</summary>
    public string Key =>
        string.Join(' ', Sides.OrderBy(s => s.Key, StringComparer.Ordinal).Select(s => $"{Shape}{s.Key}{s.Value.Millimetres}"));

    /// <summary>All the surface that can bear a label; shoulders, necks and the ends of tubes are left out.</summary>
    public Area LabellingSurface => Area.FromSquareMillimetres(Shape switch
    {
        PackageShape.Box => 2 * (Mm("width") * Mm("height") + Mm("width") * Mm("depth") + Mm("height") * Mm("depth")),
        PackageShape.Tube or PackageShape.Bottle => Wall,
        PackageShape.Jar => Wall + Round,
        PackageShape.Tin => Wall + 2 * Round,
        _ => 2 * Mm("width") * Mm("height"),
    });

    private decimal Wall => Mm("circumference") * Mm("height");

    private decimal Round => Pi * Mm("diameter") * Mm("diameter") / 4;

    /// <summary>The principal display panel.</summary>
    /// <param name="rules">The rules of the market and the day.</param>
    public Panel PrincipalPanel(RulesOf rules) => Shape switch
    {
        PackageShape.Tube or PackageShape.Jar or PackageShape.Bottle => Panel.Cylinder(Sides["height"], Sides["circumference"], rules),
        // The top of a round package is its whole panel: 21 CFR 701.10(c).
        PackageShape.Tin => new Panel(Area.FromSquareMillimetres(Round), null, null),
        _ => Panel.Rectangle(Sides["width"], Sides["height"]),
    };

    /// <summary>Reads a shape and its size.</summary>
    /// <param name="shape">bar, box, tube, jar, bottle, tin, bag or card.</param>
    /// <param name="size"><c>3.25x2.25x1 in</c>, <c>16.5 x 60 mm</c>.</param>
    public static Parsed<Package> Parse(string shape, string size)
    {
        if (Shapes.FirstOrDefault(s => s.Word == shape.Trim()) is not { Word: { } word } known)
            return Parsed<Package>.Refused("package.shape", ("shape", shape.Trim()), ("list", string.Join(", ", ShapeWords)));
        var match = SizeText().Match(size.Trim());
        if (!match.Success)
            return Parsed<Package>.Refused("package.not-a-size", ("size", size.Trim()));
        var unit = match.Groups["unit"].Value switch { "mm" => 1m, "cm" => 10m, _ => Length.MillimetresPerInch };
        var figures = match.Groups["figure"].Captures.Select(c => decimal.Parse(c.Value, CultureInfo.InvariantCulture) * unit).ToArray();
        if (figures.Length != known.Sides.Length)
            return Parsed<Package>.Refused("package.number-of-measures", ("word", word), ("count", known.Sides.Length),
                ("size", size.Trim()), ("count-2", figures.Length));
        if (figures.Any(f => f is < 1m or > 2_000m))
            return Parsed<Package>.Refused("package.side", ("size", size.Trim()));
        var sides = known.Sides.Zip(figures).ToImmutableDictionary(p => p.First, p => Length.FromMillimetres(p.Second));
        if (sides.TryGetValue("diameter", out var diameter))
            sides = sides.Add("circumference", Length.FromMillimetres(Pi * diameter.Millimetres));
        return Parsed<Package>.Of(new Package(known.Shape, sides));
    }

    private decimal Mm(string side) => Sides[side].Millimetres;

    [GeneratedRegex(@"^(?<figure>[0-9]{1,5}(?:\.[0-9]{1,6})?)(?:\s*[x×]\s*(?<figure>[0-9]{1,5}(?:\.[0-9]{1,6})?))+\s*(?<unit>mm|cm|in)$")]
    private static partial Regex SizeText();
}
