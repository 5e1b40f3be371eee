using LabelForge.Composition;
using static LabelForge.Tests.Composition.Lists;

namespace LabelForge.Tests.Composition;

/// <summary>The one figure that a maker is told to ask a supplier for.</summary>
public class QuestionTests
{
    // 3 g of oil in 100 g of which 90 are base: the two weigh the same at 3/90 of the base.
    [Fact]
    public void Where_nothing_else_is_unknown_the_figure_alone_settles_it()
    {
        var ask = About("Sorbitol", Base("Sorbitol: 1-10 %", "Glycerin: 90-99 %"),
            Part("Oil", 0.1m, ListedOrder.None, "Castor: 30 %", "Shea: 70 %"));
        Assert.Equal(("Base", "Sorbitol", 0.03m / 0.9m, "Castor", true),
            (ask.Material, ask.Constituent, ask.TurnsAt, ask.Other, ask.IsExact));
        Assert.Equal("Ask the supplier of Base for the share of Sorbitol: above 3.33 % it stands before Castor, below it after.",
            ask.Sentence);
    }

    // Castor is 20 to 40 % of the oil, so 2 to 4 g: 3 g as estimated. The base's range is the wider, 0.9 to 9 g.
    [Fact]
    public void Where_the_other_is_a_range_too_the_wider_is_asked_for_and_the_figure_is_about()
    {
        var ask = About("Sorbitol", Base("Sorbitol: 1-10 %", "Glycerin: 90-99 %"),
            Part("Oil", 0.1m, ListedOrder.None, "Castor: 20-40 %", "Shea: 60-80 %"));
        Assert.Equal(("Base", "Sorbitol", false), (ask.Material, ask.Constituent, ask.IsExact));
        Assert.Equal("Ask the supplier of Base for the share of Sorbitol: above about 3.33 % it stands before Castor, below it after.",
            ask.Sentence);
    }

    // Now the base's range is the narrower, 2.7 to 3.6 g, and the oil's 0 to 6.
    [Fact]
    public void The_supplier_whose_range_weighs_more_is_asked()
    {
        var ask = About("Sorbitol", Base("Sorbitol: 3-4 %", "Glycerin: 96-97 %"),
            Part("Oil", 0.1m, ListedOrder.None, "Castor: 0-60 %", "Shea: 40-100 %"));
        Assert.Equal(("Oil", "Castor", "Sorbitol"), (ask.Material, ask.Constituent, ask.Other));
        // 3.5 % of 90 g are 3.15 g, of 10 g of oil 31.5 %.
        Assert.Equal(0.315m, ask.TurnsAt);
        Assert.Equal("Ask the supplier of Oil for the share of Castor: above about 31.5 % it stands before Sorbitol, below it after.",
            ask.Sentence);
    }

    // Glycerin comes from both: 4 g of it stand beside the base's 0.9 to 9 g of sorbitol, and the
    // base's own glycerin counts on the other side.
    [Fact]
    public void What_other_materials_bring_of_the_two_is_counted()
    {
        var ask = About("Sorbitol", Base("Sorbitol: 1-10 %", "Castor: 1 %", "Glycerin: 89-98 %"),
            Part("Oil", 0.1m, ListedOrder.None, "Castor: 40 %", "Shea: 60 %"));
        Assert.Equal(4.9m / 90m, ask.TurnsAt!.Value, 20);
    }

    // Glycerin was lost by 2 g: the same 3 g of oil are met at 5 g in the base.
    [Fact]
    public void What_was_lost_is_counted()
    {
        var proof = Prover.Prove([Base("Sorbitol: 1-10 %", "Glycerin: 90-99 %"),
            Part("Oil", 0.1m, ListedOrder.None, "Castor: 30 %", "Shea: 70 %")], [new Adjustment("Sorbitol", 0.009m)]);
        var ask = proof.Unproven.Single(u => u.First == "Sorbitol" || u.Second == "Sorbitol" && u.First == "Castor").Ask;
        Assert.Equal(0.039m / 0.9m, ask.TurnsAt!.Value, 20);
    }

    [Fact]
    public void What_the_other_one_lost_is_counted_too()
    {
        var proof = Prover.Prove([Base("Sorbitol: 1-10 %", "Glycerin: 90-99 %"),
            Part("Oil", 0.1m, ListedOrder.None, "Castor: 30 %", "Shea: 70 %")], [new Adjustment("Castor", 0.01m)]);
        var ask = proof.Unproven.Single(u => u.First == "Sorbitol" || u.Second == "Sorbitol" && u.First == "Castor").Ask;
        Assert.Equal(0.02m / 0.9m, ask.TurnsAt!.Value, 20);
    }

    [Fact]
    public void Where_no_figure_alone_would_turn_it_that_is_said()
    {
        var ask = new Ask("Base", "Sorbitol", null, "Castor", false);
        Assert.Equal("Ask the supplier of Base for the share of Sorbitol; alone it may not settle whether it stands before Castor.",
            ask.Sentence);
        Assert.Equal("Ask the suppliers of Base for its water; it narrows sorbitol.",
            (ask with { OtherFigure = "its water" }).SentenceWith(n => n.ToLowerInvariant()));
    }

    [Theory]
    [InlineData(0.5, "50 %")]
    [InlineData(0.12345, "12.3 %")]
    [InlineData(0.1, "10 %")]
    [InlineData(0.0999, "9.99 %")]
    [InlineData(0.033333, "3.33 %")]
    [InlineData(0.01, "1 %")]
    [InlineData(0.0033333, "0.333 %")]
    [InlineData(0.00033333, "0.0333 %")]
    [InlineData(0, "0 %")]
    public void A_figure_is_asked_for_to_three_digits_that_count(double fraction, string percent) =>
        Assert.Equal(percent, Question.Percent((decimal)fraction));

    private static MaterialPart Base(params string[] constituents) => Part("Base", 0.9m, ListedOrder.None, constituents);

    private static Ask About(string ingredient, params MaterialPart[] parts) =>
        Prover.Prove(parts).Unproven
            .Single(u => (u.First, u.Second) is var (a, b) && (a, b) == (ingredient, "Castor")
                || (u.First, u.Second) == ("Castor", ingredient)).Ask;
}
