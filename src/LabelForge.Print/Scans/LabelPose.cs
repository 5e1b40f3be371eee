namespace LabelForge.Print.Scans;

/// <summary>Where a label lies in a picture: x' = A x + B y + C, y' = D x + E y + F, all in millimetres of paper.</summary>
internal readonly record struct LabelPose(double A, double B, double C, double D, double E, double F)
{
    /// <summary>How wide a millimetre came out.</summary>
    public double WideX => Math.Sqrt(A * A + D * D);

    /// <summary>How high a millimetre came out.</summary>
    public double HighY => Math.Sqrt(B * B + E * E);

    /// <summary>By how much it lies turned, clockwise.</summary>
    public double TurnDegrees => Math.Atan2(D - B, A + E) * 180 / Math.PI;

    /// <summary>The same place, the label smaller or larger about its corner.</summary>
    public LabelPose Scaled(double factor) => this with { A = A * factor, B = B * factor, D = D * factor, E = E * factor };

    /// <summary>A label that lies turned, its middle at a point.</summary>
    public static LabelPose Turned(double degrees, double width, double height, double middleX, double middleY)
    {
        var (sin, cos) = Math.SinCos(degrees * Math.PI / 180);
        return new(cos, -sin, middleX - cos * width / 2 + sin * height / 2, sin, cos, middleY - sin * width / 2 - cos * height / 2);
    }

    /// <summary>Where a point of the label lies.</summary>
    public (double X, double Y) Apply(double x, double y) => (A * x + B * y + C, D * x + E * y + F);
}
