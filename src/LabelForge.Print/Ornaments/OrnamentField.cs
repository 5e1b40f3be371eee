namespace LabelForge.Print.Ornaments;

/// <summary>What a family draws into.</summary>
/// <param name="Width">Millimetres.</param>
/// <param name="Height">Millimetres.</param>
/// <param name="Density">How close its figures stand: 1 as the family is meant, 2 twice as close.</param>
/// <param name="Weight">How heavy its lines are: 1 as the family is meant.</param>
/// <param name="Chance">Where chance comes from.</param>
internal sealed record OrnamentField(double Width, double Height, double Density, double Weight, SeededNumbers Chance)
{
    /// <summary>The golden angle, 137.508 degrees, by which seeds and leaves follow one another.</summary>
    public const double GoldenAngle = 2.399963229728653;

    /// <summary>Whether what turns is to turn about the middle all the way round.</summary>
    public bool About { get; init; }

    /// <summary>How large figures are; strips lower than 20 mm get smaller ones.</summary>
    public double Size => Math.Clamp(Math.Min(Width, Height) / 20, 0.55, 1) / Density;

    public Spot Middle => new(Width / 2, Height / 2);

    public bool Holds(Spot p, double margin = 0) => p.X >= -margin && p.Y >= -margin && p.X <= Width + margin && p.Y <= Height + margin;
}
