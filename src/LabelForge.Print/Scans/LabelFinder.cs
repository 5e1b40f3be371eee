using MathNet.Numerics.LinearAlgebra;

namespace LabelForge.Print.Scans;

/// <summary>
/// Finds a label in a scan: first where its picture, made coarse, agrees best with the scan made as coarse, in every turn; then ever
/// finer by least squares over all its points (Lucas, Kanade, "An iterative image registration technique", IJCAI 1981, with the
/// scan's own brightness and contrast fitted along).
/// </summary>
internal static class LabelFinder
{
    // Points of the coarse picture: few enough to try every place.
    private const double CoarsePoints = 700;

    // Where the coarse pictures agree well, so many times the best are looked at more closely.
    private const int Candidates = 6;

    // Printers that fit a page to the paper shrink it; a scale is tried from each of these.
    private static readonly double[] Scales = [1, 0.97, 0.94];

    // How well the pictures must agree at last, as correlation.
    private const double LeastLikeness = 0.6;

    // Beyond this many points to the millimetre the whole label's place is no better known.
    private const double Fine = 6;

    // A picture may be cut close to the label, or a little into it.
    private const int Beyond = 2;

    private static readonly double[] Turns = [0, 90, 180, 270];
    private static readonly double[] Askew = [0, -2, 2];

    /// <summary>Where the label lies; null where nothing in the scan is like it.</summary>
    /// <param name="picture">The scan.</param>
    /// <param name="dotsPerMillimetre">Its resolution.</param>
    /// <param name="drawn">Draws the label, so many points to the millimetre.</param>
    /// <param name="width">The label's width in millimetres.</param>
    public static LabelPose? Find(ScannedPicture picture, double dotsPerMillimetre, Func<double, GreyField> drawn, double width,
        double height)
    {
        var coarse = Math.Min(dotsPerMillimetre, Math.Sqrt(CoarsePoints / (width * height)));
        var whole = (0.0, 0.0, width, height);
        var (first, second) = (Level(coarse), Level(2 * coarse));
        var best = Places(first.Scan, first.Label, width, height).SelectMany(place => Scales.Select(place.Scaled))
            .Select(pose => Refined(second.Scan, second.Label, Refined(first.Scan, first.Label, pose, whole, wholePlane: true), whole,
                wholePlane: true))
            .Select(pose => (Pose: pose, Likeness: Likeness(second.Scan, second.Label, pose))).DefaultIfEmpty().MaxBy(p => p.Likeness);
        var pose = best.Pose;
        for (var per = 4 * coarse; per <= Math.Min(dotsPerMillimetre, 2 * Fine); per *= 2)
        {
            var (scan, label) = Level(Math.Min(per, Fine));
            pose = Refined(scan, label, pose, whole, wholePlane: true);
            best.Likeness = Likeness(scan, label, pose);
        }
        return best.Likeness < LeastLikeness ? null : pose;

        // Softened, so that lines of text find one another from farther away.
        (GreyField Scan, GreyField Label) Level(double per) =>
        (GreyField.Of(picture, per, dotsPerMillimetre).Softened(), drawn(per).Softened());
    }

    /// <summary>A pose made better by the points of a part of the label.</summary>
    /// <param name="label">The label as drawn.</param>
    /// <param name="pose">Where it lies about.</param>
    /// <param name="part">The part: left, top, right, bottom in millimetres.</param>
    /// <param name="wholePlane">Whether it may turn and shear too; else it moves, and stretches along its own sides.</param>
    public static LabelPose Refined(GreyField scan, GreyField label, LabelPose pose,
        (double Left, double Top, double Right, double Bottom) part, bool wholePlane)
    {
        for (var round = 0; round < 14; round++)
        {
            if (Step(scan, label, pose, part, wholePlane) is not { } better)
                return pose;
            var moved = Math.Abs(better.C - pose.C) + Math.Abs(better.F - pose.F)
                + 50 * (Math.Abs(better.A - pose.A) + Math.Abs(better.E - pose.E));
            pose = better;
            if (moved < 0.002)
                break;
        }
        return pose;
    }

