using CsCheck;
using LabelForge.Measures;
using LabelForge.Records.Weighing;

namespace LabelForge.Records.Tests.Weighing;

public class DryingCurveTests
{
    [Fact]
    public void A_piece_that_dries_exactly_by_the_law_is_found_again() =>
        Gen.Select(Gen.Double[60, 150], Gen.Double[3, 30], Gen.Double[4, 20]).Sample((end, loss, pace) =>
        {
            double Mass(double day) => end + loss * Math.Exp(-day / pace);
            var curve = DryingCurve.Fit(Enumerable.Range(0, 10).Select(i => new DriedWeight(i * 4, (decimal)Mass(i * 4))));
            Assert.InRange((double)curve.At(42).Grams, Mass(42) - 0.002, Mass(42) + 0.002);
            Assert.InRange((double)curve.EndGrams, end - 0.002, end + 0.002);
        }, iter: 100);

    [Fact]
    public void The_interval_covers_the_truth_about_as_often_as_it_says()
    {
        var random = new Random(5);
        double Mass(double day) => 105 + 12 * Math.Exp(-day / 10.0);
        var covered = 0;
        for (var i = 0; i < 400; i++)
        {
            var curve = DryingCurve.Fit(Enumerable.Range(0, 12)
                .Select(d => new DriedWeight(d * 3, (decimal)(Mass(d * 3) + 0.2 * Normal(random)))));
            var at = curve.At(28);
            covered += (double)at.Low <= Mass(28) && Mass(28) <= (double)at.High ? 1 : 0;
        }
        Assert.InRange(covered, 364, 396);
    }

    [Theory]
    [InlineData("0:100 1:99 2:98")]
    [InlineData("0:100 5:101 10:102 15:102.5 20:102.7")]
    public void What_does_not_dry_is_refused(string text) =>
        Assert.Throws<InputException>(() => DryingCurve.Fit(text.Split(' ').Select(p => p.Split(':'))
            .Select(p => new DriedWeight(decimal.Parse(p[0]), decimal.Parse(p[1])))));

    private static double Normal(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
