using LabelForge.Composition;
using LabelForge.Measures;
using static LabelForge.Tests.Composition.Lists;

namespace LabelForge.Tests.Composition;

/// <summary>What a maker is told where a supplier's figures cannot be true together.</summary>
public class ContradictionTests
{
    [Theory]
    [InlineData("Base: A and B come to at least 110 %, more than the whole.", ListedOrder.None, "A: 60 %", "B: 50 %", "C")]
    [InlineData("Base: A, B and C come to at least 120 %, more than the whole.", ListedOrder.None, "A: 60 %", "B: 50 %", "C: 10 %", "D")]
    [InlineData("Base: A comes to at most 80 %, less than the whole.", ListedOrder.None, "A: 80 %")]
    [InlineData("Base: A (10 %) is listed before B (20 %), which is more.", ListedOrder.Strict, "A: 10 %", "B: 20 %", "C: 70 %")]
    // In a strict order half a percent more is too much; in a label order it may stand anywhere up to 1 %.
    [InlineData("Base: B (0.5 %) is listed before C (0.9 %), which is more.", ListedOrder.Strict, "A: 98.6 %", "B: 0.5 %", "C: 0.9 %")]
    [InlineData("Base: B (0.5 %) is listed before C (1.1 %), which is more.", ListedOrder.Label, "A", "B: 0.5 %", "C: 1.1 %")]
    // A colour additive may stand anywhere in a label order and counts in a strict one.
    [InlineData("Base: A (30 %) is listed before *, which is more.", ListedOrder.Strict, "A: 30 %", "*Mica: 70 %")]
    [InlineData("Base: in the order listed, the figures of A leave no way to sum to 100 %.", ListedOrder.Strict, "A: 20 %", "B", "C")]
    [InlineData("Base: in the order listed, the figures of A and C leave no way to sum to 100 %.", ListedOrder.Strict, "A: 20 %", "B",
        "C: 10-20 %")]
    public void The_constituents_that_clash_are_named_with_their_figures(string wrong, ListedOrder listed, params string[] constituents)
    {
        var problem = Refused(listed, constituents);
        Assert.Equal(wrong.Replace("*", "Mica (70 %)", StringComparison.Ordinal), problem.Wrong);
        Assert.NotEqual("", problem.Write);
    }

    [Theory]
    [InlineData("Lower the figures", ListedOrder.None, "A: 60 %", "B: 50 %")]
    [InlineData("Raise the figures", ListedOrder.None, "A: 60 %", "B: 10 %")]
    [InlineData("listed: none", ListedOrder.Strict, "A: 10 %", "B: 20 %", "C: 70 %")]
    [InlineData("listed: none", ListedOrder.Strict, "A: 20 %", "B", "C")]
    public void What_to_write_instead_is_said(string write, ListedOrder listed, params string[] constituents) =>
        Assert.Contains(write, Refused(listed, constituents).Write);

    [Theory]
    [InlineData(ListedOrder.Label, "A: 98.5 %", "B: 0.5 %", "C: 1 %")]
    [InlineData(ListedOrder.Label, "*Mica: 30 %", "A: 70 %")]
    [InlineData(ListedOrder.Strict, "A: 50 %", "B: 50 %")]
    [InlineData(ListedOrder.None, "A: 10 %", "B: 90 %")]
    public void What_the_order_allows_is_no_contradiction(ListedOrder listed, params string[] constituents) =>
        Assert.Equal(constituents.Length, Prover.Prove([Part("Base", 1, listed, constituents)]).Ingredients.Length);

    [Fact]
    public void A_material_without_a_list_is_refused_by_name()
    {
        var problem = Assert.Throws<InputException>(() => Prover.Prove([new MaterialPart("Base", 1, ListedOrder.None, [])])).Problem;
        Assert.Contains("Base does not say what it contains", problem.Wrong);
        Assert.Contains("under contains", problem.Write);
    }

    [Fact]
    public void A_name_twice_is_refused_with_what_to_write() =>
        Assert.Contains("sum of its figures", Refused(ListedOrder.Label, "A", "A").Write);

    [Theory]
    [InlineData(0.5, 0.4)]
    [InlineData(0.5, 0.6)]
    [InlineData(1.5, -0.5)]
    public void Shares_of_a_product_that_are_negative_or_sum_to_no_whole_are_a_mistake_of_the_caller(double one, double other)
    {
        var said =
            Assert.Throws<ArgumentException>(() => Prover.Prove([Part("A", (decimal)one, ListedOrder.None, "A"),
                Part("B", (decimal)other, ListedOrder.None, "B")]));
        Assert.Contains("sum to 1", said.Message);
    }

    [Fact]
    public void A_material_of_which_nothing_is_used_is_not_in_the_product() =>
        Assert.Equal(["A"], Prover.Prove([Part("All", 1, ListedOrder.None, "A"), Part("None", 0, ListedOrder.None, "B")]).Names());

    [Theory]
    [InlineData(-0.01, "A loss of -1 % Water leaves no batch, or adds to it.")]
    [InlineData(1, "A loss of 100 % Water leaves no batch, or adds to it.")]
    public void A_loss_leaves_a_batch_and_adds_nothing(double lost, string wrong)
    {
        var problem = Lost((decimal)lost, "Water: 40 %");
        Assert.Equal((wrong, "recipes/bar.yaml", 7), (problem.Wrong, problem.File, problem.Line));
        Assert.Contains("less than all of it", problem.Write);
    }

    [Fact]
    public void More_lost_than_was_there_names_where_it_could_have_come_from()
    {
        var problem = Lost(0.5m, "Water: 30-40 %");
        Assert.Equal("50 % of the batch is said to be Water that was lost, but Mix cannot hold more than 40 % of it.", problem.Wrong);
        Assert.Contains("Weigh the batch again", problem.Write);
    }

    [Fact]
    public void All_of_what_was_there_may_be_lost_and_is_not_declared_then()
    {
        var proof = Prover.Prove([Part("Mix", 1, ListedOrder.None, "Water: 40 %", "Oil", "Dye: 0 %")], [new Adjustment("Water", 0.4m)]);
        Assert.Equal(["Oil"], proof.Names());
        Assert.Equal([new AbsentIngredient("Water", true), new AbsentIngredient("Dye", false)], proof.Absent);
    }

    private static Problem Lost(decimal share, string water) => Assert.Throws<InputException>(() =>
        Prover.Prove([Part("Mix", 1, ListedOrder.None, water, "Oil")], [new Adjustment("Water", share, "recipes/bar.yaml", 7)])).Problem;

    private static Problem Refused(ListedOrder listed, params string[] constituents) =>
        Assert.Throws<InputException>(() => Prover.Prove([Part("Base", 1, listed, constituents)])).Problem;
}
