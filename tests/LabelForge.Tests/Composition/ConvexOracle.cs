using Google.OrTools.LinearSolver;

namespace LabelForge.Tests.Composition;

/// <summary>
/// The least relative entropy by a general method of other make: Kelley's cutting planes. The function is replaced by tangents
/// from below, a linear solver finds the least of those, and tangents are added where it lands, until the two meet.
/// </summary>
internal static class ConvexOracle
{
    /// <summary>The least of the sum of x ln(x/p) - x + p, and where it lies; null where the constraints leave nothing.</summary>
    /// <param name="usual">p, above 0.</param>
    /// <param name="low">The least x.</param>
    /// <param name="high">The greatest x.</param>
    /// <param name="chain">Places whose x descend, in that order.</param>
    public static (double Value, double[] At)? Least(double[] usual, double[] low, double[] high, int[] chain)
    {
        using var solver = Solver.CreateSolver("GLOP");
        var x = usual.Select((_, i) => solver.MakeNumVar(low[i], high[i], $"x{i}")).ToArray();
        var t = usual.Select((_, i) => solver.MakeNumVar(0, double.PositiveInfinity, $"t{i}")).ToArray();
        solver.Add(new SumVarArray(x) == 1);
        for (var at = 0; at + 1 < chain.Length; at++)
            solver.Add(x[chain[at]] >= x[chain[at + 1]]);
        for (var i = 0; i < usual.Length; i++)
        {
            foreach (var point in new[] { 1e-6, 1e-4, 1e-3, 0.01, 0.05, 0.2, 0.6, usual[i] })
                Tangent(i, point);
        }
        solver.Minimize(new SumVarArray(t));
        for (var round = 0; round < 400; round++)
        {
            if (solver.Solve() != Solver.ResultStatus.OPTIMAL)
                return null;
            double[] at = [.. x.Select(v => Math.Max(0, v.SolutionValue()))];
            var value = at.Select((v, i) => F(v, usual[i])).Sum();
            if (value - t.Sum(v => v.SolutionValue()) < 2e-7)
                return (value, at);
            for (var i = 0; i < at.Length; i++)
                Tangent(i, Math.Max(at[i], 1e-12));
        }
        throw new InvalidOperationException("The cutting planes did not meet the function.");

        // t >= f(c) + f'(c) (x - c) with f'(c) = ln(c / p); f(c) - c f'(c) = p - c.
        void Tangent(int i, double c) => solver.Add(t[i] - Math.Log(c / usual[i]) * x[i] >= usual[i] - c);
    }

    /// <summary>One term.</summary>
    public static double F(double x, double p) => (x > 0 ? x * Math.Log(x / p) : 0) - x + p;
}
