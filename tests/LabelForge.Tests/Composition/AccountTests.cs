using LabelForge.Composition;
using static LabelForge.Tests.Composition.Lists;

namespace LabelForge.Tests.Composition;

public class AccountTests
{
    [Theory]
    [InlineData(11)]
    [InlineData(12)]
    public void An_ingredients_bounds_are_the_sum_of_its_sources(int seed)
    {
        var random = new Random(seed);
        for (var product = 0; product < 200; product++)
        {
            var parts = RandomProducts.Of(random);
            var accounts = IngredientAccount.Of(parts).ToDictionary(a => a.Ingredient);
            var proof = Prover.Prove(parts);
            Assert.Equal(accounts.Count, proof.Ingredients.Length + proof.Absent.Length);
            foreach (var ingredient in proof.Ingredients)
            {
                var sources = accounts[ingredient.Name].Sources;
                Assert.Equal(Math.Round(ingredient.Low, 20), Math.Round(sources.Sum(s => s.ShareOfBatch * s.Low), 20));
                Assert.Equal(Math.Round(ingredient.High, 20), Math.Round(sources.Sum(s => s.ShareOfBatch * s.High), 20));
            }
        }
    }

    [Fact]
    public void A_source_is_shown_by_its_place_in_its_suppliers_list()
    {
        var accounts = IngredientAccount.Of([Part("Mix", 0.6m, ListedOrder.Label, "Water: 60 %", "Oil", "Clay: 5 %"),
            Part("Oil", 0.4m, ListedOrder.None, "Oil")]);
        var oil = accounts.Single(a => a.Ingredient == "Oil").Sources;
        Assert.Equal([("Mix", 2, 3, ListedOrder.Label), ("Oil", 1, 1, ListedOrder.None)],
            oil.Select(s => (s.Material, s.Place, s.Length, s.Listed)));
        Assert.Equal([0.6m, 0.4m], oil.Select(s => s.ShareOfBatch));
    }

    [Fact]
    public void A_loss_is_taken_off_and_the_rest_is_what_is_left()
    {
        // 100 g with 40 g water; 10 g boiled off: 30/90.
        var water = IngredientAccount.Of([Part("Mix", 1, ListedOrder.None, "Water: 40 %", "Oil: 60 %")], [new Adjustment("Water", 0.1m)])
            .Single(a => a.Ingredient == "Water");
        Assert.Equal((0.1m, 0.9m), (water.Lost, water.Left));
        Assert.Equal(0.4m, water.Sources.Single().Low);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void A_reason_is_given_only_where_it_holds(int seed)
    {
        var random = new Random(seed);
        var seen = new HashSet<PairReason>();
        for (var product = 0; product < 300; product++)
        {
            var parts = RandomProducts.Of(random);
            var accounts = IngredientAccount.Of(parts).ToDictionary(a => a.Ingredient);
            var proof = Prover.Prove(parts);
            var shares = proof.Ingredients.Where(i => i.Part != LabelForge.Composition.Part.Colour).ToArray();
            for (var i = 0; i < shares.Length; i++)
            {
                for (var j = 0; j < shares.Length; j++)
                {
                    if (i == j)
                        continue;
                    var reason = PairReasons.Of(shares[i], shares[j], accounts[shares[i].Name], accounts[shares[j].Name]);
                    // The plain reasons are each enough: where one is given, the prover must call the order safe.
                    if (reason != PairReason.WorstCase)
                        Assert.True(proof.MayPrecede(i, j),
                            $"seed {seed}, product {product}: {shares[i].Name} before {shares[j].Name}: {reason}");
                    seen.Add(reason);
                }
            }
        }
        Assert.Equal(Enum.GetValues<PairReason>().Length, seen.Count);
    }
}
