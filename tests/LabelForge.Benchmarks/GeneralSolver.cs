using Google.OrTools.LinearSolver;
using LabelForge.Composition;

namespace LabelForge.Benchmarks;

/// <summary>
/// The same answers from a general solver (OR-Tools, GLOP): one linear program for each bound and each pair, straight from the
/// constraints, in percent. For strict lists, whose compositions are one convex set.
/// </summary>
internal sealed class GeneralSolver : IDisposable
{
    private const double Clear = 1e-7;

    private readonly Solver _solver = Solver.CreateSolver("GLOP");
    private readonly Dictionary<string, List<(Variable Share, double Part)>> _terms = [];
    private readonly Variable _ahead;
    private readonly Constraint _over;
    private readonly Constraint _overOnePercent;

    public GeneralSolver(IEnumerable<MaterialPart> parts)
    {
        _ahead = _solver.MakeNumVar(-1000, 1000, "ahead");
        _over = _solver.MakeConstraint(double.NegativeInfinity, double.PositiveInfinity);
        _overOnePercent = _solver.MakeConstraint(double.NegativeInfinity, double.PositiveInfinity);
        foreach (var part in parts)
            Add(part);
    }

    /// <summary>Every bound, then every pair: whether the first may stand before the second.</summary>
    public Dictionary<(string First, string Second), bool> Solve()
    {
        foreach (var name in _terms.Keys)
        {
            Bound(name, 1);
            Bound(name, -1);
        }
        var safe = new Dictionary<(string, string), bool>();
        foreach (var first in _terms.Keys)
        {
            foreach (var second in _terms.Keys.Where(n => n != first))
                safe[(first, second)] = Overtaken(first, second) <= Clear;
        }
        return safe;
    }

    public void Dispose() => _solver.Dispose();

    private void Bound(string name, int sign)
    {
        _over.SetBounds(double.NegativeInfinity, double.PositiveInfinity);
        _overOnePercent.SetBounds(double.NegativeInfinity, double.PositiveInfinity);
        var objective = _solver.Objective();
        objective.Clear();
        foreach (var (share, part) in _terms[name])
            objective.SetCoefficient(share, sign * part);
        Solved();
    }

    // The greatest t with w(second) - w(first) >= t and w(second) - 1 >= t.
    private double Overtaken(string first, string second)
    {
        _over.Clear();
        _overOnePercent.Clear();
        _over.SetBounds(0, double.PositiveInfinity);
        _overOnePercent.SetBounds(1, double.PositiveInfinity);
        _over.SetCoefficient(_ahead, -1);
        _overOnePercent.SetCoefficient(_ahead, -1);
        foreach (var (share, part) in _terms[second])
        {
            _over.SetCoefficient(share, part);
            _overOnePercent.SetCoefficient(share, part);
        }
        foreach (var (share, part) in _terms[first])
            _over.SetCoefficient(share, -part);
        var objective = _solver.Objective();
        objective.Clear();
        objective.SetCoefficient(_ahead, 1);
        return Solved();
    }

    private double Solved()
    {
        _solver.Objective().SetMaximization();
        return _solver.Solve() == Solver.ResultStatus.OPTIMAL
            ? _solver.Objective().Value()
            : throw new InvalidOperationException("The solver found no optimum.");
    }

    private void Add(MaterialPart part)
    {
        var sum = _solver.MakeConstraint(100, 100);
        Variable? before = null;
        foreach (var constituent in part.Constituents)
        {
            var share = _solver.MakeNumVar((double)constituent.Share.Low.Percent, (double)constituent.Share.High.Percent, "");
            sum.SetCoefficient(share, 1);
            if (!_terms.TryGetValue(constituent.Name, out var terms))
                _terms[constituent.Name] = terms = [];
            terms.Add((share, (double)part.ShareOfProduct));
            if (before is not null)
            {
                var descending = _solver.MakeConstraint(0, double.PositiveInfinity);
                descending.SetCoefficient(before, 1);
                descending.SetCoefficient(share, -1);
            }
            before = share;
        }
    }
}
