using LabelForge.Composition;
using LabelForge.Measures;

namespace LabelForge.Tests.Composition;

public class AgainstSolverTests
{
#if MUTATION
    private const int Products = 100;
#else
    private const int Products = 500;
#endif

    private const double Percent = 1e-6;
    private const decimal CompositionTolerance = 1e-15m;

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    public void Every_bound_and_every_pair_of_random_products_is_what_a_linear_solver_finds(int seed)
    {
        var random = new Random(seed);
        var (pairs, unsafePairs, lines) = (0, 0, 0);
        for (var product = 0; product < Products; product++)
        {
            // Every other product has several substances of one name, and parts that are named besides what holds them.
            var sameNames = product % 2 == 1;
            var parts = sameNames ? RandomProducts.OfSameNames(random) : RandomProducts.Of(random);
            var besides = sameNames ? RandomProducts.Besides(random, parts) : [];
            using var oracle = new SolverOracle(parts, besides: besides);
            lines += oracle.Combinations;
            var proof = Prover.Prove(parts, [], besides);
            Assert.Equal(oracle.Names.Where(n => oracle.High(n) > Percent).Order(), proof.Ingredients.Select(i => i.Name).Order());
            foreach (var ingredient in proof.Ingredients)
            {
                // What is counted besides adds no weight, so a sum with it may pass the whole; it is shown as the whole.
                Assert.Equal(Math.Min(100, oracle.Low(ingredient.Name)), (double)ingredient.Low * 100, Percent);
                Assert.Equal(Math.Min(100, oracle.High(ingredient.Name)), (double)ingredient.High * 100, Percent);
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
                    Assert.True(safe == proof.MayPrecede(i, j),
                        $"seed {seed}, product {product}: {first.Name} before {second.Name}: solver {safe}");
                }
            }
            // A pair that stands in an order some composition breaks is one that neither order would save, and is reported.
            var standing = Enumerable.Range(0, proof.Ingredients.Length).SelectMany(j => Enumerable.Range(0, j).Select(i => (i, j)))
                .Where(p => !proof.MayPrecede(p.i, p.j)).ToArray();
            Assert.All(standing, p => Assert.Equal(PairOrder.Unproven, proof.Pair(p.i, p.j)));
            Assert.Equal(
                standing.Select(p => (proof.Ingredients[p.i].Name, proof.Ingredients[p.j].Name)).Order(),
                proof.Unproven.Select(u => (u.First, u.Second)).Order());
        }
        // The products are no empty show: both verdicts occur often, and so do several places of the one-percent line.
        Assert.InRange(unsafePairs, pairs / 10, pairs * 9 / 10);
        Assert.True(lines > 2 * Products);
    }

    [Fact]
    public void Water_boiled_off_never_proves_more_than_a_linear_solver_and_as_much_where_one_material_alone_leaves_its_water_open()
    {
        var random = new Random(6);
        var (exact, widened, cut, loose) = (0, 0, 0, 0);
        for (var product = 0; product < Products; product++)
        {
            var parts = RandomProducts.Of(random);
            var charged = Prover.Prove(parts);
            var water = charged.Ingredients[random.Next(charged.Ingredients.Length)];
            var lost = Math.Min(0.5m, Math.Round((random.Next(2) == 0 ? water.Low : water.High) * random.Next(1, 100) / 100m, 4));
            if (water.High < lost + 0.0001m)
                continue;
            var proof = Prover.Prove(parts, [new Adjustment(water.Name, lost)]);
            using var oracle = new SolverOracle(parts, water.Name, (double)lost);
            var open = parts.Count(p => p.Constituents.Any(c => c.Name == water.Name)
                && Prover.Prove([p with { ShareOfProduct = 1 }]).Ingredients.SingleOrDefault(i => i.Name == water.Name) is { } alone
                && alone.Low < alone.High);
            var isExact = water.Low >= lost || open <= 1;
            cut += water.Low < lost && open == 1 ? 1 : 0;
            (exact, widened) = isExact ? (exact + 1, widened) : (exact, widened + 1);
            for (var i = 0; i < proof.Ingredients.Length; i++)
            {
                var first = proof.Ingredients[i];
                var (low, high) = (oracle.Low(first.Name), oracle.High(first.Name));
                Assert.True((double)first.Low * 100 <= low + Percent && (double)first.High * 100 >= high - Percent);
                Assert.True(first.IsTight || !isExact, $"product {product}: {first.Name}");
                loose += first.IsTight ? 0 : 1;
                if (first.IsTight)
                {
                    Assert.Equal(low, (double)first.Low * 100, Percent);
                    Assert.Equal(high, (double)first.High * 100, Percent);
                }
                for (var j = 0; j < proof.Ingredients.Length; j++)
                {
                    if (i == j
                        || first.Part == LabelForge.Composition.Part.Colour
                        || proof.Ingredients[j].Part == LabelForge.Composition.Part.Colour)
                        continue;
                    var safe = oracle.MayPrecede(first.Name, proof.Ingredients[j].Name);
                    Assert.True(proof.MayPrecede(i, j) == safe || (safe && !isExact),
                        $"product {product}: {first.Name} before {proof.Ingredients[j].Name}: solver {safe}");
                }
            }
        }
        Assert.True(exact > Products / 10 && widened > Products / 25 && cut > Products / 25 && loose > Products / 50,
            $"{exact} exact, of them {cut} cut down; {widened} widened, {loose} bounds not tight");
    }

    [Fact]
    public void A_list_is_refused_exactly_where_a_linear_solver_finds_no_composition()
    {
        var random = new Random(5);
        var refused = 0;
        for (var product = 0; product < Products; product++)
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
        Assert.InRange(refused, Products / 10, Products * 9 / 10);
    }
}
