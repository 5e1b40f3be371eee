using LabelForge.Composition;
using LabelForge.Measures;

namespace LabelForge.Tests.Composition;

/// <summary>Random products that some composition meets: each list is written from a hidden true composition.</summary>
internal static class RandomProducts
{
    public static MaterialPart[] Of(Random random)
    {
        var materials = random.Next(1, 5);
        var weights = Enumerable.Range(0, materials).Select(_ => (decimal)random.Next(1, 60)).ToArray();
        var most = materials switch { 1 => 12, 2 => 8, 3 => 5, _ => 4 };
        var pool = random.Next(2, 13);
        return [
            .. weights.Select((w,
                m) => Material($"Material {m}", w / weights.Sum(), random, Math.Min(pool, random.Next(1, most + 1)), pool))];
    }

    /// <summary>The same where several substances go by one name: of two materials, or of one list.</summary>
    public static MaterialPart[] OfSameNames(Random random) => [.. Of(random).Select(p => p with
    {
        Constituents = [.. p.Constituents
            .Select(c => c with { Name = c.Substance switch
            {
                "I1" or "I2" or "I3" => "A",
                "I4" or "I6" => "B",
                "I9" or "I11" => "Colour",
                var own => own,
            } })],
    })];

    /// <summary>Parts of a material that are named besides it: of an ingredient that is there, or of none.</summary>
    public static NamedBesides[] Besides(Random random, MaterialPart[] parts) => [.. Enumerable.Range(0, random.Next(0, 4)).Select(n =>
    {
        var of = parts[random.Next(parts.Length)];
        var low = random.Next(0, 300);
        var all = parts.SelectMany(p => p.Constituents).Where(c => !c.IsColourant).Select(c => c.Name).ToArray();
        return new NamedBesides(all.Length == 0 || random.Next(2) == 0 ? $"Part {n % 2}" : all[random.Next(all.Length)], of.Material,
            of.ShareOfProduct, low / 1000m, (low + random.Next(0, 200)) / 1000m);
    })];

    private static MaterialPart Material(string name, decimal share, Random random, int count, int pool)
    {
        var listed = (ListedOrder)random.Next(3);
        var truth = Truth(random, count);
        string[] names = [.. Enumerable.Range(0, pool).OrderBy(_ => random.Next()).Take(count).Select(n => $"I{n}")];
        var lines = names.Zip(truth, (n, x) => (Name: n, Share: x, IsColour: n is "I9" or "I11")).ToArray();
        lines = listed switch
        {
            ListedOrder.Strict => [.. lines.OrderByDescending(l => l.Share)],
            ListedOrder.Label =>
                [.. lines.OrderByDescending(l => l.IsColour ? (random.Next(2) == 0 ? -1 : l.Share) : l.Share > 10 ? l.Share : 0)],
            _ => lines,
        };
        var detail = random.Next(0, 5);
        return new MaterialPart(name, share, listed,
            [.. lines.Select(l => new Constituent(l.Name, Said(l.Share, random, detail), l.IsColour))]);
    }

    // In thousandths; often with a long tail under one percent, as real lists have.
    private static int[] Truth(Random random, int count)
    {
        var shares = new int[count];
        var left = 1000;
        for (var i = count - 1; i > 0; i--)
        {
            shares[i] = random.Next(3) == 0 ? Math.Min(left, random.Next(0, 12)) : random.Next(0, left / 2 + 1);
            left -= shares[i];
        }
        shares[0] = left;
        return shares;
    }

    private static ShareRange Said(int truth, Random random, int detail) =>
        random.Next(5) >= detail ? ShareRange.Unknown : random.Next(4) switch
        {
            0 => Range(truth, truth),
            1 => Range(0, Math.Min(1000, truth + random.Next(0, 100))),
            2 => Range(Math.Max(0, truth - random.Next(0, 100)), 1000),
            _ => Range(Math.Max(0, truth - random.Next(0, 150)), Math.Min(1000, truth + random.Next(0, 150))),
        };

    private static ShareRange Range(int low, int high) => new(Share.FromFraction(low / 1000m), Share.FromFraction(high / 1000m));
}
