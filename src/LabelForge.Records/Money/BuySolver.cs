using Google.OrTools.Sat;
using LabelForge.Records.Books;

namespace LabelForge.Records.Money;

/// <summary>Solves what to buy as an integer program (CP-SAT).</summary>
public static class BuySolver
{
    private const long MostPieces = 100_000;
    private const long MostPacks = 10_000;

    /// <summary>Solves it.</summary>
    /// <param name="seconds">The longest time to look; what is found by then is given, marked as not proved.</param>
    /// <returns>Null where nothing fits: the wanted pieces cost more than the budget, or a material cannot be had.</returns>
    public static BuyPlan? Solve(BuyProblem problem, double seconds = 20)
    {
        if (!WholeProgram.IsThis)
            throw new NeedsWholeProgramException();
        if (problem is { Most: true, BudgetCents: null })
            throw new ArgumentException("The most pieces need a budget.", nameof(problem));
        var scales = problem.Materials.ToDictionary(m => m.Id, m => BuyScale.Of(problem, m));
        var first = Run(problem, seconds, null, scales, needsUp: true);
        // Among the plans that make the most pieces, the cheapest.
        var plan = first is not null && problem.Most
            ? Run(problem, seconds, first.Pieces.Values.Sum(), scales, needsUp: true) is { } second
                ? second with { Optimal = first.Optimal && second.Optimal }
                : first
            : first;
        return plan is { Optimal: true } && scales.Values.Any(s => !s.IsExact)
            ? plan with { Optimal = IsBestOf(problem, plan, seconds, scales) }
            : plan;
    }

    // Where a need has no end of decimals it was rounded up. The plan is the best only if it still is with the needs rounded down.
    private static bool IsBestOf(BuyProblem problem, BuyPlan plan, double seconds, Dictionary<string, BuyScale> scales)
    {
        var made = plan.Pieces.Values.Sum();
        if (problem.Most
            && !(Run(problem, seconds, null, scales, needsUp: false) is { Optimal: true } most && most.Pieces.Values.Sum() <= made))
            return false;
        return Run(problem, seconds, problem.Most ? made : null, scales, needsUp: false) is { Optimal: true } cheapest
            && cheapest.Cents >= plan.Cents;
    }

    private static BuyPlan? Run(BuyProblem problem, double seconds, long? piecesWanted, Dictionary<string, BuyScale> scales, bool needsUp)
    {
        var model = new CpModel();
        var pieces = problem.Products.Select(p => model.NewIntVar(p.Least, problem.Most ? MostPieces : p.Least, p.Id)).ToArray();
        var packs = problem.Materials
            .SelectMany(m => m.Packs.Select(p => (Material: m, Pack: p, Count: model.NewIntVar(0, Bound(problem, p), $"{m.Id} {p.Size}"))))
            .ToArray();
        foreach (var material in problem.Materials)
        {
            var scale = scales[material.Id];
            var has = packs.Where(p => p.Material == material).Select(p => p.Count * scale.Whole(p.Pack.Amount, 1, up: !needsUp)).ToList();
            var takes = problem.Products
                .Select((p, i) => pieces[i] * scale.Whole(p.PerBatch.GetValueOrDefault(material.Id), p.Pieces, up: needsUp));
            model.Add(LinearExpr.Sum(takes) <= LinearExpr.Sum(has) + scale.Whole(material.Stock, 1, up: !needsUp));
        }
        var tools = problem.Tools
            .Select(t => (Tool: t,
                Count: model.NewIntVar(0, t.Cents is null ? 0 : t.Pieces is null || problem.Fillings is null ? 1 : MostPacks, t.Id)))
            .ToArray();
        foreach (var (tool, count) in tools)
            Need(model, problem, tool, count, pieces);
        var cost = LinearExpr.Sum(packs.Select(p => p.Count * p.Pack.Cents).Concat(tools.Select(t => t.Count * (t.Tool.Cents ?? 0))));
        if (problem.BudgetCents is { } budget)
            model.Add(cost <= budget);
        var all = LinearExpr.Sum(pieces);
        if (piecesWanted is { } wanted)
            model.Add(all >= wanted);
        if (problem.Most && piecesWanted is null)
            model.Maximize(all);
        else
            model.Minimize(cost);

        var solver = new CpSolver
        {
            StringParameters = Invariant($"max_time_in_seconds:{seconds} num_search_workers:2 random_seed:1"),
        };
        var status = solver.Solve(model);
        if (status is not (CpSolverStatus.Optimal or CpSolverStatus.Feasible))
            return null;
        var made = problem.Products.Select((p, i) => (p.Id, Count: solver.Value(pieces[i]))).ToDictionary(p => p.Id, p => p.Count);
        var bought = packs.Select(p => (p.Material.Id, p.Pack, Count: solver.Value(p.Count))).Where(p => p.Count > 0).ToArray();
        return new BuyPlan(bought, made,
            bought.Sum(b => b.Count * b.Pack.Cents) + tools.Sum(t => solver.Value(t.Count) * (t.Tool.Cents ?? 0)),
            problem.Materials
                .ToDictionary(m => m.Id,
                    m => m.Stock + bought.Where(b => b.Id == m.Id)
                        .Sum(b => b.Count * b.Pack.Amount) - problem.Products.Sum(p => p.Takes(m.Id, made[p.Id]))),
            status == CpSolverStatus.Optimal)
        { Tools = [.. tools.Select(t => (t.Tool, Count: solver.Value(t.Count))).Where(t => t.Count > 0)] };
    }

    // One is needed as soon as a product is made that needs it; of moulds so many that they are filled no oftener than is wanted.
    private static void Need(CpModel model, BuyProblem problem, BuyTool tool, IntVar count, IntVar[] pieces)
    {
        var made = tool.For.Select(p => pieces[p]).ToArray();
        if (tool.Have == 0 && made.Length > 0)
            model.Add(LinearExpr.Sum(made) <= count * (MostPieces * made.Length));
        if (tool.Pieces is { } each && problem.Fillings is { } fillings)
            model.Add(LinearExpr.Sum(made) <= count * ((long)each * fillings) + (long)tool.PiecesHad * fillings);
    }

    private static long Bound(BuyProblem problem, BuyPack pack) =>
        problem.BudgetCents is { } budget && pack.Cents > 0 ? Math.Min(MostPacks, budget / pack.Cents) : MostPacks;
}
