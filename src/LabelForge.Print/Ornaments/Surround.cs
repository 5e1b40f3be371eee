namespace LabelForge.Print.Ornaments;

/// <summary>
/// An ornament round something that is set into it. What stands, stands all round on that something's edge and grows outwards: behind
/// it, only stems without heads would be seen.
/// </summary>
internal static class Surround
{
    private const double LeastStrip = 2.8;

    /// <summary>Draws it.</summary>
    /// <param name="width">Of the whole box, in millimetres.</param>
    /// <param name="height">Of the whole box.</param>
    /// <param name="inner">What is set into it: its left, top, width and height.</param>
    /// <param name="disc">Whether that is a disc.</param>
    /// <param name="choice">Seed, density and weight.</param>
    public static OrnamentDrawing Draw(OrnamentFamily family, double width, double height,
        (double X, double Y, double Width, double Height) inner, bool disc, (string Seed, double Density, double Weight) choice)
    {
        if (family.Manner == OrnamentManner.Fills)
            return family.Draw(width, height, choice.Seed, choice.Density, choice.Weight);
        if (family.Manner == OrnamentManner.Turns)
            return Turning(family, width, height, inner, choice);
        return new OrnamentDrawing(width, height,
            disc ? Wreath(family, width, height, inner, choice) : Sides(family, width, height, inner, choice));
    }

    // What turns about a middle turns about the middle of what is set into it.
    private static OrnamentDrawing Turning(OrnamentFamily family, double width, double height,
        (double X, double Y, double Width, double Height) inner, (string Seed, double Density, double Weight) choice)
    {
        var middle = new Spot(inner.X + inner.Width / 2, inner.Y + inner.Height / 2);
        var reach = 2 * Math.Max(Math.Max(middle.X, width - middle.X), Math.Max(middle.Y, height - middle.Y)) * 1.28;
        var drawn = family.Draw(reach, reach, choice.Seed, choice.Density, choice.Weight, about: true);
        return new OrnamentDrawing(width, height, Moved(drawn, 0, middle - new Spot(reach / 2, reach / 2)));
    }

    private static ImmutableArray<OrnamentPath> Wreath(OrnamentFamily family, double width, double height,
        (double X, double Y, double Width, double Height) inner, (string Seed, double Density, double Weight) choice)
    {
        var radius = Math.Min(inner.Width, inner.Height) / 2;
        var depth = Math.Max(3.5, Math.Min(width, height) * 0.62 - radius);
        var edge = new FramePath(inner.X, inner.Y, inner.Width, inner.Height, 0, round: true);
        var count = Math.Max(8, (int)Math.Round((edge.Length + Math.PI * depth) / Math.Max(5, depth * 0.9)));
        var wide = (edge.Length + 2 * Math.PI * depth * 0.35) / count;
        var paths = new List<OrnamentPath>();
        for (var i = 0; i < count; i++)
        {
            // The strip's foot lies on the edge, its top outwards; the edge runs clockwise as it is seen.
            var along = edge.Length * i / count;
            var drawn = family.Draw(wide, depth, $"{choice.Seed}/{i}", choice.Density, choice.Weight);
            var way = edge.Way(along);
            paths.AddRange(Moved(drawn, way * 180 / Math.PI, edge.At(along, -depth) - Spot.At(way, 1) * (wide / 2)));
        }
        return [.. paths];
    }

    private static ImmutableArray<OrnamentPath> Sides(OrnamentFamily family, double width, double height,
        (double X, double Y, double Width, double Height) inner, (string Seed, double Density, double Weight) choice)
    {
        var (right, foot) = (inner.X + inner.Width, inner.Y + inner.Height);
        OrnamentDrawing Strip(double wide, double high, string side) =>
        family.Draw(Math.Max(1, wide), Math.Max(1, high * 1.06), $"{choice.Seed}/{side}", choice.Density, choice.Weight);
        // What stands in a strip so low is a row of heads without stems.
        ImmutableArray<OrnamentPath> Grown(double deep, Func<ImmutableArray<OrnamentPath>> strip) => deep < LeastStrip ? [] : strip();
        return
        [
            .. Grown(inner.X, () => Moved(Strip(inner.Height, inner.X, "left"), -90, new Spot(-0.06 * inner.X, foot))),
            .. Grown(width - right,
                () => Moved(Strip(inner.Height, width - right, "right"), 90, new Spot(width + 0.06 * (width - right), inner.Y))),
            .. Grown(height - foot,
                () => Moved(Strip(width, height - foot, "foot"), 180, new Spot(width, height + 0.06 * (height - foot)))),
            .. Grown(inner.Y, () => Moved(Strip(width, inner.Y, "top"), 0, new Spot(0, -0.06 * inner.Y))),
        ];
    }

    private static ImmutableArray<OrnamentPath> Moved(OrnamentDrawing drawing, double degrees, Spot to) =>
        [.. drawing.Paths.Select(p => p with { Data = PathMove.Of(p.Data, degrees, to) })];
}
