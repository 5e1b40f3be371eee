using System.Collections.Immutable;
using BenchmarkDotNet.Attributes;
using LabelForge.Composition;

namespace LabelForge.Benchmarks;

/// <summary>The bounds and pairs of the strict lists, by a general solver; no order and no questions.</summary>
public class SolverBenchmarks
{
    private ImmutableArray<MaterialPart> _strict;

    // Not 200: some 40,000 programs take minutes, and the way the time grows shows at 60.
    /// <summary>How many ingredients the product has.</summary>
    [Params(10, 60)]
    public int Ingredients { get; set; }

    [GlobalSetup]
    public void Setup()
    {
        _strict = Instances.Of(Ingredients, ListedOrder.Strict);
        Compare();
    }

    /// <summary>One linear program for each bound and pair.</summary>
    [Benchmark]
    public int Glop()
    {
        using var solver = new GeneralSolver(_strict);
        return solver.Solve().Count(s => s.Value);
    }

    // Times of two ways are worth comparing only where the two ways agree.
    private void Compare()
    {
        using var solver = new GeneralSolver(_strict);
        var proof = Prover.Prove(_strict);
        string[] names = [.. proof.Ingredients.Select(i => i.Name)];
        foreach (var ((first, second), safe) in solver.Solve())
        {
            if (proof.MayPrecede(Array.IndexOf(names, first), Array.IndexOf(names, second)) != safe)
                throw new InvalidOperationException($"The two ways disagree on {first} before {second}.");
        }
    }
}