    private static LabelPose? Step(GreyField scan, GreyField label, LabelPose pose,
        (double Left, double Top, double Right, double Bottom) part, bool wholePlane)
    {
        var per = label.PerMillimetre;
        var (left, right) = (Math.Max(0, (int)(part.Left * per)), Math.Min(label.Width, (int)Math.Ceiling(part.Right * per)));
        var (top, bottom) = (Math.Max(0, (int)(part.Top * per)), Math.Min(label.Height, (int)Math.Ceiling(part.Bottom * per)));
        var size = wholePlane ? 6 : 4;
        // The last two fit the scan's contrast and brightness.
        var (square, target) = (new double[(size + 2) * (size + 2)], new double[size + 2]);
        var row = new double[size + 2];
        var count = 0;
        var (middleX, middleY) = ((part.Left + part.Right) / 2, (part.Top + part.Bottom) / 2);
        for (var y = top; y < bottom; y++)
        {
            for (var x = left; x < right; x++)
            {
                var (mmX, mmY) = ((x + 0.5) / per, (y + 0.5) / per);
                var (atX, atY) = pose.Apply(mmX, mmY);
                if (scan.At(atX * scan.PerMillimetre, atY * scan.PerMillimetre) is not { } seen)
                    continue;
                var (gx, gy) = (seen.AlongX * scan.PerMillimetre, seen.AlongY * scan.PerMillimetre);
                var (fromX, fromY) = (mmX - middleX, mmY - middleY);
                if (wholePlane)
                    (row[0], row[1], row[2], row[3], row[4], row[5]) = (gx * fromX, gx * fromY, gx, gy * fromX, gy * fromY, gy);
                else
                    (row[0], row[1], row[2], row[3]) = ((gx * pose.A + gy * pose.D) * fromX, (gx * pose.B + gy * pose.E) * fromY, gx, gy);
                (row[size], row[size + 1]) = (-label[x, y], -1);
                for (var i = 0; i < size + 2; i++)
                {
                    target[i] -= row[i] * seen.Value;
                    for (var j = i; j < size + 2; j++)
                        square[i * (size + 2) + j] += row[i] * row[j];
                }
                count++;
            }
        }
        if (count < 50)
            return null;
        for (var i = 0; i < size + 2; i++)
        {
            for (var j = 0; j < i; j++)
                square[i * (size + 2) + j] = square[j * (size + 2) + i];
            // What nothing in the part says stays as it is.
            square[i * (size + 2) + i] *= 1 + 1e-9;
        }
        var found = Matrix<double>.Build.DenseOfRowMajor(size + 2, size + 2, square).Solve(Vector<double>.Build.Dense(target));
        if (found.Any(v => !double.IsFinite(v)) || Math.Abs(found[2]) > 5)
            return null;
        if (wholePlane)
            return Moved(pose, found[0], found[1], found[2], found[3], found[4], found[5], middleX, middleY);
        return Moved(pose, pose.A * found[0], pose.B * found[1], found[2], pose.D * found[0], pose.E * found[1], found[3], middleX,
            middleY);
    }

    // Changes were reckoned about the part's middle, where they hinder one another least.
    private static LabelPose Moved(LabelPose p, double a, double b, double c, double d, double e, double f, double x, double y) =>
        new(p.A + a, p.B + b, p.C + c - a * x - b * y, p.D + d, p.E + e, p.F + f - d * x - e * y);

    // The places where the coarse pictures agree best, in every turn.
    private static IEnumerable<LabelPose> Places(GreyField scan, GreyField label, double width, double height)
    {
        var tries = Turns.SelectMany(t => Askew.Select(a => t + a)).ToList();
        var found = new (double Likeness, LabelPose Pose)[tries.Count];
        Parallel.For(0, tries.Count, i => found[i] = Best(scan, label, tries[i], width, height));
        return found.OrderByDescending(b => b.Likeness).Take(Candidates).Where(b => b.Likeness > 0).Select(b => b.Pose);
    }

    private static double Likeness(GreyField scan, GreyField label, LabelPose pose)
    {
        double n = 0, a = 0, b = 0, aa = 0, bb = 0, ab = 0;
        for (var y = 0; y < label.Height; y++)
        {
            for (var x = 0; x < label.Width; x++)
            {
                var (atX, atY) = pose.Apply((x + 0.5) / label.PerMillimetre, (y + 0.5) / label.PerMillimetre);
                if (scan.At(atX * scan.PerMillimetre, atY * scan.PerMillimetre) is not { Value: var seen })
                    continue;
                double value = label[x, y];
                (n, a, b, aa, bb, ab) = (n + 1, a + value, b + seen, aa + value * value, bb + seen * seen, ab + value * seen);
            }
        }
        return n < 0.8 * label.Width * label.Height ? -1 : (ab - a * b / n) / Math.Sqrt(Math.Max(1, (aa - a * a / n) * (bb - b * b / n)));
    }

    private static (double Likeness, LabelPose Pose) Best(GreyField scan, GreyField label, double turn, double width, double height)
    {
        var per = scan.PerMillimetre;
        var points = new List<(int X, int Y, double Value)>();
        var about = LabelPose.Turned(turn, width, height, 0, 0);
        for (var y = 0; y < label.Height; y++)
        {
            for (var x = 0; x < label.Width; x++)
            {
                var (atX, atY) = about.Apply((x + 0.5) / label.PerMillimetre, (y + 0.5) / label.PerMillimetre);
                points.Add(((int)Math.Floor(atX * per), (int)Math.Floor(atY * per), label[x, y]));
            }
        }
        var mean = points.Average(p => p.Value);
        var spread = points.Sum(p => (p.Value - mean) * (p.Value - mean));
        var (left, top, right, bottom) = (points.Min(p => p.X), points.Min(p => p.Y), points.Max(p => p.X), points.Max(p => p.Y));
        var best = (Likeness: -1.0, Pose: about);
        for (var y = -top - Beyond; y + bottom < scan.Height + Beyond; y++)
        {
            for (var x = -left - Beyond; x + right < scan.Width + Beyond; x++)
            {
                double sum = 0, squares = 0, both = 0;
                foreach (var (dx, dy, value) in points)
                {
                    double seen = scan.Around(x + dx, y + dy);
                    sum += seen;
                    squares += seen * seen;
                    both += seen * (value - mean);
                }
                var likeness = both / Math.Sqrt(Math.Max(1, spread * (squares - sum * sum / points.Count)));
                if (likeness > best.Likeness)
                    best = (likeness, LabelPose.Turned(turn, width, height, (x + 0.5) / per, (y + 0.5) / per));
            }
        }
        return best;
    }
}
