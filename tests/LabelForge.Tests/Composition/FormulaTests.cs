using LabelForge.Formulas;
using LabelForge.Ingredients.Levels;

namespace LabelForge.Tests.Composition;

/// <summary>The estimate on published formulas given back as bare lists; figures of the same run stand in docs/order.md.</summary>
public sealed class FormulaTests
{
    [Fact]
    public void Learned_levels_are_what_the_learning_formulas_say()
    {
        Assert.Equal(Table("family-levels"), Learning.FamilyTable(PublishedFormula.ToLearnFrom, IngredientDictionary.Shipped.Levels));
        Assert.Equal(Table("place-levels"), Learning.PlaceTable(PublishedFormula.ToLearnFrom));
    }

    [Fact]
    public void A_formula_comes_to_a_hundred_percent_and_names_its_source()
    {
        Assert.True(PublishedFormula.All.Length > 50);
        Assert.True(PublishedFormula.Aside.Length >= 15);
        Assert.All(PublishedFormula.All, f =>
        {
            Assert.InRange(f.Ingredients.Sum(i => i.Percent), 98, 101);
            Assert.NotEmpty(f.Source);
        });
    }

    [Fact]
    public void On_formulas_never_learned_from_open_pairs_stand_right_far_more_often_than_by_the_middle()
    {
        var (middle, usual) = (EstimateMeasure.Of(PublishedFormula.Aside, false), EstimateMeasure.Of(PublishedFormula.Aside, true));

        Assert.Equal(0, usual.WronglyProved);
        Assert.Equal(0, middle.WronglyProved);
        Assert.True(usual.Right >= 0.85 * usual.Guessed, $"{usual}");
        Assert.True(usual.Ratio <= 1.8, $"{usual}");
        Assert.True(usual.Tau > middle.Tau, $"{usual.Tau} against {middle.Tau}");
    }

    [Fact]
    public void On_formulas_gathered_when_the_estimate_stood_eighty_five_of_a_hundred_open_pairs_stand_right()
    {
        var usual = EstimateMeasure.Of(PublishedFormula.Unseen, true);

        Assert.True(PublishedFormula.Unseen.Length >= 40);
        Assert.Equal(0, usual.WronglyProved);
        Assert.True(usual.Right >= 0.85 * usual.Guessed, $"{usual}");
        Assert.True(usual.Ratio <= 1.8, $"{usual}");
    }

    [Fact]
    public void The_published_figures_are_those_of_this_estimate()
    {
        Repository.Table("order.md", "estimate", EstimateMeasure.Table());
    }

    private static string Table(string name) =>
        File.ReadAllText(Path.Combine(Repository.Folder, "ingredients", "tables", name + ".csv")).ReplaceLineEndings("\n");
}
