namespace LabelForge.Print.Ornaments.Families;

/// <summary>Tiles that turn, stars and plaits: patterns on a lattice.</summary>
internal static class Tilings
{
    /// <summary>Quarter circles in tiles turned by chance: Truchet, "Memoire sur les
    /// combinaisons" (1704); Smith, "The tiling patterns of Sebastien Truchet" (1987).</summary>
    public static void Turns(OrnamentField f, OrnamentPen pen)
    {
        var a = 3.5 * f.Size;
        for (var row = 0; row * a < f.Height; row++)
        {
            for (var column = 0; column * a < f.Width; column++)
            {
                var (x, y, turned) = (column * a, row * a, f.Chance.Happens(0.5));
                var (p, q) = turned ? (new Spot(x, y), new Spot(x + a, y + a)) : (new Spot(x + a, y), new Spot(x, y + a));
                foreach (var (corner, opposite) in new[] { (p, q), (q, p) })
                {
                    var way = (opposite - corner).Unit;
                    var middle = Math.Atan2(way.Y, way.X);
                    Spot On(double t, double r) => corner + Spot.At(middle + (t - 0.5) * Math.PI / 2, r);
                    pen.Line(OrnamentInk.First, a * 0.26 * f.Weight, Arc(On(0, a / 2), On(1, a / 2), a / 2));
                    pen.Line(OrnamentInk.Ground, a * 0.05, Arc(On(0, a / 2), On(1, a / 2), a / 2));
                }
                if (f.Chance.Happens(0.2))
                    pen.Dot(OrnamentInk.Second, new Spot(x + a / 2, y + a / 2), a * 0.09);
            }
        }
    }

    /// <summary>
    /// Stars and the polygons between them on the tiling of squares and octagons: from the middle of each edge two rays at one
    /// angle, as Hankin drew Islamic patterns ("The drawing of geometric patterns in Saracenic
    /// art", 1925; Kaplan, "Islamic star patterns from polygons in contact", 2005).
    /// </summary>
    public static void Stars(OrnamentField f, OrnamentPen pen)
    {
        var edge = 3.3 * f.Size;
        var (cell, angle) = (edge * (1 + Math.Sqrt(2)), f.Chance.Between(0.98, 1.16));
        for (var row = -1; row * cell < f.Height + cell; row++)
        {
            for (var column = -1; column * cell < f.Width + cell; column++)
            {
                var middle = new Spot((column + 0.5) * cell, (row + 0.5) * cell);
                Star(pen, middle, 8, cell / 2, Math.PI / 8, angle, f.Weight, OrnamentInk.First);
                Star(pen, middle + new Spot(cell / 2, cell / 2), 4, edge / 2, 0, angle, f.Weight, OrnamentInk.Second);
            }
        }
    }

    // The rays from neighbouring edges meet; their meeting points and the middles of the edges make the star's outline.
    private static void Star(OrnamentPen pen, Spot middle, int sides, double apothem, double turn, double angle, double weight,
        OrnamentInk ink)
    {
        var outline = new List<Spot>();
        var inner = new List<Spot>();
        for (var i = 0; i < sides; i++)
        {
            var at = middle + Spot.At(turn + Math.PI / sides + i * 2 * Math.PI / sides - Math.PI / 8 * (sides == 8 ? 2 : 0), apothem);
            outline.Add(at);
            var half = Math.PI / sides;
            // In the triangle of middle, edge's middle and meeting point the angles are half, pi/2 - angle, and what is left.
            var reach = apothem * Math.Sin(Math.PI / 2 - (Math.PI / 2 - angle)) / Math.Sin(Math.PI - half - angle);
            reach = sides == 8 ? reach * 0.86 : reach * 0.9;
            var meeting = middle + Spot.At((at - middle).Angle + half, reach);
            outline.Add(meeting);
            inner.Add(meeting);
        }
        if (sides == 4)
        {
            pen.Fill(ink, Outlines.Polyline([.. outline.Select(p => middle + (p - middle) * 0.8)], closed: true));
            return;
        }
        pen.Line(ink, 0.3 * weight * Math.Sqrt(apothem / 4), Outlines.Polyline(outline, closed: true));
        pen.Fill(ink, Outlines.Polyline([.. outline.Select((p, i) => middle + (p - middle) * (i % 2 == 0 ? 0.62 : 0.52))], closed: true));
        pen.Dot(OrnamentInk.Ground, middle, apothem * 0.2);
        pen.Dot(OrnamentInk.Second, middle, apothem * 0.12);
    }

    /// <summary>A plait: two families of straps that pass over and under by turns (an alternating link; Tait, "On knots", 1877).</summary>
    public static void Plait(OrnamentField f, OrnamentPen pen)
    {
        var a = 2.5 * f.Size;
        var strap = a * 0.34 * f.Weight;
        for (var row = -1; row * a / 2 < f.Height + a; row++)
        {
            for (var column = -1; column * a < f.Width + a; column++)
            {
                // Crossings stand on a lattice of diagonals; at even ones the rising strap is over.
                var at = new Spot(column * a + (row % 2 == 0 ? 0 : a / 2), row * a / 2);
                var rising = row % 2 == 0;
                foreach (var over in new[] { false, true })
                {
                    var up = over == rising;
                    var way = new Spot(a / 2, up ? -a / 2 : a / 2) * (over ? 0.5 : 0.501);
                    var bend = way.Left.Unit * (a * 0.1 * (up ? 1 : -1));
                    var line = Outlines.Smooth([at - way, at - way * 0.5 + bend * 0.4, at, at + way * 0.5 - bend * 0.4, at + way]);
                    var ink = up ? OrnamentInk.First : OrnamentInk.Second;
                    if (over)
                        pen.Line(OrnamentInk.Ground, strap * 1.75, Outlines.Polyline([at - way * 0.66, at + way * 0.66]));
                    pen.Line(ink, strap, line);
                }
            }
        }
    }

    /// <summary>Scales: half discs in rows, each row half a scale on, with rings inside.</summary>
    public static void Scales(OrnamentField f, OrnamentPen pen)
    {
        var r = 2.5 * f.Size;
        for (var row = 0; row * r * 0.62 < f.Height + 2 * r; row++)
        {
            for (var column = -1; column * 2 * r < f.Width + 2 * r; column++)
            {
                var at = new Spot(column * 2 * r + (row % 2 == 0 ? 0 : r), row * r * 0.62);
                pen.Fill(OrnamentInk.Ground, Outlines.Circle(at, r));
                pen.Line(OrnamentInk.First, 0.2 * f.Weight * Math.Sqrt(f.Size), Outlines.Circle(at, r * 0.96));
                pen.Line(OrnamentInk.First, 0.16 * f.Weight * Math.Sqrt(f.Size), Outlines.Circle(at, r * 0.7));
                pen.Line(OrnamentInk.Second, 0.2 * f.Weight * Math.Sqrt(f.Size), Outlines.Circle(at, r * 0.44));
                pen.Dot(OrnamentInk.First, at, r * 0.2);
            }
        }
    }

    private static string Arc(Spot from, Spot to, double r) =>
        $"M{Outlines.Of(from)}A{Outlines.Number(r)} {Outlines.Number(r)} 0 0 1 {Outlines.Of(to)}";
}
