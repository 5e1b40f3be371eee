using LabelForge.Composition;
using LabelForge.Measures;
using static LabelForge.Tests.Composition.Lists;

namespace LabelForge.Tests.Composition;

public class ProverTests
{
    [Fact]
    public void A_recipe_with_all_figures_known_stands_in_order_of_weight()
    {
        // Oil 60 % is A 100 %; blend 40 % is B 70 % (28 % of the product), A 30 % (12 %): A 72 %, B 28 %.
        var proof = Prover.Prove([Part("Blend", 0.4m, ListedOrder.Strict, "B: 70 %", "A: 30 %"),
            Part("Oil", 0.6m, ListedOrder.None, "A")]);
        Assert.Equal(["A", "B"], proof.Names());
        Assert.Equal((0.72m, 0.72m, 0.72m), (proof.Of("A").Low, proof.Of("A").High, proof.Of("A").Estimate));
        Assert.Equal(0.28m, proof.Of("B").High);
        Assert.True(proof.IsProved);
        Assert.Equal(PairOrder.FirstForced, proof.Pair("A", "B"));
    }

    [Fact]
    public void Three_names_in_strict_order_have_the_bounds_of_a_descending_list()
    {
        // x1 >= x2 >= x3 >= 0 with sum 1: x1 from 1/3 to 1, x2 from 0 to 1/2, x3 from 0 to 1/3.
        var proof = Prover.Prove([Part("Base", 1, ListedOrder.Strict, "A", "B", "C")]);
        Assert.Equal(["A", "B", "C"], proof.Names());
        Assert.Equal([1 / 3m, 0, 0], proof.Ingredients.Select(i => Math.Round(i.Low, 28)));
        Assert.Equal([1m, 0.5m, 1 / 3m], proof.Ingredients.Select(i => Math.Round(i.High, 28)));
        Assert.True(proof.IsProved);
    }

    [Fact]
    public void In_a_label_order_the_first_can_be_all_and_what_follows_may_stand_under_one_percent_in_any_order()
    {
        // A is least where all three weigh the same (1/3). C can be 1 % and B none, but C cannot be over 1 % and over B.
        var proof = Prover.Prove([Part("Base", 1, ListedOrder.Label, "A", "B", "C")]);
        Assert.Equal(1 / 3m, Math.Round(proof.Of("A").Low, 28));
        Assert.Equal(1m, proof.Of("A").High);
        Assert.Equal(PairOrder.FirstForced, proof.Pair("B", "C"));
        Assert.True(proof.IsProved);
    }

    [Fact]
    public void An_order_that_means_nothing_proves_nothing()
    {
        var proof = Prover.Prove([Part("Base", 1, ListedOrder.None, "A", "B")]);
        Assert.Equal(PairOrder.Unproven, proof.Pair("A", "B"));
        Assert.False(proof.IsProved);
    }

    [Fact]
    public void An_oil_inside_the_range_of_a_base_constituent_is_unproven_and_the_turning_share_is_asked_for()
    {
        // Base 90 %: Water 60-70 %, Sorbitol 1-10 %, the rest Glycerin. Castor oil 3 %, Shea butter 7 %.
        // Sorbitol 0.9-9 % against castor oil 3 %: equal at 3/90 = 3.33 % of the base.
        var proof = Prover.Prove([
            Part("Clear base", 0.9m, ListedOrder.None, "Water: 60-70 %", "Sorbitol: 1-10 %", "Glycerin: 25-35 %"),
            Part("Castor oil", 0.03m, ListedOrder.None, "Castor"),
            Part("Shea butter", 0.07m, ListedOrder.None, "Shea: 100 %")]);
        var pair = Assert.Single(proof.Unproven, u => u.First == "Castor" || u.Second == "Castor");
        Assert.Equal(("Clear base", "Sorbitol"), (pair.Ask.Material, pair.Ask.Constituent));
        Assert.Equal(0.03m / 0.9m, pair.Ask.TurnsAt);
        Assert.Equal("Ask the supplier of Clear base for the share of Sorbitol: above 3.33 % it stands before Castor, below it after.",
            pair.Ask.Sentence);
        Assert.Equal(PairOrder.Unproven, proof.Pair("Sorbitol", "Castor"));
    }

