namespace LabelForge.Print.Ornaments.Families;

/// <summary>
/// Plants and corals that grow towards free space: Runions, Lane, Prusinkiewicz, "Modeling trees with a space colonization
/// algorithm", Eurographics Workshop on Natural Phenomena 2007. Thickness by the number of tips a branch bears, after the pipe
/// model of Shinozaki and others (1964).
/// </summary>
internal static class Branching
{
    private const int MostSteps = 600;

    private sealed class Node(Spot at, Node? parent)
    {
        public Spot At { get; set; } = at;

        public Node? Parent { get; } = parent;

        public List<Node> Children { get; } = [];

        public int Tips { get; set; }
    }

    public static void Sprig(OrnamentField f, OrnamentPen pen)
    {
        var s = f.Size;
        var nodes = Grow(f, 3.5 * s, 0.8 * s, 2.1 * s, 0.16);
        Lines(nodes, pen, f.Weight, 0.17, 0.44, s);
        var turn = 0;
        foreach (var node in nodes.Where(n => n.Parent is not null && n.Children.Count == 1 && n.Tips <= 4))
        {
            if (++turn % 2 != 0)
                continue;
            var way = (node.At - node.Parent!.At).Angle + (turn % 4 == 0 ? 0.85 : -0.85);
            pen.Fill(turn % 6 == 0 ? OrnamentInk.Second : OrnamentInk.First,
                Outlines.Leaf(node.At, way, f.Chance.Between(1.5, 2.2) * s, 1.15 * s));
        }
        foreach (var tip in nodes.Where(n => n.Children.Count == 0 && n.Parent is not null))
            Flower(pen, tip.At, (tip.At - tip.Parent!.At).Angle, 0.95 * s);
    }

    public static void Coral(OrnamentField f, OrnamentPen pen)
    {
        var s = f.Size;
        var nodes = Grow(f, 1.45 * s, 0.45 * s, 1.0 * s, 0.03);
        Lines(nodes, pen, f.Weight, 0.24, 0.4, s);
        foreach (var tip in nodes.Where(n => n.Children.Count == 0))
            pen.Dot(OrnamentInk.Second, tip.At, 0.34 * s * Math.Sqrt(f.Weight));
    }

    private static void Flower(OrnamentPen pen, Spot at, double angle, double size)
    {
        for (var i = 0; i < 5; i++)
            pen.Fill(OrnamentInk.Second, Outlines.Leaf(at, angle + i * 2 * Math.PI / 5, size, size * 0.85, 0.55));
        pen.Dot(OrnamentInk.First, at, size * 0.26);
    }

    private static List<Node> Grow(OrnamentField f, double apart, double step, double kill, double up)
    {
        var free = PoissonDiscs.In(f, apart).Where(p => p.Y < f.Height * 0.96).ToList();
        var stems = Math.Clamp((int)Math.Round(f.Width / Math.Max(f.Height, 9) * 0.8), 1, 5);
        var nodes = Enumerable.Range(0, stems)
            .Select(i => new Node(new Spot((i + f.Chance.Between(0.35, 0.65)) * f.Width / stems, f.Height + step), null)).ToList();
        var reach = 0.7 * Math.Max(f.Width, f.Height);
        // Nodes stay where they grew, so that each point remembers its nearest and is held against new ones alone.
        var nearest = free.ConvertAll(p => Nearest(p, nodes, 0, (nodes[0], double.MaxValue)));
        for (var round = 0; round < MostSteps && free.Count > 0; round++)
        {
            var pulls = new Dictionary<Node, Spot>();
            for (var i = 0; i < free.Count; i++)
            {
                if (nearest[i].Distance < reach)
                    pulls[nearest[i].Node] = pulls.GetValueOrDefault(nearest[i].Node) + (free[i] - nearest[i].Node.At).Unit;
            }
            var before = nodes.Count;
            foreach (var (node, pull) in pulls)
            {
                var at = node.At + (pull.Unit + new Spot(0, -up)).Unit * step;
                if (node.Children.Any(c => c.At.To(at) < step * 0.3))
                    continue;
                var child = new Node(at, node);
                node.Children.Add(child);
                nodes.Add(child);
            }
            var kept = 0;
            for (var i = 0; i < free.Count; i++)
            {
                var near = Nearest(free[i], nodes, before, nearest[i]);
                if (near.Distance < kill)
                    continue;
                (free[kept], nearest[kept]) = (free[i], near);
                kept++;
            }
            free.RemoveRange(kept, free.Count - kept);
            nearest.RemoveRange(kept, nearest.Count - kept);
            if (nodes.Count == before)
                break;
        }
        for (var i = nodes.Count - 1; i >= 0; i--)
            nodes[i].Tips = Math.Max(1, nodes[i].Children.Sum(c => c.Tips));
        for (var pass = 0; pass < 3; pass++)
            foreach (var n in nodes.Where(n => n.Parent is not null && n.Children.Count == 1))
                n.At = n.At * 0.5 + (n.Parent!.At + n.Children[0].At) * 0.25;
        return nodes;
    }

    private static (Node Node, double Distance) Nearest(Spot p, List<Node> nodes, int from, (Node Node, double Distance) known)
    {
        for (var i = from; i < nodes.Count; i++)
        {
            if (nodes[i].At.To(p) is var distance && distance < known.Distance)
                known = (nodes[i], distance);
        }
        return known;
    }

    // Each line runs from a fork to the next tip, along the heaviest child.
    private static void Lines(List<Node> nodes, OrnamentPen pen, double weight, double thin, double power, double size)
    {
        foreach (var start in nodes.Where(n => n.Parent is null || n.Parent.Children.MaxBy(c => c.Tips) != n))
        {
            var line = new List<Node>();
            if (start.Parent is { } fork)
                line.Add(fork);
            for (var at = start; at is not null; at = at.Children.MaxBy(c => c.Tips))
                line.Add(at);
            if (line.Count < 2)
                continue;
            var from = start.Parent is null ? 0 : 1;
            double Thick(double t) =>
            Math.Max(0.1,
                thin * weight * Math.Sqrt(size) * Math.Pow(line[Math.Max(from, (int)Math.Round(t * (line.Count - 1)))].Tips, power));
            pen.Fill(OrnamentInk.First, Outlines.Tapered([.. line.Select(n => n.At)], Thick));
        }
    }
}
