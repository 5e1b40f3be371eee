namespace LabelForge.Print.Ornaments.Families;

/// <summary>Lines and areas of smooth fields: hills, tide, moss, smoke, grain.</summary>
internal static class Fields
{
    /// <summary>Contour lines of two octaves of gradient noise, every fourth heavy.</summary>
    public static void Hills(OrnamentField f, OrnamentPen pen)
    {
        var s = Math.Max(0.7, f.Size);
        var noise = new Noise(f.Chance);
        const int Levels = 17;
        for (var i = 0; i < Levels; i++)
        {
            var heavy = i % 4 == 0;
            foreach (var (points, closed) in LevelLines.Of((x, y) => noise.Rough(x / (11 * s), y / (9.4 * s)), f.Width, f.Height, 0.5,
                -0.72 + 1.44 * i / (Levels - 1)))
                pen.Line(heavy ? OrnamentInk.Second : OrnamentInk.First, (heavy ? 0.3 : 0.19) * f.Weight,
                    Outlines.Smooth(Thinned(points), closed));
        }
    }

    /// <summary>
    /// Lines moved and thickened by three circular waves: superposition, as Young showed it ("Experiments and calculations
    /// relative to physical optics", 1804).
    /// </summary>
    public static void Tide(OrnamentField f, OrnamentPen pen)
    {
        var s = Math.Max(0.62, f.Size);
        var waves = Enumerable.Range(0, 3).Select(i => (
            From: new Spot(f.Chance.Between(-0.6, 1.6) * f.Width, f.Height + f.Chance.Between(0.4, 2.4) * Math.Max(f.Height, 20)),
            Long: f.Chance.Between(6, 9.5) * s, Phase: f.Chance.Unit() * 6.28)).ToArray();
        double Height(double x, double y) => waves.Sum(w => Math.Sin(2 * Math.PI * new Spot(x, y).To(w.From) / w.Long + w.Phase)) / 3;
        var apart = 1.22 * s;
        var row = 0;
        for (var y = -apart; y < f.Height + 2 * apart; y += apart, row++)
        {
            var points = Outlines.Points((int)(f.Width / 1.1) + 6, t => new Spot(t * (f.Width + 4) - 2, 0))
                .Select(p => p with { Y = y + apart * 1.5 * Height(p.X, y) }).ToList();
            var line = y;
            pen.Fill(row % 5 == 2 ? OrnamentInk.Second : OrnamentInk.First,
                Outlines.Tapered(points,
                    t => (0.15 + 0.42 * Math.Pow(0.5 + 0.5 * Height(t * (f.Width + 4) - 2, line), 2)) * f.Weight * Math.Sqrt(s)));
        }
    }

    /// <summary>
    /// A labyrinth: what lies above the level of many waves of one length, their ways and phases by chance: Cahn, "Phase separation
    /// by spinodal decomposition in isotropic systems", Journal of Chemical Physics 42 (1965).
    /// </summary>
    public static void Moss(OrnamentField f, OrnamentPen pen)
    {
        var s = Math.Max(0.66, f.Size);
        var waves = Enumerable.Range(0, 26)
            .Select(_ => (Way: Spot.At(f.Chance.Unit() * 2 * Math.PI, 2 * Math.PI / (2.7 * s)), Phase: f.Chance.Unit() * 6.28)).ToArray();
        double Height(double x, double y) => waves.Sum(w => Math.Cos(w.Way.X * x + w.Way.Y * y + w.Phase)) / Math.Sqrt(13);
        var outline = string.Concat(LevelLines.Of(Height, f.Width, f.Height, 0.3 * s, 0.16 / f.Weight, closed: true)
            .Select(l => Outlines.Smooth(Thinned(l.Points), closed: true)));
        if (outline.Length > 0)
            pen.Fill(OrnamentInk.First, outline);
        // A bead in the heart of the widest parts of the gaps.
        foreach (var p in PoissonDiscs.In(f, 2.4 * s).Where(p => Height(p.X, p.Y) < -1.75))
            pen.Dot(OrnamentInk.Second, p, 0.34 * s);
    }