    [Fact]
    public void The_figure_asked_for_settles_the_pair()
    {
        CompositionProof With(string sorbitol) => Prover.Prove([
            Part("Clear base", 0.9m, ListedOrder.None, "Water: 60-70 %", sorbitol, "Glycerin: 25-35 %"),
            Part("Castor oil", 0.1m, ListedOrder.None, "Castor: 30 %", "Shea: 70 %")]);
        Assert.Equal(PairOrder.Unproven, With("Sorbitol: 1-10 %").Pair("Sorbitol", "Castor"));
        Assert.Equal(PairOrder.FirstForced, With("Sorbitol: 3.4 %").Pair("Sorbitol", "Castor"));
        Assert.Equal(PairOrder.SecondForced, With("Sorbitol: 3.3 %").Pair("Sorbitol", "Castor"));
    }

    [Fact]
    public void What_cannot_exceed_one_percent_follows_in_any_order_and_colours_stand_last()
    {
        // The preservative is at most 1 % of 50 %; the mica 3 % of the product, yet a colour.
        var proof = Prover.Prove([
            Part("Mica", 0.03m, ListedOrder.Label, "*Mica: 60 %", "*Titanium Dioxide: 40 %"),
            Part("Base", 0.5m, ListedOrder.Label, "Water", "Glycerin: 30 %", "Preservative: <= 1 %"),
            Part("Oil", 0.465m, ListedOrder.None, "Oil"),
            Part("Vitamin E", 0.005m, ListedOrder.None, "Tocopherol")]);
        Assert.Equal(LabelForge.Composition.Part.Main, proof.Of("Oil").Part);
        Assert.Equal([LabelForge.Composition.Part.Main, LabelForge.Composition.Part.Main, LabelForge.Composition.Part.Main,
            LabelForge.Composition.Part.Minor, LabelForge.Composition.Part.Minor, LabelForge.Composition.Part.Colour,
            LabelForge.Composition.Part.Colour], proof.Ingredients.Select(i => i.Part));
        Assert.Equal(PairOrder.SafeBothWays, proof.Pair("Preservative", "Tocopherol"));
        Assert.Equal(PairOrder.SafeBothWays, proof.Pair("Mica", "Titanium Dioxide"));
        Assert.Equal(PairOrder.FirstForced, proof.Pair("Tocopherol", "Mica"));
        Assert.True(proof.IsProved);
    }

    [Fact]
    public void A_colourant_takes_no_part_in_a_label_order_but_does_in_a_strict_one()
    {
        // Listed last at 40 %: lawful for a colour in a label list, a contradiction where the order is strict.
        Assert.Equal(0.6m,
            Prover.Prove([Part("Mica", 1, ListedOrder.Label, "Mica powder", "Silica: 5 %", "*Iron Oxide: 35 %")]).Of("Mica powder").High);
        Assert.Throws<InputException>(
            () => Prover.Prove([Part("Mica", 1, ListedOrder.Strict, "Mica powder", "Silica: 5 %", "*Iron Oxide: 35 %")]));
    }

    [Fact]
    public void An_ingredient_of_two_lists_is_added_up()
    {
        // Base 80 %: Water then Glycerin, strict: Glycerin 0-50 % of it. Extract 20 %: Glycerin 70 %, Water 30 %.
        // Glycerin 14 % to 14 + 40 = 54 %; Water 6 + 40 = 46 % to 6 + 80 = 86 %; w(G) - w(W) is at most 14 - 6 = 8 %, so unproven.
        var proof = Prover.Prove([Part("Base", 0.8m, ListedOrder.Strict, "Water", "Glycerin"),
            Part("Extract", 0.2m, ListedOrder.None, "Glycerin: 70 %", "Water: 30 %")]);
        Assert.Equal((0.14m, 0.54m), (proof.Of("Glycerin").Low, proof.Of("Glycerin").High));
        Assert.Equal((0.46m, 0.86m), (proof.Of("Water").Low, proof.Of("Water").High));
        Assert.Equal(PairOrder.Unproven, proof.Pair("Water", "Glycerin"));
    }

