using LabelForge.Checks;
using LabelForge.Composition;
using LabelForge.Declarations;
using LabelForge.Ingredients;
using LabelForge.Markets;
using LabelForge.Measures;
using LabelForge.Quantities;
using LabelForge.Recipes;

namespace LabelForge.Tests.Recipes;

public class LossTests
{
    // The bench's base is 60 % glycerin and 40 % water, so 900 g hold 360 g of water; with 100 g of oil, 1000 g are weighed in.
    [Theory]
    [InlineData("yield: 870 g", 870)]
    [InlineData("loss: 13 % water", 870)]
    [InlineData("loss: 13 % of batch water", 870)]
    [InlineData("loss: 130 g water", 870)]
    [InlineData("loss: 130 g of water", 870)]
    [InlineData("loss: [ 30 g water, 10 % Aqua ]", 870)]
    [InlineData("yield: 1 kg", 1000)]
    public void What_left_the_batch_is_off_the_yield_and_off_each_piece(string said, int grams)
    {
        using var bench = Melted(said);
        var batch = Batch(bench);
        Assert.Equal(1000m, batch.Total.Grams);
        Assert.Equal(grams, batch.Yield.Grams);
        Assert.Equal(grams / 2m, batch.PerPiece.Grams);
        Assert.Equal($"{grams / 2} g", PieceQuantity.Of(batch, Kind(batch)).Mass.ToString());
    }

    [Fact]
    public void Water_boiled_off_leaves_every_other_ingredient_a_greater_share()
    {
        // 540 g glycerin, 360 - 130 = 230 g water and 100 g oil in 870 g.
        using var bench = Melted("yield: 870 g");
        var proof = Proof(bench);
        Assert.Equal(["Glycerin", "Water", "Ricinus Communis (Castor) Seed Oil"], proof.Ingredients.Select(i => i.Name));
        Assert.Equal([540 / 870m, 230 / 870m, 100 / 870m], proof.Ingredients.Select(i => i.Low), SameShare);
        Assert.Equal([540 / 870m, 230 / 870m, 100 / 870m], proof.Ingredients.Select(i => i.High), SameShare);
        Assert.True(proof.IsProved);
    }

    [Theory]
    [InlineData("yield: 630 g", "cannot hold more than 36 %")]
    [InlineData("loss: 400 g water", "cannot hold more than 36 %")]
    [InlineData("loss: 50 % water", "cannot hold more than 36 %")]
    [InlineData("loss: 5 g beeswax", "no material contains it")]
    public void More_leaving_than_was_there_is_refused_at_its_line(string said, string wrong)
    {
        using var bench = Melted(said);
        var problem = Assert.Throws<InputException>(() => Proof(bench)).Problem;
        Assert.Equal(("recipes/bar.yaml", 5), (problem.File, problem.Line));
        Assert.Contains(wrong, problem.Wrong);
    }

    [Theory]
    [InlineData("yield: 1001 g", "more than the 1000 g that went in")]
    [InlineData("yield: 870", "not what a batch weighs")]
    [InlineData("yield: 870 mL", "not what a batch weighs")]
    [InlineData("loss: 100 % water", "leave nothing")]
    [InlineData("loss: 1200 g water", "leave nothing")]
    [InlineData("loss: 3 %", "does not say how much of what")]
    [InlineData("loss: water", "does not say how much of what")]
    [InlineData("loss: -3 % water", "not more than nothing")]
    [InlineData("loss: 3 tsp water", "a volume")]
    [InlineData("loss: 3 stone water", "not a unit")]
    public void A_loss_that_cannot_be_is_refused_at_its_line_with_what_to_write(string said, string wrong)
    {
        using var bench = Melted(said);
        var problem = Assert.Throws<InputException>(() => Batch(bench)).Problem;
        Assert.Equal(("recipes/bar.yaml", 5), (problem.File, problem.Line));
        Assert.Contains(wrong, problem.Wrong);
        Assert.NotEmpty(problem.Write);
    }

