using CsCheck;
using LabelForge.Composition;

namespace LabelForge.Tests.Composition;

/// <summary>Pairs of figures of which none is worse than another in both.</summary>
public class ParetoFrontTests
{
    private static readonly Gen<(int Ahead, int Share)> AnyPoint = Gen.Select(Gen.Int[-20, 20], Gen.Int[-20, 20]);

    [Fact]
    public void A_front_exceeds_a_pair_exactly_where_one_of_its_points_does() =>
        Gen.Select(AnyPoint.Array[1, 12], AnyPoint).Sample((points, asked) =>
        {
            var front = Of(points);
            Assert.Equal(points.Any(p => p.Ahead > asked.Ahead && p.Share > asked.Share), front.AnyAbove(asked.Ahead, asked.Share));
            Assert.Equal((points.Max(p => p.Ahead), points.Max(p => p.Share)), ((int)front.MostAhead, (int)front.MostShare));
        });

    [Fact]
    public void The_sum_of_two_fronts_is_the_front_of_all_sums() =>
        Gen.Select(AnyPoint.Array[1, 8], AnyPoint.Array[1, 8], AnyPoint).Sample((one, other, asked) =>
        {
            var sums = one.SelectMany(a => other.Select(b => (Ahead: a.Ahead + b.Ahead, Share: a.Share + b.Share))).ToArray();
            var sum = Of(one).Plus(Of(other));
            Assert.Equal(sums.Any(p => p.Ahead > asked.Ahead && p.Share > asked.Share), sum.AnyAbove(asked.Ahead, asked.Share));
            Assert.Equal((sums.Max(p => p.Ahead), sums.Max(p => p.Share)), ((int)sum.MostAhead, (int)sum.MostShare));
        });

    // 100 points by 100 points with no two sums alike are ten thousand: more than are kept. What is kept must exceed all that they
    // exceed, so that no order is called safe that is not, and no more than the corner of a run of them does.
    [Fact]
    public void A_front_of_too_many_points_is_never_below_them()
    {
        var one = Enumerable.Range(0, 100).Select(i => (Ahead: i, Share: 99 - i)).ToArray();
        var other = Enumerable.Range(0, 100).Select(i => (Ahead: 100 * i, Share: 9900 - 100 * i)).ToArray();
        var sum = Of(one).Plus(Of(other));
        Assert.Equal((9999m, 9999m), (sum.MostAhead, sum.MostShare));
        for (var ahead = 0; ahead <= 9999; ahead += 7)
        {
            Assert.True(sum.AnyAbove(ahead - 0.5m, 9999 - ahead - 0.5m), $"{ahead}");
            // 256 corners take the place of ten thousand points, so a corner stands for a run of 40.
            Assert.False(sum.AnyAbove(ahead + 40, 9999 - ahead), $"{ahead}");
        }
    }

    private static ParetoFront Of(IEnumerable<(int Ahead, int Share)> points)
    {
        var front = new ParetoFront();
        foreach (var (ahead, share) in points)
            front.Add(ahead, share);
        return front;
    }
}