    [Fact]
    public void Water_boiled_off_leaves_the_rest_a_greater_share()
    {
        // 100 g: 40 g water, 60 g oil; 10 g boiled off: 30/90 and 60/90.
        var proof = Prover.Prove([Part("Mix", 1, ListedOrder.None, "Water: 40 %", "Oil: 60 %")], [new Adjustment("Water", 0.1m)]);
        Assert.Equal(1 / 3m, Math.Round(proof.Of("Water").High, 28));
        Assert.Equal(2 / 3m, Math.Round(proof.Of("Oil").Low, 28));
    }

    [Fact]
    public void More_water_boiled_off_than_there_can_be_is_refused()
    {
        var error = Assert.Throws<InputException>(() => Prover.Prove([Part("Mix", 1, ListedOrder.None, "Water: 5-8 %", "Oil")],
            [new Adjustment("Water", 0.1m)]));
        Assert.Contains("Water", error.Message, StringComparison.Ordinal);
        Assert.Contains("8 %", error.Message, StringComparison.Ordinal);
        Assert.Throws<InputException>(() => Prover.Prove([Part("Mix", 1, ListedOrder.None, "Oil")], [new Adjustment("Water", 0.1m)]));
    }

    [Theory]
    [InlineData(ListedOrder.None, "at least 110 %", "A: 60 %", "B: >= 50 %", "C")]
    [InlineData(ListedOrder.None, "at most 80 %", "A: 50 %", "B: 10-30 %")]
    [InlineData(ListedOrder.Strict, "A (<= 10 %) is listed before B", "A: 10 %", "B: 20 %", "C: 70 %")]
    [InlineData(ListedOrder.Label, "is listed before C", "A: 60 %", "B: 0.5 %", "C: 2-5 %", "D")]
    [InlineData(ListedOrder.Strict, "no way to sum to 100 %", "A: 20 %", "B", "C")]
    public void Figures_that_no_composition_can_meet_are_refused_by_name(ListedOrder listed, string says, params string[] constituents)
    {
        var error = Assert.Throws<InputException>(() => Prover.Prove([Part("Odd base", 1, listed, constituents)]));
        Assert.Contains(says.Replace("<= ", "", StringComparison.Ordinal), error.Message, StringComparison.Ordinal);
        Assert.StartsWith("Odd base", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_name_twice_in_one_list_is_refused()
        =>
        Assert.Contains("Glycerin twice",
            Assert.Throws<InputException>(() => Prover.Prove([Part("Base", 1, ListedOrder.Label, "Glycerin", "Glycerin")])).Message,
            StringComparison.Ordinal);

    [Fact]
    public void What_is_forced_stands_first_even_where_the_estimate_says_otherwise()
    {
        // B is 0 to 1.2 % and C 0.7 to 1.1 %: halfway, B 0.6 % and C 0.9 %. Yet where C is over 1 %, so is B, and over C;
        // and B may be over 1 % and over C.
        var proof = Prover.Prove([Part("Base", 1, ListedOrder.Label, "A", "B: 0-1.2 %", "C: 0.7-1.1 %")]);
        Assert.True(proof.Of("B").Estimate < proof.Of("C").Estimate);
        Assert.Equal(PairOrder.FirstForced, proof.Pair("B", "C"));
        Assert.Equal(["A", "B", "C"], proof.Names());
        Assert.True(proof.IsProved);
    }

    [Fact]
    public void Only_what_is_left_after_a_loss_counts_towards_one_percent()
    {
        // Up to 1 % of the list B may stand over A. Of 100 g at most 1 g of B is so, and 0.2 g of it left: 0.8 g in 99.8 g.
        var list = Part("Base", 1, ListedOrder.Label, "Main", "A", "B: 0.3-5 %");
        Assert.Equal(PairOrder.FirstForced, Prover.Prove([list], [new Adjustment("B", 0.002m)]).Pair("A", "B"));
    }

    [Fact]
    public void Exactly_one_percent_follows_in_any_order_and_more_does_not()
    {
        var proof = Prover.Prove([Part("Base", 1, ListedOrder.None, "A: 97.8 %", "B: 1 %", "C: 1.2 %")]);
        Assert.Equal((LabelForge.Composition.Part.Minor, LabelForge.Composition.Part.Main), (proof.Of("B").Part, proof.Of("C").Part));
    }
}
