using LabelForge.Quantities;

namespace LabelForge.Print.Designs;

/// <summary>How a flat label comes to lie on its package.</summary>
public enum FoldManner
{
    /// <summary>Round a bar: front, edge, back, edge, and a lap.</summary>
    Band,

    /// <summary>Over a top edge, so that half of it stands behind.</summary>
    OverTop,

    /// <summary>Round a tube, a tin, a jar or a bottle, all the way or more than half of it.</summary>
    Round,
}

/// <summary>A part of the flat label that is seen from one side, in millimetres from the label's top left corner.</summary>
/// <param name="X">Its left edge.</param>
/// <param name="Y">Its top edge.</param>
/// <param name="Width">Its width.</param>
/// <param name="Height">Its height.</param>
/// <param name="Turned">Whether it is printed upside down, and so stands upright once folded.</param>
public sealed record FoldedFace(decimal X, decimal Y, decimal Width, decimal Height, bool Turned = false);

/// <summary>A label on its package, as it is seen from the front and from behind.</summary>
/// <param name="Manner">How it is folded.</param>
/// <param name="Front">What is seen from the front.</param>
/// <param name="Back">What is seen from behind.</param>
/// <param name="BesideFront">What is seen at the right of the front; null where nothing turns there.</param>
/// <param name="BesideBack">What is seen at the right of the back.</param>
public sealed record FoldedLabel(FoldManner Manner, FoldedFace Front, FoldedFace Back, FoldedFace? BesideFront = null,
    FoldedFace? BesideBack = null)
{
    /// <summary>The label folded; null for one that lies flat on one face.</summary>
    public static FoldedLabel? Of(LabelDesign design)
    {
        if (design.Round)
            return null;
        var (wide, high) = (design.Width.Millimetres, design.Height.Millimetres);
        if (design.Panels.FirstOrDefault(p => p.Turned) is not null && design.Panels.FirstOrDefault(p => p.Principal) is { Turned: false })
            return new(FoldManner.OverTop, new(0, high / 2, wide, high / 2), new(0, 0, wide, high / 2, Turned: true));
        if (design.Package is not { } package)
            return null;
        if (package.Shape == PackageShape.Box
            && package.Sides is var bar
            && 2 * (bar["height"].Millimetres + bar["depth"].Millimetres) is var all && wide >= all)
        {
            var (height, depth) = (bar["height"].Millimetres, bar["depth"].Millimetres);
            return new(FoldManner.Band, new(depth, 0, height, high), new(2 * depth + height, 0, height, high),
                new(depth + height, 0, depth, high), new(0, 0, depth, high));
        }
        // Half of the round is seen from either side; what is printed first stands in the middle of the front.
        return package.Sides.GetValueOrDefault("circumference") is { Millimetres: > 0 and var round } && wide > round / 2
            ? new(FoldManner.Round, Half(design, round), Rest(design, round))
            : null;
    }

    private static FoldedFace Half(LabelDesign design, decimal round)
    {
        var front = design.Panels.FirstOrDefault(p => p.Principal) ?? design.Panels[0];
        var left = front.X.Millimetres + front.Width.Millimetres / 2 - round / 4;
        return new(left, 0, round / 2, design.Height.Millimetres);
    }

    private static FoldedFace Rest(LabelDesign design, decimal round)
    {
        var half = Half(design, round);
        return half with { X = half.X + round / 2 };
    }
}
