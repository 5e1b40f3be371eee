using Google.OrTools.LinearSolver;
using LabelForge.Composition;

namespace LabelForge.Tests.Composition;

/// <summary>
/// The same questions answered by linear programs (OR-Tools, GLOP) straight from the constraints, in percent:
/// one program for each combination of places of the one-percent line.
/// </summary>
internal sealed class SolverOracle : IDisposable
{
    private const double Clear = 1e-7;

    private readonly IReadOnlyList<MaterialPart> _parts;
    private readonly List<Program> _programs = [];

    public SolverOracle(IReadOnlyList<MaterialPart> parts, string? lost = null, double share = 0,
        IReadOnlyList<NamedBesides>? besides = null)
    {
        _parts = parts;
        Names = [.. parts.SelectMany(p => p.Constituents).Select(c => c.Name).Concat((besides ?? []).Select(b => b.Name)).Distinct()];
        IEnumerable<int[]> combinations = [[]];
        foreach (var part in parts)
        {
            int[] lines = part.Listed == ListedOrder.Label
                ? [.. Enumerable.Range(0, part.Constituents.Count(c => !c.IsColourant) + 1).Where(k => IsPossible(part, k))]
                : IsPossible(part, 0) ? [0] : [];
            combinations = [.. combinations.SelectMany(c => lines.Select(k => (int[])[.. c, k]))];
        }
        foreach (var lines in combinations)
        {
            var program = new Program(parts, lines, Names, lost, share * 100, besides);
            if (program.IsPossible())
                _programs.Add(program);
            else
                program.Dispose();
        }
    }

    public string[] Names { get; }

    public int Combinations => _programs.Count;

    public bool IsPossibleAtAll => _programs.Count > 0;

    public double Low(string name) => _programs.Min(p => -p.Greatest(name, -1));

    public double High(string name) => _programs.Max(p => p.Greatest(name, 1));

    public bool IsColour(string name) => _parts.Any(p => p.Constituents.Any(c => c.Name == name && c.IsColourant));

    /// <summary>Whether no composition has the second clearly over the first and over 1 %.</summary>
    public bool MayPrecede(string first, string second) => !_programs.Exists(p => p.Overtaken(first, second) > Clear);

    public void Dispose() => _programs.ForEach(p => p.Dispose());

    private static bool IsPossible(MaterialPart part, int line)
    {
        using var program = new Program([part with { ShareOfProduct = 1 }], [line], [.. part.Constituents.Select(c => c.Name).Distinct()]);
        return program.IsPossible();
    }

    private sealed class Program : IDisposable
    {
        private readonly Solver _solver = Solver.CreateSolver("GLOP");
        private readonly Dictionary<string, List<(Variable Share, double Part)>> _terms;
        private readonly string? _lost;
        private readonly double _loss;
        private readonly Variable _ahead;
        private readonly Constraint _over;
        private readonly Constraint _overOnePercent;

        public Program(IReadOnlyList<MaterialPart> parts, int[] lines, string[] names, string? lost = null, double loss = 0,
            IReadOnlyList<NamedBesides>? besides = null)
        {
            (_lost, _loss) = (lost, loss);
            _terms = names.ToDictionary(n => n, _ => new List<(Variable, double)>());
            _ahead = _solver.MakeNumVar(-1000, 1000, "ahead");
            _over = _solver.MakeConstraint(double.NegativeInfinity, double.PositiveInfinity);
            _overOnePercent = _solver.MakeConstraint(double.NegativeInfinity, double.PositiveInfinity);
            for (var m = 0; m < parts.Count; m++)
                Add(parts[m], lines[m]);
            if (lost is not null)
            {
                // No more can have left than was there.
                var enough = _solver.MakeConstraint(loss, double.PositiveInfinity);
                foreach (var (share, part) in _terms[lost])
                    enough.SetCoefficient(share, part);
            }
            // Parts named besides what holds them are in nobody's sum.
            foreach (var part in besides ?? [])
                _terms[part.Name]
                    .Add((_solver.MakeNumVar((double)part.Low * 100, (double)part.High * 100, ""), (double)part.ShareOfProduct));
        }

        public bool IsPossible()
        {
            _solver.Objective().Clear();
            return _solver.Solve() == Solver.ResultStatus.OPTIMAL;
        }

        public double Greatest(string name, int sign)
        {
            _over.SetBounds(double.NegativeInfinity, double.PositiveInfinity);
            _overOnePercent.SetBounds(double.NegativeInfinity, double.PositiveInfinity);
            var objective = _solver.Objective();
            objective.Clear();
            foreach (var (share, part) in _terms[name])
                objective.SetCoefficient(share, sign * part);
            return (Solved() - sign * Lost(name)) / (1 - _loss / 100);
        }

        public double Overtaken(string first, string second)
        {
            // w(second) - w(first) - t >= 0 and w(second) - t >= 1 %, in percent of the charged batch
            _over.Clear();
            _overOnePercent.Clear();
            _over.SetBounds(Lost(second) - Lost(first), double.PositiveInfinity);
            _overOnePercent.SetBounds(1 - _loss / 100 + Lost(second), double.PositiveInfinity);
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

        private double Lost(string name) => name == _lost ? _loss : 0;

        public void Dispose() => _solver.Dispose();

        private double Solved()
        {
            _solver.Objective().SetMaximization();
            var status = _solver.Solve();
            return status == Solver.ResultStatus.OPTIMAL
                ? _solver.Objective().Value()
                : throw new InvalidOperationException($"The solver says {status}.");
        }

        private void Add(MaterialPart part, int line)
        {
            var sum = _solver.MakeConstraint(100, 100);
            Variable? before = null;
            var place = 0;
            foreach (var constituent in part.Constituents)
            {
                var share = _solver.MakeNumVar((double)constituent.Share.Low.Percent, (double)constituent.Share.High.Percent, "");
                sum.SetCoefficient(share, 1);
                _terms[constituent.Name].Add((share, (double)part.ShareOfProduct));
                var isOrdered = part.Listed == ListedOrder.Strict || (part.Listed == ListedOrder.Label && !constituent.IsColourant);
                if (!isOrdered)
                    continue;
                if (part.Listed == ListedOrder.Label)
                {
                    var limit = place < line
                        ? _solver.MakeConstraint(1, double.PositiveInfinity)
                        : _solver.MakeConstraint(double.NegativeInfinity, 1);
                    limit.SetCoefficient(share, 1);
                }
                if (before is not null && (part.Listed == ListedOrder.Strict || place < line))
                {
                    var descending = _solver.MakeConstraint(0, double.PositiveInfinity);
                    descending.SetCoefficient(before, 1);
                    descending.SetCoefficient(share, -1);
                }
                before = share;
                place++;
            }
        }
    }
}
