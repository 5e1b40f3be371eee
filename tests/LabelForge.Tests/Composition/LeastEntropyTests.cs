using LabelForge.Composition;
using LabelForge.Measures;
using static LabelForge.Tests.Composition.Lists;

namespace LabelForge.Tests.Composition;

/// <summary>The estimate is the composition of least relative entropy to the usual one, of all that the lists allow.</summary>
public class LeastEntropyTests
{
#if MUTATION
    private const int Products = 20;
#else
    private const int Products = 120;
#endif

    [Fact]
    public void Of_random_lists_a_general_convex_solver_finds_no_nearer_composition()
    {
        var random = new Random(8);
        var compared = 0;
        for (var product = 0; product < Products; product++)
        {
            foreach (var part in RandomProducts.Of(random))
            {
                var usual = part.Constituents.Select(_ => Math.Pow(10, random.NextDouble() * 4 - 4)).ToArray();
                var model = new MaterialModel(Usual(part, usual), 0.01m);
                var pieces = model.Pieces
                    .Select(p => ConvexOracle.Least(usual, [.. p.LeastShares.Select(s => (double)s)],
                        [.. p.GreatestShares.Select(s => (double)s)], [.. p.Chain]))
                    .Where(p => p is not null).Select(p => p!.Value).ToArray();
                var nearest = pieces.MinBy(p => p.Value);
                double[] estimate = [.. model.Composition.Select(s => (double)s)];

                Assert.Equal(nearest.Value, LeastEntropy.Entropy(estimate, usual), 1e-6);
                // Two sets may come as near as each other; where one is nearest, it is the same composition.
                if (pieces.Count(p => p.Value < nearest.Value + 1e-5) == 1)
                    Assert.All(estimate.Zip(nearest.At), pair => Assert.Equal(pair.Second, pair.First, 3e-3));
                Assert.Equal(1m, model.Estimate.Sum());
                Assert.All(model.Estimate.Select((s, c) => (s, c)), e => Assert.InRange(e.s, model.Low[e.c], model.High[e.c]));
                compared++;
            }
        }
        Assert.True(compared > Products);
    }

    [Fact]
    public void Where_usual_levels_fit_the_list_the_estimate_is_what_is_usual()
    {
        var part = Usual(Part("Base", 1, ListedOrder.Label, "Water", "Glycerin", "Sorbitol", "Tetrasodium EDTA"),
            [0.6, 0.3, 0.099, 0.001]);

        Assert.All(new MaterialModel(part, 0.01m).Estimate.Zip([0.6m, 0.3m, 0.099m, 0.001m]),
            p => Assert.InRange(p.First - p.Second, -1e-9m, 1e-9m));
    }

    [Fact]
    public void Two_that_are_usually_the_other_way_round_stand_level_at_their_geometric_mean()
    {
        // 0.1 and 0.4 against the order: 0.2 each; 0.6 is left for the first.
        var part = Usual(Part("Base", 1, ListedOrder.Strict, "A", "B", "C"), [0.6, 0.1, 0.4]);

        Assert.All(new MaterialModel(part, 0.01m).Estimate.Zip([0.6m, 0.2m, 0.2m]),
            p => Assert.InRange(p.First - p.Second, -1e-9m, 1e-9m));
    }

    [Fact]
    public void A_figure_of_the_supplier_goes_before_any_usual_level()
    {
        var part = Usual(Part("Base", 1, ListedOrder.Label, "A", "B: 10-12 %", "C: 3 %"), [0.5, 0.4, 0.1]);
        var estimate = new MaterialModel(part, 0.01m).Estimate;

        Assert.InRange(estimate[1], 0.10m, 0.12m);
        Assert.Equal(0.03m, estimate[2]);
    }

    [Fact]
    public void Usual_levels_prove_nothing()
    {
        MaterialPart[] parts = [Part("Base", 0.9m, ListedOrder.Label, "A", "B", "C"), Part("Oil", 0.1m, ListedOrder.Label, "D")];
        var bare = Prover.Prove(parts);
        var usual = Prover.Prove([Usual(parts[0], [0.97, 0.02, 0.01]), parts[1]]);

        Assert.NotEmpty(bare.Unproven);
        Assert.Equal(bare.Unproven.Length, usual.Unproven.Length);
        Assert.All(bare.Ingredients, i => Assert.Equal((i.Low, i.High), (usual.Of(i.Name).Low, usual.Of(i.Name).High)));
    }

    [Fact]
    public void A_place_rests_on_its_weakest_pair()
    {
        var published = Usual(Part("Base", 0.9m, ListedOrder.Label, "A", "B", "C"), [0.7, 0.2, 0.1], "a patent");
        var guessed = Usual(Part("Base", 0.9m, ListedOrder.Label, "A", "B", "C"), [0.7, 0.2, 0.1]);
        var oil = Part("Oil", 0.1m, ListedOrder.Label, "D");

        Assert.Equal(Placed.Usual, Prover.Prove([published, oil]).PlacedOf("D"));
        Assert.Equal(Placed.Guess, Prover.Prove([guessed, oil]).PlacedOf("D"));
        Assert.Equal(Placed.Proved, Prover.Prove([guessed, oil]).PlacedOf("A"));
    }

    private static MaterialPart Usual(MaterialPart part, double[] usual, params string[] sources) => part with
    {
        Constituents = [.. part.Constituents.Select((c, at) => c with { Usual = new UsualShare(usual[at], [.. sources]) })],
    };
}
