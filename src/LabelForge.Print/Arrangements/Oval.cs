namespace LabelForge.Print.Arrangements;

/// <summary>A circle or an ellipse that words have to stay inside of; lengths in points.</summary>
/// <param name="X">Its middle.</param>
/// <param name="Y">Its middle.</param>
/// <param name="Across">Half its width.</param>
/// <param name="Down">Half its height.</param>
internal readonly record struct Oval(double X, double Y, double Across, double Down)
{
    // Further round, an ellipse falls away from the circle that touches its top.
    private const double FarRound = 0.7;

    // How far the ends of an arc may hang below its middle there.
    private const double LowestEnds = 2.6 * 72 / 25.4;

    /// <summary>The radius of the circle that lies closest to its top, on which words run.</summary>
    public double ArcRadius => Across * Across / Down;

    /// <summary>The middle of that circle.</summary>
    public double ArcY => Y - Down + ArcRadius;

    /// <summary>The longest arc on which words keep to its edge, in radians.</summary>
    public double LongestArc => IsCircle ? Math.Tau : 2 * Math.Asin(Math.Min(1, FarRound * Across / ArcRadius));

    /// <summary>The longest arc that does not come down to what stands close below it on a low oval, in radians.</summary>
    public double LongestLowArc => IsCircle ? Math.Tau : 2 * Math.Acos(1 - LowestEnds / ArcRadius);

    private bool IsCircle => Math.Abs(Across - Down) < 0.5;

    /// <summary>Half its width at a height, so far inside its edge.</summary>
    public double HalfWidthAt(double y, double margin) => Half(Across - margin, Down - margin, y - Y);

    /// <summary>Half its height at a place across, so far inside its edge.</summary>
    public double HalfHeightAt(double x, double margin) => Half(Down - margin, Across - margin, x - X);

    private static double Half(double along, double across, double away) =>
        across <= 0 ? 0 : along * Math.Sqrt(Math.Max(0, 1 - away / across * (away / across)));
}
