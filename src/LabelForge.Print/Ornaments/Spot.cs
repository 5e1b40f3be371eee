namespace LabelForge.Print.Ornaments;

/// <summary>A place in a drawing, in millimetres from its top left corner, down; or a way from one place to another.</summary>
internal readonly record struct Spot(double X, double Y)
{
    public double Length => Math.Sqrt(X * X + Y * Y);

    public Spot Unit => Length is > 1e-12 and var l ? new(X / l, Y / l) : default;

    /// <summary>A quarter turn to the left as it is seen, y running down.</summary>
    public Spot Left => new(Y, -X);

    public double Angle => Math.Atan2(Y, X);

    public static Spot At(double angle, double length) => new(length * Math.Cos(angle), length * Math.Sin(angle));

    public static Spot operator +(Spot a, Spot b) => new(a.X + b.X, a.Y + b.Y);

    public static Spot operator -(Spot a, Spot b) => new(a.X - b.X, a.Y - b.Y);

    public static Spot operator *(Spot a, double k) => new(a.X * k, a.Y * k);

    public double To(Spot other) => (this - other).Length;

    public static Spot Mix(Spot a, Spot b, double t) => a + (b - a) * t;
}
