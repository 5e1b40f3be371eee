namespace LabelForge.Print.Ornaments;

/// <summary>Lines of equal height of a field, by marching squares: Lorensen, Cline, "Marching
/// cubes", SIGGRAPH 1987, in two dimensions.</summary>
internal sealed class LevelLines
{
    private readonly Dictionary<(int, int, bool), (int, int, bool)> _next = [];
    private readonly double[,] _values;
    private readonly double _grid;
    private readonly double _level;

    private LevelLines(double[,] values, double grid, double level) => (_values, _grid, _level) = (values, grid, level);

    /// <summary>The lines at a level; what is higher lies to one side of all of them alike.</summary>
    /// <param name="height">The field.</param>
    /// <param name="width">The box's width.</param>
    /// <param name="tall">The box's height.</param>
    /// <param name="grid">How far apart the field is looked at.</param>
    /// <param name="closed">Whether lines that leave the box are closed round what is higher, outside the box.</param>
    public static List<(List<Spot> Points, bool Closed)> Of(Func<double, double, double> height, double width, double tall, double grid,
        double level, bool closed = false)
    {
        var (columns, rows) = ((int)Math.Ceiling(width / grid) + 5, (int)Math.Ceiling(tall / grid) + 5);
        var values = new double[columns, rows];
        for (var i = 0; i < columns; i++)
            for (var j = 0; j < rows; j++)
                values[i, j] = closed && (i == 0 || j == 0 || i == columns - 1 || j == rows - 1)
                    ? level - 1
                    : height((i - 2) * grid, (j - 2) * grid);
        var lines = new LevelLines(values, grid, level);
        for (var i = 0; i + 1 < columns; i++)
            for (var j = 0; j + 1 < rows; j++)
                lines.March(i, j);
        return lines.Linked();
    }

    private void March(int i, int j)
    {
        var mark = (_values[i, j] > _level ? 1 : 0) | (_values[i + 1, j] > _level ? 2 : 0) | (_values[i + 1, j + 1] > _level ? 4 : 0)
            | (_values[i, j + 1] > _level ? 8 : 0);
        // Edges of a cell: along its top and left are its own (true: across, false: down), the others its neighbours'.
        (int, int, bool) top = (i, j, true), left = (i, j, false), bottom = (i, j + 1, true), right = (i + 1, j, false);
        foreach (var (from, to) in mark switch
        {
            1 => new[] { (left, top) },
            2 => [(top, right)],
            3 => [(left, right)],
            4 => [(right, bottom)],
            5 => [(left, top), (right, bottom)],
            6 => [(top, bottom)],
            7 => [(left, bottom)],
            8 => [(bottom, left)],
            9 => [(bottom, top)],
            10 => [(top, right), (bottom, left)],
            11 => [(bottom, right)],
            12 => [(right, left)],
            13 => [(right, top)],
            14 => [(top, left)],
            _ => [],
        })
            _next[from] = to;
    }

    private Spot Place((int I, int J, bool Across) e)
    {
        var (a, b) = (_values[e.I, e.J], e.Across ? _values[e.I + 1, e.J] : _values[e.I, e.J + 1]);
        var t = Math.Clamp((_level - a) / (b - a), 0.02, 0.98);
        return new Spot((e.I - 2 + (e.Across ? t : 0)) * _grid, (e.J - 2 + (e.Across ? 0 : t)) * _grid);
    }

    private List<(List<Spot>, bool)> Linked()
    {
        var lines = new List<(List<Spot>, bool)>();
        var ends = _next.Values.ToHashSet();
        foreach (var start in _next.Keys.Where(k => !ends.Contains(k)).Concat(_next.Keys).ToList())
        {
            var (points, at) = (new List<Spot>(), start);
            while (_next.Remove(at, out var to))
            {
                points.Add(Place(at));
                at = to;
            }
            if (points.Count == 0)
                continue;
            var round = at == start;
            if (!round)
                points.Add(Place(at));
            if (points.Count > 3)
                lines.Add((points, round));
        }
        return lines;
    }
}
