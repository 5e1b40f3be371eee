namespace LabelForge.Quantities;

/// <summary>A principal display panel: the part of a package that a shopper is most likely to see (21 CFR 701.10).</summary>
/// <remarks>
/// The 40 percent are the US rule. In Canada the principal display surface is the whole side that is displayed, or the
/// whole lid (Consumer Packaging and Labelling Regulations, s. 2(1)): give that as a rectangle.
/// </remarks>
/// <param name="Area">Its area, which sets the least letter height.</param>
/// <param name="Width">Its width, where it is a rectangle.</param>
/// <param name="Height">Its height, where it is a rectangle.</param>
public sealed partial record Panel(Area Area, Length? Width, Length? Height)
{
    private const decimal LongestMillimetres = 10_000m;
    /// <summary>One whole side of a rectangular package: height times width (21 CFR 701.10(a)).</summary>
    public static Panel Rectangle(Length width, Length height) => new(Area.OfRectangle(width, height), width, height);

    /// <summary>40 percent of a cylinder's height times its circumference (21 CFR 701.10(b)).</summary>
    public static Panel Cylinder(Length height, Length circumference, RulesOf rules) =>
        new(Part(Area.OfRectangle(height, circumference), "display-panel.cylinder-share", rules), null, null);

    /// <summary>
    /// 40 percent of the whole surface of a container of another shape (21 CFR 701.10(c)), tops, bottoms, flanges,
    /// shoulders and necks left out.
    /// </summary>
    public static Panel OtherShape(Area surface, RulesOf rules) => new(Part(surface, "display-panel.other-share", rules), null, null);

    /// <summary>Reads a rectangular panel, width first; one unit at the end holds for both.</summary>
    public static Parsed<Panel> Parse(string text)
    {
        var match = Shape().Match(text.Trim());
        if (!match.Success)
            return Parsed<Panel>.Refused("package.not-a-panel-size", ("text", text.Trim()));
        var unit = match.Groups["unit"].Value;
        var width = Side(match.Groups["width"].Value, match.Groups["first"].Success ? match.Groups["first"].Value : unit);
        var height = Side(match.Groups["height"].Value, unit);
        return width is { Millimetres: > 0 } w && height is { Millimetres: > 0 } h
            ? Parsed<Panel>.Of(Rectangle(w, h))
            : Parsed<Panel>.Refused("package.panel-side", ("text", text.Trim()));
    }

    private static Area Part(Area whole, string figure, RulesOf rules) =>
        Area.FromSquareMillimetres(whole.SquareMillimetres * rules.Figure(figure).Figure / 100m);

    private static Length? Side(string figure, string unit)
    {
        var perUnit = unit.ToLowerInvariant() switch { "mm" => 1m, "cm" => 10m, _ => Length.MillimetresPerInch };
        return PlainFigure.Read(figure) is { } value
            && value <= LongestMillimetres / perUnit
            ? Length.FromMillimetres(value * perUnit)
            : null;
    }

    [GeneratedRegex("""^(?<width>[0-9]*\.?[0-9]+)\s*(?<first>mm|cm|inches|inch|in|")?\s*(?:x|×|by)\s*(?<height>[0-9]*\.?[0-9]+)\s*(?<unit>mm|cm|inches|inch|in|")$""", RegexOptions.IgnoreCase)]
    private static partial Regex Shape();
}
