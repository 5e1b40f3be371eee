namespace LabelForge.Print.Ornaments;

/// <summary>Points no two of which are nearer than a distance, and no gap where one more would go: Bridson, "Fast Poisson disk sampling in
/// arbitrary dimensions", SIGGRAPH 2007.</summary>
internal static class PoissonDiscs
{
    private const int Tries = 24;

    /// <summary>The points in a box that may reach beyond the field by a margin.</summary>
    public static List<Spot> In(OrnamentField field, double distance, double margin = 0)
    {
        var (chance, cell) = (field.Chance, distance / Math.Sqrt(2));
        var (wide, high) = (field.Width + 2 * margin, field.Height + 2 * margin);
        var (columns, rows) = ((int)(wide / cell) + 1, (int)(high / cell) + 1);
        var grid = new int[columns * rows];
        var (all, active) = (new List<Spot>(), new List<int>());
        Add(new Spot(wide * chance.Unit(), high * chance.Unit()));
        while (active.Count > 0)
        {
            var pick = chance.Below(active.Count);
            var from = all[active[pick]];
            var found = false;
            for (var t = 0; t < Tries && !found; t++)
            {
                var p = from + Spot.At(2 * Math.PI * chance.Unit(), distance * Math.Sqrt(1 + 3 * chance.Unit()));
                if (p.X >= 0 && p.Y >= 0 && p.X < wide && p.Y < high && Free(p))
                {
                    Add(p);
                    found = true;
                }
            }
            if (!found)
                active.RemoveAt(pick);
        }
        return [.. all.Select(p => new Spot(p.X - margin, p.Y - margin))];

        void Add(Spot p)
        {
            all.Add(p);
            active.Add(all.Count - 1);
            grid[(int)(p.Y / cell) * columns + (int)(p.X / cell)] = all.Count;
        }

        bool Free(Spot p)
        {
            var (cx, cy) = ((int)(p.X / cell), (int)(p.Y / cell));
            for (var y = Math.Max(0, cy - 2); y <= Math.Min(rows - 1, cy + 2); y++)
                for (var x = Math.Max(0, cx - 2); x <= Math.Min(columns - 1, cx + 2); x++)
                    if (grid[y * columns + x] is > 0 and var i && all[i - 1].To(p) < distance)
                        return false;
            return true;
        }
    }
}
