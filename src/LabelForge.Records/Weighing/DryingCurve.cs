using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;

namespace LabelForge.Records.Weighing;

/// <summary>One weighing of a piece that loses water.</summary>
/// <param name="Day">Days since it was cut, from 0.</param>
/// <param name="Grams">Its mass.</param>
public sealed record DriedWeight(decimal Day, decimal Grams);

/// <summary>A mass at an age, with the interval in which it lies with 95 % confidence.</summary>
public sealed record MassAtAge(decimal Day, decimal Grams, decimal Low, decimal High);

/// <summary>How a piece of soap dries: the mass falls towards an end, fast first: m = end + loss * exp(-day / pace).</summary>
/// <remarks>
/// The simplest drying law (the rate goes with the water still to go), common practice for cured soap. Fitted by least squares;
/// intervals by Student's t on the fitted curve's own spread, so they cover the curve and not the next bar.
/// </remarks>
public sealed class DryingCurve
{
    private const int FewestWeighings = 4;
    private readonly double _end, _loss, _rate, _variance;
    private readonly Matrix<double> _spread;

    private DryingCurve(ImmutableArray<DriedWeight> weights, double end, double loss, double rate, double variance,
        Matrix<double> spread) =>
        (Weights, _end, _loss, _rate, _variance, _spread) = (weights, end, loss, rate, variance, spread);

    /// <summary>The weighings fitted.</summary>
    public ImmutableArray<DriedWeight> Weights { get; }

    /// <summary>The mass it dries to, in grams.</summary>
    public decimal EndGrams => (decimal)_end;

    /// <summary>The days in which the water still to go falls to 37 %.</summary>
    public decimal PaceDays => (decimal)(1 / _rate);

    /// <summary>Fits the curve.</summary>
    /// <exception cref="InputException">Fewer than four weighings on different days, or the piece does not lose mass.</exception>
    public static DryingCurve Fit(IEnumerable<DriedWeight> weighings)
    {
        ImmutableArray<DriedWeight> weights = [.. weighings.OrderBy(w => w.Day)];
        if (weights.Select(w => w.Day).Distinct().Count() < FewestWeighings)
            throw new InputException("weighing.too-few-days");
        var (first, last) = ((double)weights[0].Day, (double)weights[^1].Day);
        var rate = Lowest(r => Residual(weights, r), 0.05 / (last - first), 50 / (last - first));
        var (end, loss) = Line(weights, rate);
        if (loss <= 0 || end <= 0)
            throw new InputException("weighing.not-falling");
        var jacobian = Matrix<double>.Build.Dense(weights.Length, 3, (i, j) => Slope(j, (double)weights[i].Day, loss, rate));
        var variance = Residual(weights, rate) / Math.Max(1, weights.Length - 3);
        return new DryingCurve(weights, end, loss, rate, variance, (jacobian.TransposeThisAndMultiply(jacobian)).PseudoInverse());
    }

    /// <summary>The mass at an age, with its 95 % interval.</summary>
    public MassAtAge At(decimal day)
    {
        var t = (double)day;
        var mass = _end + _loss * Math.Exp(-_rate * t);
        var slope = Vector<double>.Build.Dense(3, j => Slope(j, t, _loss, _rate));
        var spread = Math.Sqrt(Math.Max(0, _variance * (slope * (_spread * slope))));
        var half = spread * StudentT.InvCDF(0, 1, Math.Max(1, Weights.Length - 3), 0.975);
        // A fit that says less than nothing about a day far off would overflow a decimal.
        half = Math.Min(half, 1e9);
        return new MassAtAge(day, Grams(mass), Grams(mass - half), Grams(mass + half));
    }

    private static decimal Grams(double grams) => Math.Round((decimal)Math.Max(0, grams), 3);

    private static double Slope(int of, double day, double loss, double rate) => of switch
    {
        0 => 1,
        1 => Math.Exp(-rate * day),
        _ => -loss * day * Math.Exp(-rate * day),
    };

    // For a given rate the end and the loss are a straight line's.
    private static (double End, double Loss) Line(ImmutableArray<DriedWeight> weights, double rate)
    {
        var x = weights.Select(w => Math.Exp(-rate * (double)w.Day)).ToArray();
        var (meanX, meanY) = (x.Average(), (double)weights.Average(w => w.Grams));
        var loss = x.Zip(weights, (a, w) => (a - meanX) * ((double)w.Grams - meanY)).Sum() / x.Sum(a => (a - meanX) * (a - meanX));
        return (meanY - loss * meanX, loss);
    }

    private static double Residual(ImmutableArray<DriedWeight> weights, double rate)
    {
        var (end, loss) = Line(weights, rate);
        return weights.Sum(w => Math.Pow((double)w.Grams - end - loss * Math.Exp(-rate * (double)w.Day), 2));
    }

    // A coarse walk finds the valley, a golden section its floor.
    private static double Lowest(Func<double, double> of, double from, double to)
    {
        const int steps = 400;
        var factor = Math.Pow(to / from, 1.0 / steps);
        var best = Enumerable.Range(0, steps + 1).Select(i => from * Math.Pow(factor, i)).MinBy(of);
        var (low, high) = (best / factor, best * factor);
        var golden = (Math.Sqrt(5) - 1) / 2;
        for (var i = 0; i < 80; i++)
        {
            var (a, b) = (high - golden * (high - low), low + golden * (high - low));
            if (of(a) < of(b))
                high = b;
            else
                low = a;
        }
        return (low + high) / 2;
    }
}
