using System.Numerics;
using LabelForge.Composition;
using LabelForge.Measures;
using static LabelForge.Tests.Composition.Lists;
using Place = LabelForge.Composition.Part;

namespace LabelForge.Tests.Composition;

/// <summary>The one-percent line against whole numbers: shares in units of 1e-24, weights as written, nothing divided.</summary>
public class OnePercentLineTests
{
    private const decimal Hair = 1e-18m;
    private static readonly BigInteger Whole = BigInteger.Pow(10, 24);

#if MUTATION
    private const int Products = 200;
#else
    private const int Products = 2500;
#endif

    [Theory]
    [InlineData(0, Place.Minor)]
    [InlineData(1, Place.Main)]
    [InlineData(-1, Place.Minor)]
    public void Two_thirds_of_one_and_a_half_percent_is_one_percent_and_a_hair_more_is_more(int hairs, Place expected)
    {
        var x = new Constituent("X", Exactly(0.015m + hairs * Hair), false);
        MaterialPart[] parts =
        [
            Weighed(Part("Base", 1, ListedOrder.None,
                "Main") with { Constituents = [new Constituent("Main", ShareRange.Unknown, false), x] }, 2, 3),
            Weighed(Part("Water", 1, ListedOrder.None, "Water"), 1, 3),
        ];
        Assert.Equal(expected, Prover.Prove(parts).Of("X").Part);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void Random_products_draw_the_line_where_whole_numbers_draw_it(int seed)
    {
        var random = new Random(seed);
        var (on, above, below, roundedUp) = (0, 0, 0, 0);
        for (var product = 0; product < Products; product++)
        {
            var parts = NearTheLine(random, out var weights);
            var side = Side(parts, weights);
            var proof = Prover.Prove(parts);
            var x = proof.Of("X");
            Assert.True((side > 0 ? Place.Main : Place.Minor) == x.Part, $"seed {seed}, product {product}: {side}, {x}");
            var isNear = Math.Abs(x.High - 0.01m) < 1e-15m;
            (on, above, below) = (on + (side == 0 ? 1 : 0), above + (side > 0 && isNear ? 1 : 0), below + (side < 0 && isNear ? 1 : 0));
            roundedUp += side == 0 && x.High > 0.01m ? 1 : 0;
        }
        Assert.True(on > Products / 5 && above > Products / 10 && below > Products / 10 && roundedUp > Products / 400,
            $"{on} on the line, {above} over, {below} under it; {roundedUp} rounded up");
    }

    // X comes to 1 % at its most, or a hair beside it: by a figure, by what stands before it, or as the last of equals.
    private static MaterialPart[] NearTheLine(Random random, out int[] weights)
    {
        while (true)
        {
            weights = [.. Enumerable.Range(0, random.Next(2, 5)).Select(_ => random.Next(1, 60))];
            var total = weights.Sum();
            int[] others = [.. weights[1..].Select(_ => random.Next(3) == 0 ? random.Next(1, 9) : 0)];
            // In thousandths of the material, times its weight: what is left for the first.
            var left = total * 10 - weights[1..].Zip(others, (w, o) => w * o).Sum();
            var equals = random.Next(3) switch { 0 => 1, 1 => random.Next(2, 8), _ => weights[0] % 3 == 0 ? 3 : 7 };
            // All the equals together, if that is a finite decimal.
            var together = left * equals / (decimal)weights[0];
            if (left <= 0 || together >= 1000 || together * weights[0] != left * equals || decimal.Round(together, 6) != together)
                continue;
            var sum = together / 1000 + (random.Next(4) switch { 0 => Hair, 1 => -Hair, _ => 0 });
            var all = total;
            var counts = weights;
            return
            [
                Weighed(First(random, sum, equals), counts[0], all),
                .. others.Select((o, at) => Weighed(Other(random, at, o / 1000m), counts[at + 1], all)),
            ];
        }
    }

    private static MaterialPart First(Random random, decimal sum, int equals)
    {
        var main = new Constituent("Main", equals == 1 ? ShareRange.Unknown : Exactly(1 - sum), false);
        var x = new Constituent("X", ShareRange.Unknown, false);
        if (equals > 1)
            return new MaterialPart("First", 1, ListedOrder.Strict,
                [.. Ordered(1 - sum >= sum, main,
                    [.. Enumerable.Range(1, equals - 1).Select(n => new Constituent($"E{n}", ShareRange.Unknown, false)), x])]);
        var atMost = new ShareRange(Share.None, Share.FromFraction(sum));
        return random.Next(2) == 0
            ? new MaterialPart("First", 1, (ListedOrder)random.Next(3), [main, x with { Share = atMost }])
            : new MaterialPart("First", 1, ListedOrder.Strict, [main, new Constituent("Before", atMost, false), x]);
    }

    // A list in descending order whose greatest may be the one that is given; where it need not be, the list has no order for it.
    private static IEnumerable<Constituent> Ordered(bool mainFirst, Constituent main, Constituent[] rest) =>
        mainFirst ? [main, .. rest] : [main with { Share = new ShareRange(main.Share.Low, Share.Whole) }, .. rest];

    private static MaterialPart Other(Random random, int at, decimal most) => new($"Other {at}", 1, (ListedOrder)random.Next(3),
        most == 0
            ? [new Constituent($"Base {at}", ShareRange.Unknown, false)]
            : [new Constituent($"Base {at}", ShareRange.Unknown, false),
                new Constituent("X", new ShareRange(Share.None, Share.FromFraction(most)), false)]);

    private static MaterialPart Weighed(MaterialPart part, int weight, int total) =>
        part with { ShareOfProduct = weight / (decimal)total, ExactShare = Fraction.Of(weight, total) };

    private static ShareRange Exactly(decimal share) => new(Share.FromFraction(share), Share.FromFraction(share));

    // Above, on or below the line: the sum of weight times most over the sum of the weights, multiplied out.
    private static int Side(MaterialPart[] parts, int[] weights)
    {
        var (top, under) = (BigInteger.Zero, BigInteger.One);
        for (var m = 0; m < parts.Length; m++)
        {
            if (parts[m].Constituents.Any(c => c.Name == "X"))
            {
                var (most, over) = Most(parts[m]);
                (top, under) = (top * over + most * weights[m] * under, under * over);
            }
        }
        return (top * 100).CompareTo(under * Whole * weights.Sum());
    }

    // The most of X that a list allows, as a quotient: over every place of its one-percent line.
    private static (BigInteger Top, BigInteger Under) Most(MaterialPart part)
    {
        var n = part.Constituents.Length;
        int[] places = part.Listed switch { ListedOrder.None => [0], ListedOrder.Strict => [n], _ => [.. Enumerable.Range(0, n + 1)] };
        var best = (Top: BigInteger.MinusOne, Under: BigInteger.One);
        foreach (var chained in places)
        {
            BigInteger[] least = [.. part.Constituents.Select(c => Units(c.Share.Low.Fraction))];
            BigInteger[] most = [.. part.Constituents.Select(c => Units(c.Share.High.Fraction))];
            for (var c = 0; part.Listed == ListedOrder.Label && c < n; c++)
                (least[c],
                    most[c]) = c < chained
                        ? (BigInteger.Max(least[c], Whole / 100), most[c])
                        : (least[c], BigInteger.Min(most[c], Whole / 100));
            for (var c = chained - 2; c >= 0; c--)
                least[c] = BigInteger.Max(least[c], least[c + 1]);
            for (var c = 1; c < chained; c++)
                most[c] = BigInteger.Min(most[c], most[c - 1]);
            if (least.Zip(most).Any(b => b.First > b.Second) || Sum(least) > Whole || Sum(most) < Whole)
                continue;
            var x = part.Constituents.Select(c => c.Name).ToList().IndexOf("X");
            var here = MostOf(x, x < chained ? x : 0, least, most);
            best = here.Top * best.Under > best.Top * here.Under ? here : best;
        }
        return best;
    }

    // Whoever stands before X has at least as much: for every choice of those that have just as much, the rest having their
    // least, X is no more than what is left shared out evenly. The tightest of these is reached.
    private static (BigInteger Top, BigInteger Under) MostOf(int x, int before, BigInteger[] least, BigInteger[] most)
    {
        var best = (Top: most[x], Under: BigInteger.One);
        for (var choice = 0; choice < 1 << before; choice++)
        {
            var rest = Enumerable.Range(0, least.Length).Where(c => c != x && (c >= before || (choice >> c & 1) == 0));
            var here = (Top: Whole - rest.Aggregate(BigInteger.Zero, (sum, c) => sum + least[c]),
                Under: new BigInteger(1 + BitOperations.PopCount((uint)choice)));
            best = here.Top * best.Under < best.Top * here.Under ? here : best;
        }
        return best;
    }

    private static BigInteger Sum(BigInteger[] all) => all.Aggregate(BigInteger.Zero, (sum, next) => sum + next);

    private static BigInteger Units(decimal share) => new BigInteger(share * 1_000_000_000_000m * 1_000_000_000m) * 1000;
}