    [Fact]
    public void A_yield_and_a_loss_together_are_refused() =>
        Assert.Contains("both say", Assert.Throws<InputException>(() =>
        {
            using var bench = Melted("yield: 870 g\nloss: 3 % water");
            Batch(bench);
        }).Problem.Wrong);

    [Fact]
    public void A_declared_net_quantity_is_held_against_what_is_left()
    {
        // 1000 g in two pieces would hold 440 g each; the 870 g left give only 435 g.
        using var bench = Melted("yield: 870 g\nnet: 440 g");
        Assert.True(Batch(bench).Recipe.Net!.Mass > Batch(bench).PerPiece);
    }

    [Fact]
    public void A_loss_says_something_of_the_one_material_that_could_have_brought_the_water()
    {
        // Half the batch is a list of water and glycerin without figures: 0 to 50 g of water in 100 g. When 20 g of water
        // have left, at least 20 g were there, so glycerin is at most 30 g of the 80 g left.
        using var bench = new BenchFolder()
            .Write("materials/gel.yaml", "name: Gel\nkind: base\nlisted: none\ncontains: [ Water, Glycerin ]\n")
            .Recipe("{ use: gel, amount: 50 g }", "{ use: castor-oil, amount: 50 g }");
        bench.Write("recipes/bar.yaml", File.ReadAllText(Path.Combine(bench.Path, "recipes/bar.yaml")) + "loss: 20 g water\n");
        var proof = Proof(bench);
        var glycerin = proof.Ingredients.Single(i => i.Name == "Glycerin");
        Assert.Equal([0m, 30 / 80m], [glycerin.Low, glycerin.High], SameShare);
        Assert.Equal(PairOrder.FirstForced, proof.Pair(0, proof.Ingredients.IndexOf(glycerin)));
    }

    [Fact]
    public void A_fragrance_is_held_against_its_limit_as_a_share_of_what_is_left()
    {
        // 5 g in 105 g are 4.76 %; when 25 g of water have left, 5 g in 80 g are 6.25 %.
        using var bench = new BenchFolder()
            .Write("materials/scent.yaml", "name: Scent\nkind: fragrance\nlimits: { category 9: 5 % }\n")
            .Recipe("{ use: base, amount: 100 g }", "{ use: scent, amount: 5 g }");
        Assert.Empty(FragranceFindings(bench));
        bench.Write("recipes/bar.yaml", File.ReadAllText(Path.Combine(bench.Path, "recipes/bar.yaml")) + "yield: 80 g\n");
        var finding = Assert.Single(FragranceFindings(bench));
        Assert.Contains("6.25 %", finding.Message);
        // 75 g of the rest bear 75 * 0.05 / 0.95 = 3.947 g.
        Assert.Contains("3.94 g", finding.Fix);
    }

    private static bool SameShare(decimal a, decimal b) => Math.Abs(a - b) < 1e-20m;

    private static BenchFolder Melted(string said)
    {
        var bench = new BenchFolder();
        return bench.Write("recipes/bar.yaml",
            $"name: Bar\nidentity: Bar soap\nproduct: soap-bar\npieces: 2\n{said}\nmaterials:\n  - {{ use: base, amount: 900 g }}\n  - {{ "
                + $"use: castor-oil, amount: 100 g }}\n");
    }

    private static IEnumerable<Finding> FragranceFindings(BenchFolder bench)
    {
        var workshop = Workshop.Open(bench.Path);
        var batch = BatchFormula.Of(workshop, workshop.Recipe("bar"));
        return FragranceCheck.Find(new RecipeFacts(workshop, batch, Kind(batch), null!, null!, []) { On = new DateOnly(2026, 11, 25) });
    }

    private static ProductKind Kind(BatchFormula batch) => ProductKindOf.Recipe(batch.Recipe);

    private static BatchFormula Batch(BenchFolder bench)
    {
        var workshop = Workshop.Open(bench.Path);
        return BatchFormula.Of(workshop, workshop.Recipe("bar"));
    }

    private static CompositionProof Proof(BenchFolder bench) =>
        BatchComposition.Prove(Workshop.Open(bench.Path), Batch(bench), IngredientDictionary.Shipped, Market.Us.On(new(2026, 11, 26)));
}
