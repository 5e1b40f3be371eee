namespace LabelForge.Composition.Asking;

/// <summary>
/// Compositions drawn at random from a set by hit and run: from one composition of the set to the next along a line that moves
/// some share from one constituent to another, to a point drawn evenly from what the set holds of the line.
/// </summary>
internal static class Walk
{
    /// <summary>A composition some steps away.</summary>
    /// <param name="start">A composition in it.</param>
    /// <param name="random">Where chance comes from; seeded, so that the same question is asked each time.</param>
    /// <param name="steps">How many lines to walk along.</param>
    public static double[] From(Polytope set, double[] start, Random random, int steps)
    {
        double[] at = [.. start];
        if (at.Length < 2)
            return at;
        var (before, after) = (Neighbours(set, -1), Neighbours(set, 1));
        for (var step = 0; step < steps; step++)
        {
            var to = random.Next(at.Length);
            var from = random.Next(at.Length - 1);
            from += from >= to ? 1 : 0;
            var (least, most) = (-Room(to, from, false), Room(to, from, true));
            if (most <= least)
                continue;
            var moved = least + random.NextDouble() * (most - least);
            (at[to], at[from]) = (at[to] + moved, at[from] - moved);
        }
        return at;

        // How much can be moved to one from another (or, the other way, back), by both their bounds and their neighbours.
        double Room(int to, int from, bool forward)
        {
            var (up, down) = forward ? (to, from) : (from, to);
            var room = Math.Min((double)set.GreatestShares[up] - at[up], at[down] - (double)set.LeastShares[down]);
            if (before[up] >= 0)
                room = Math.Min(room, before[up] == down ? (at[down] - at[up]) / 2 : at[before[up]] - at[up]);
            if (after[down] >= 0 && after[down] != up)
                room = Math.Min(room, at[down] - at[after[down]]);
            return Math.Max(0, room);
        }
    }

    private static int[] Neighbours(Polytope set, int along)
    {
        var neighbours = new int[set.LeastShares.Count];
        Array.Fill(neighbours, -1);
        for (var place = 0; place < set.Chain.Count; place++)
        {
            var next = place + along;
            if (next >= 0 && next < set.Chain.Count)
                neighbours[set.Chain[place]] = set.Chain[next];
        }
        return neighbours;
    }
}
