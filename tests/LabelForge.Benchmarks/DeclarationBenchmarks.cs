using System.Collections.Immutable;
using BenchmarkDotNet.Attributes;
using LabelForge.Composition;

namespace LabelForge.Benchmarks;

/// <summary>Bounds, every pair, the order and what to ask, from five suppliers' lists.</summary>
public class DeclarationBenchmarks
{
    private ImmutableArray<MaterialPart> _strict;
    private ImmutableArray<MaterialPart> _label;

    /// <summary>How many ingredients the product has.</summary>
    [Params(10, 60, 200)]
    public int Ingredients { get; set; }

    [GlobalSetup]
    public void Setup()
    {
        _strict = Instances.Of(Ingredients, ListedOrder.Strict);
        _label = Instances.Of(Ingredients, ListedOrder.Label);
    }

    /// <summary>Lists in descending order throughout.</summary>
    [Benchmark]
    public CompositionProof Strict() => Prover.Prove(_strict);

    /// <summary>The same lists trusted as labels only: each is a union over the places of the one-percent line.</summary>
    [Benchmark]
    public CompositionProof Label() => Prover.Prove(_label);
}