    /// <summary>
    /// Rising lines that keep apart in the curl of noise: Jobard, Lefer, "Creating evenly-spaced streamlines of arbitrary density" (1997);
    /// Bridson, Hourihan, Nordenstam, "Curl-noise for procedural fluid flow" (2007).
    /// </summary>
    public static void Smoke(OrnamentField f, OrnamentPen pen)
    {
        var s = Math.Max(0.7, f.Size);
        var (noise, apart) = (new Noise(f.Chance), 1.6 * s);
        Spot Way(Spot p)
        {
            double N(double x, double y) => noise.Rough(x / (13 * s), y / (17 * s));
            const double D = 0.05;
            var curl = new Spot((N(p.X, p.Y + D) - N(p.X, p.Y - D)) / (2 * D), -(N(p.X + D, p.Y) - N(p.X - D, p.Y)) / (2 * D)) * (13 * s);
            return (curl * 0.75 + new Spot(0, -0.62)).Unit;
        }
        var taken = new Dictionary<(int, int), List<Spot>>();
        bool Free(Spot p, double reach)
        {
            var (cx, cy) = ((int)Math.Floor(p.X / apart), (int)Math.Floor(p.Y / apart));
            for (var i = -1; i <= 1; i++)
                for (var j = -1; j <= 1; j++)
                    if (taken.TryGetValue((cx + i, cy + j), out var near) && near.Any(q => q.To(p) < reach))
                        return false;
            return true;
        }
        var index = 0;
        foreach (var seed in PoissonDiscs.In(f, apart * 0.8, 1).OrderByDescending(p => p.Y))
        {
            if (!Free(seed, apart))
                continue;
            var line = new List<Spot> { seed };
            foreach (var direction in new[] { 1, -1 })
            {
                var p = seed;
                for (var i = 0; i < 220 && f.Holds(p, 2); i++)
                {
                    p += Way(p) * (0.4 * s * direction);
                    if (!Free(p, apart * 0.62))
                        break;
                    if (direction > 0) line.Add(p); else line.Insert(0, p);
                }
            }
            if (line.Count < 9)
                continue;
            foreach (var p in line)
                (taken.TryGetValue(((int)Math.Floor(p.X / apart), (int)Math.Floor(p.Y / apart)), out var cell) ? cell
                    : taken[((int)Math.Floor(p.X / apart), (int)Math.Floor(p.Y / apart))] = []).Add(p);
            var thick = f.Chance.Between(0.22, 0.62) * s * f.Weight;
            pen.Fill(index++ % 5 == 3 ? OrnamentInk.Second : OrnamentInk.First,
                Outlines.Tapered(Thinned(line), t => 0.1 + thick * Math.Pow(Math.Sin(Math.PI * (0.04 + 0.92 * t)), 0.7)));
        }
    }

    /// <summary>Dots no nearer than a distance, large and small by noise: Bridson (2007).</summary>
    public static void Grain(OrnamentField f, OrnamentPen pen)
    {
        var s = Math.Max(0.72, f.Size);
        var noise = new Noise(f.Chance);
        foreach (var p in PoissonDiscs.In(f, 0.72 * s, 0.4))
        {
            var tone = 0.5 + 0.62 * noise.Rough(p.X / (10 * s), p.Y / (10 * s)) + 0.3 * (p.Y / f.Height - 0.5);
            if (tone > 0.12)
                pen.Dot(tone > 0.86 ? OrnamentInk.Second : OrnamentInk.First, p,
                    Math.Clamp(0.05 + 0.3 * tone, 0.07, 0.33) * s * Math.Sqrt(f.Weight));
        }
    }

    /// <summary>Ridges one behind the other, their outlines by midpoint displacement: Fournier,
    /// Fussell, Carpenter, "Computer rendering of stochastic models" (1982).</summary>
    public static void Ridges(OrnamentField f, OrnamentPen pen)
    {
        var rows = Math.Clamp((int)(f.Height / 3.6 * f.Density), 3, 7);
        for (var row = 0; row < rows; row++)
        {
            var level = f.Height * (0.24 + 0.76 * row / rows);
            var tops = new List<double> { f.Chance.Between(-1, 1), f.Chance.Between(-1, 1), f.Chance.Between(-1, 1) };
            for (double rough = 0.95; tops.Count < 129; rough *= 0.52)
                tops = [.. tops.Zip(tops.Skip(1))
                    .SelectMany(p => new[] { p.First, (p.First + p.Second) / 2 + f.Chance.Between(-rough, rough) }), tops[^1]];
            var high = f.Height / rows * 0.85;
            var line = tops.Select((t, i) => new Spot(i * f.Width / (tops.Count - 1.0), level - t * high)).ToList();
            var area = Outlines.Polyline([.. line, new(f.Width + 1, f.Height + 1), new(-1, f.Height + 1)], closed: true);
            pen.Fill(OrnamentInk.Ground, area);
            // Shading by lines that follow the slope down, closer in the nearer ridges.
            pen.Line(row % 3 == 1 ? OrnamentInk.Second : OrnamentInk.First, 0.26 * f.Weight, Outlines.Polyline(line));
            for (var i = 2; i < line.Count - 2; i += 2)
            {
                var fall = (f.Height / rows) * f.Chance.Between(0.15, 0.95) * (line[i - 2].Y < line[i + 2].Y ? 1 : 0.28);
                pen.Line(row % 3 == 1 ? OrnamentInk.Second : OrnamentInk.First, 0.12 * f.Weight,
                    Outlines.Polyline([line[i], line[i] + new Spot(fall * 0.35, fall)]));
            }
        }
    }

    // Every other point is enough for a smooth line, and half as much to store.
    private static List<Spot> Thinned(List<Spot> points) =>
        points.Count < 9 ? points : [.. points.Where((_, i) => i % 2 == 0 || i == points.Count - 1)];
}
