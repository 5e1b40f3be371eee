namespace LabelForge.Print.Ornaments.Families;

/// <summary>A tile: a leaf, a dot and a ring under one of the seventeen plane groups; the seed
/// chooses the group and where the motif stands.</summary>
internal static class Wallpaper
{
    // Groups of few moves would leave the motif lonely, so the seed chooses among those of four or more.
    private static readonly WallpaperGroup[] Rich = [.. WallpaperGroup.All.Where(g => g.Moves.Length >= 4)];

    public static void Draw(OrnamentField f, OrnamentPen pen) => Draw(f, pen, Rich[f.Chance.Below(Rich.Length)]);

    public static void Draw(OrnamentField f, OrnamentPen pen, WallpaperGroup group)
    {
        var cell = (group.Moves.Length >= 6 ? 8.6 : 6.6) * f.Size;
        var (a, b) = (new Spot(cell, 0), group.Hexagonal ? Spot.At(2 * Math.PI / 3, cell) : new Spot(0, cell));
        Spot Placed(Spot p) => a * p.X + b * p.Y;
        var motif = Motif(f.Chance, group.Hexagonal);
        for (var row = -1; row * b.Y < f.Height + cell; row++)
        {
            for (var column = -1; column * cell + row * b.X < f.Width + cell; column++)
            {
                if (column * cell + row * b.X < -2 * cell)
                    continue;
                foreach (var move in group.Moves)
                {
                    foreach (var part in motif)
                    {
                        // A leaf is placed by its foot and its tip, so that any move keeps its shape in a square or hexagonal lattice.
                        var (foot, tip) = (Placed(move.Of(part.Foot) + new Spot(column, row)),
                            Placed(move.Of(part.Tip) + new Spot(column, row)));
                        var along = tip - foot;
                        if (part.Round)
                            pen.Dot(part.Ink, foot, along.Length * Math.Sqrt(f.Weight));
                        else
                            pen.Fill(part.Ink,
                                Outlines.Leaf(foot, along.Angle, along.Length, along.Length * part.Wide * f.Weight, part.Fullness));
                    }
                }
            }
        }
        // The points of highest turning get a ring each, which every group here keeps.
        for (var row = -1; row * b.Y < f.Height + cell; row++)
            for (var column = -2; column * cell + row * b.X < f.Width + cell; column++)
                pen.Line(OrnamentInk.Second, 0.22 * f.Size * f.Weight, Outlines.Circle(Placed(new Spot(column, row)), cell * 0.055));
    }

    private static List<(Spot Foot, Spot Tip, double Wide, double Fullness, OrnamentInk Ink, bool Round)> Motif(SeededNumbers chance,
        bool hexagonal)
    {
        var turn = (hexagonal ? Math.PI / 6 : Math.PI / 8) * chance.Between(0.3, 1.7);
        Spot At(double angle, double r) => new(r * Math.Cos(angle), r * Math.Sin(angle));
        var sprout = chance.Between(0.5, 0.75);
        return
        [
            (At(turn, 0.12), At(turn, chance.Between(0.4, 0.48)), chance.Between(0.4, 0.52), 0.55, OrnamentInk.First, false),
            (At(turn + 0.3, 0.16), At(turn + sprout, 0.34), 0.5, 0.5, OrnamentInk.Second, false),
            (At(turn + sprout, 0.4), At(turn + sprout - 0.25, 0.56), 0.5, 0.5, OrnamentInk.First, false),
            (At(turn - 0.36, 0.36), At(turn - 0.36, 0.395), 1, 0.5, OrnamentInk.Second, true),
            (At(turn - 0.3, 0.52), At(turn - 0.3, 0.548), 1, 0.5, OrnamentInk.First, true),
        ];
    }
}
