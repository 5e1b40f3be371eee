using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Fitting;

namespace LabelForge.Print.Tests;

public class ConstraintTests
{
    private static readonly LabelLayout Label = LabelFitter.Fit(LabelDesign.Load("bar-2x4"), Samples.Bar, Samples.Block()).OrRefuse();

    [Fact]
    public void Every_rule_is_reported_with_its_source_and_the_margin_to_spare()
    {
        Assert.All(Label.Constraints, c => Assert.True(c.Kept && c.Source.Length > 0, c.ToString()));
        Assert.Equal("21 CFR 701.13(i)", Rule("net-quantity.letter-height").Source);
        Assert.Equal("21 CFR 701.3(b)", Rule("ingredients.letter-height").Source);
        Assert.Equal("21 CFR 701.13(f)", Rule("net-quantity.clear-above").Source);
        Assert.Contains("21 CFR 701.13(h)", Rule("net-quantity.letter-proportion").Source);
        Assert.Contains("21 CFR 701.11(c)", Rule("identity.weight").Source);
    }

    [Fact]
    public void The_rules_that_bind_are_those_that_a_longer_list_of_ingredients_runs_into()
    {
        var longer = Samples.Bar with
        {
            Ingredients = [.. Samples.Bar.Ingredients, "Sodium Hydroxide", "Citric Acid", "Tocopherol",
            "Helianthus Annuus (Sunflower) Seed Oil"]
        };
        var layout = LabelFitter.Fit(LabelDesign.Load("bar-2x4"), longer, Samples.Block()).OrRefuse();
        Assert.Contains(layout.Constraints,
            c => c.Id == "ingredients.letter-height" && c.Margin < Rule("ingredients.letter-height").Margin + 0.001m);
        Assert.All(layout.Constraints.Where(c => c.Binds), c => Assert.InRange(c.Margin, -0.0002m, c.Limit * 0.01m));
    }

    [Fact] // A panel of 9 sq in: 30 % of its 3 in of height is 0.9 in, 22.86 mm (21 CFR 701.13(f)).
    public void The_bottom_of_the_panel_is_measured_in_its_own_height()
    {
        var path = Path.GetTempFileName();
        File.WriteAllText(path,
            "name: Mine\nwidth: 3 in\nheight: 3 in\npanels:\n  front: { width: 3 in, height: 3 in, padding: 3 mm, elements: [ { role: "
                + "net-quantity, place: bottom } ] }\n");
        var layout = LabelFitter.Fit(LabelDesign.LoadFile(path, "mine.yaml"), Samples.Bar).OrRefuse();
        File.Delete(path);
        var rule = layout.Constraints.Single(c => c.Id == "net-quantity.bottom-of-panel");
        Assert.Equal(22.86m, rule.Limit);
        Assert.Equal(76.2m - layout.Texts.Single().Y.Millimetres, rule.Measured);
    }

    private static Constraint Rule(string id) => Label.Constraints.Single(c => c.Id == id);
}
