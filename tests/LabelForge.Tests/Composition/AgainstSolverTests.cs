using LabelForge.Composition;
using LabelForge.Measures;

namespace LabelForge.Tests.Composition;

public class AgainstSolverTests
{
    private const double Percent = 1e-6;

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    public void Every_bound_and_every_pair_of_random_products_is_what_a_linear_solver_finds(int seed)
    {
        var random = new Random(seed);
        var (pairs, unsafePairs, lines) = (0, 0, 0);
        for (var product = 0; product < 500; product++)
        {
            var parts = RandomProducts.Of(random);
            using var oracle = new SolverOracle(parts);
            lines += oracle.Combinations;
            var proof = Prover.Prove(parts);
            foreach (var ingredient in proof.Ingredients)
            {
                Assert.Equal(oracle.Low(ingredient.Name), (double)ingredient.Low * 100, Percent);
                Assert.Equal(oracle.High(ingredient.Name), (double)ingredient.High * 100, Percent);
                Assert.InRange(ingredient.Estimate, ingredient.Low - CompositionTolerance, ingredient.High + CompositionTolerance);
            }
            for (var i = 0; i < proof.Ingredients.Length; i++)
            {
                for (var j = 0; j < proof.Ingredients.Length; j++)
                {
                    var (first, second) = (proof.Ingredients[i], proof.Ingredients[j]);
                    if (i == j || first.Part == LabelForge.Composition.Part.Colour || second.Part == LabelForge.Composition.Part.Colour)
                        continue;
                    pairs++;
                    var safe = oracle.MayPrecede(first.Name, second.Name);
                    unsafePairs += safe ? 0 : 1;
                    Assert.True(safe == proof.MayPrecede(i, j), $"seed {seed}, product {product}: {first.Name} before {second.Name}: solver {safe}");
                }
            }
            Assert.Equal(proof.IsProved, proof.Unproven.IsEmpty);
        }
        // The products are no empty show: both verdicts occur often, and so do several places of the one-percent line.
        Assert.InRange(unsafePairs, pairs / 10, pairs * 9 / 10);
        Assert.True(lines > 1000);
    }

    [Fact]
    public void A_list_is_refused_exactly_where_a_linear_solver_finds_no_composition()
    {
        var random = new Random(5);
        var refused = 0;
        for (var product = 0; product < 500; product++)
        {
            // The order of one list is turned round: often, not always, a contradiction.
            var parts = RandomProducts.Of(random);
            parts[0] = parts[0] with { Constituents = [.. parts[0].Constituents.Reverse()] };
            using var oracle = new SolverOracle(parts);
            var error = Record.Exception(() => Prover.Prove(parts));
            Assert.Equal(oracle.IsPossibleAtAll, error is null);
            if (error is null)
                continue;
            Assert.Contains("Material 0", Assert.IsType<InputException>(error).Message, StringComparison.Ordinal);
            refused++;
        }
        Assert.InRange(refused, 50, 450);
    }

    private const decimal CompositionTolerance = 1e-15m;
}
