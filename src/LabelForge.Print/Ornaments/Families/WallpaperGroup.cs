namespace LabelForge.Print.Ornaments.Families;

/// <summary>A move of the lattice: x' = Axx x + Axy y + Tx, and so for y, in shares of the cell.</summary>
internal readonly record struct LatticeMove(int Xx, int Xy, int Yx, int Yy, double Tx, double Ty)
{
    public Spot Of(Spot p) => new(Xx * p.X + Xy * p.Y + Tx, Yx * p.X + Yy * p.Y + Ty);
}

/// <summary>
/// One of the seventeen plane groups: its general position as the International Tables for Crystallography, volume A,
/// part 6, list it (Fedorov 1891; Polya 1924).
/// </summary>
/// <param name="Name">The short symbol.</param>
/// <param name="Hexagonal">Whether the cell's sides stand at 120 degrees; else they stand at right angles (p1 and p2 too, here).</param>
/// <param name="Moves">The moves of the general position.</param>
internal sealed record WallpaperGroup(string Name, bool Hexagonal, ImmutableArray<LatticeMove> Moves)
{
    /// <summary>All seventeen.</summary>
    public static ImmutableArray<WallpaperGroup> All { get; } =
    [
        Of("p1", "x,y"),
        Of("p2", "x,y -x,-y"),
        Of("pm", "x,y -x,y"),
        Of("pg", "x,y -x,y+h"),
        Of("cm", "x,y -x,y x+h,y+h -x+h,y+h"),
        Of("p2mm", "x,y -x,-y -x,y x,-y"),
        Of("p2mg", "x,y -x,-y -x+h,y x+h,-y"),
        Of("p2gg", "x,y -x,-y -x+h,y+h x+h,-y+h"),
        Of("c2mm", "x,y -x,-y -x,y x,-y x+h,y+h -x+h,-y+h -x+h,y+h x+h,-y+h"),
        Of("p4", "x,y -x,-y -y,x y,-x"),
        Of("p4mm", "x,y -x,-y -y,x y,-x -x,y x,-y y,x -y,-x"),
        Of("p4gm", "x,y -x,-y -y,x y,-x -x+h,y+h x+h,-y+h y+h,x+h -y+h,-x+h"),
        Of("p3", "x,y -y,x-y y-x,-x"),
        Of("p3m1", "x,y -y,x-y y-x,-x -y,-x y-x,y x,x-y"),
        Of("p31m", "x,y -y,x-y y-x,-x y,x x-y,-y -x,y-x"),
        Of("p6", "x,y -y,x-y y-x,-x -x,-y y,y-x x-y,x"),
        Of("p6mm", "x,y -y,x-y y-x,-x -x,-y y,y-x x-y,x -y,-x y-x,y x,x-y y,x x-y,-y -x,y-x"),
    ];

    private static WallpaperGroup Of(string name, string moves) =>
        new(name, name.StartsWith("p3", StringComparison.Ordinal) || name.StartsWith("p6", StringComparison.Ordinal),
            [.. moves.Split(' ').Select(Move)]);

    private static LatticeMove Move(string text)
    {
        var (x, y) = (Row(text.Split(',')[0]), Row(text.Split(',')[1]));
        return new LatticeMove(x.X, x.Y, y.X, y.Y, x.T, y.T);
    }

    private static (int X, int Y, double T) Row(string text)
    {
        var (x, y, t, sign) = (0, 0, 0.0, 1);
        foreach (var c in text)
        {
            if (c == '-')
                sign = -1;
            else if (c == 'x')
                x += sign;
            else if (c == 'y')
                y += sign;
            else if (c == 'h')
                t = 0.5;
            if (c != '-')
                sign = 1;
        }
        return (x, y, t);
    }
}
