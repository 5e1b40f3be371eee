using LabelForge.Measures;
using LabelForge.Recipes;

namespace LabelForge.Tests.Recipes;

public class RecipeReadingTests
{
    [Theory]
    [InlineData("{ use: base, amount: 5 % }", "recipes/bar.yaml", 6, "of what?", "5 % of batch")]
    [InlineData("{ use: bass, amount: 5 g }", "recipes/bar.yaml", 6, "no material \"bass\"", "\"base\"")]
    [InlineData("{ use: base, amount: 1 tsp }", "recipes/bar.yaml", 6, "nothing says how heavy", "density")]
    [InlineData("{ use: base, amount: 0 g }", "recipes/bar.yaml", 6, "not more than nothing", "above zero")]
    [InlineData("{ use: base, amount: -2 g }", "recipes/bar.yaml", 6, "not more than nothing", "above zero")]
    [InlineData("{ use: base, amout: 2 g }", "recipes/bar.yaml", 6, "has no \"amout\"", "\"amount\"")]
    [InlineData("{ use: base, amount: 2 % of castor-oil }", "recipes/bar.yaml", 6, "does not use", "% of batch")]
    public void A_wrong_line_names_its_file_and_line_and_what_to_write(string material, string file, int line, string wrong, string write)
    {
        using var bench = new BenchFolder().Recipe(material);
        var problem = Refused(bench);
        Assert.Equal((file, line), (problem.File, problem.Line));
        Assert.Contains(wrong, problem.Wrong);
        Assert.Contains(write, problem.Write);
    }

    [Fact]
    public void Amounts_that_refer_to_each_other_in_a_circle_are_refused()
    {
        using var bench = new BenchFolder().Recipe("{ use: base, amount: 5 % of castor-oil }", "{ use: castor-oil, amount: 5 % of base }");
        Assert.Contains("circle", Refused(bench).Wrong);
    }

    [Fact]
    public void A_material_made_from_itself_is_refused()
    {
        using var bench = new BenchFolder()
            .Write("materials/one.yaml", "name: One\nkind: base\nmade from:\n  - { use: two, amount: 1 g }\n")
            .Write("materials/two.yaml", "name: Two\nkind: base\nmade from:\n  - { use: one, amount: 1 g }\n")
            .Recipe("{ use: one, amount: 10 g }");
        Assert.Contains("made from itself: one from two from one", Refused(bench).Wrong);
    }

    [Fact]
    public void A_key_that_stands_twice_is_refused()
    {
        using var bench = new BenchFolder().Write("recipes/bar.yaml", "name: Bar\nname: Bar\n");
        Assert.Equal(2, Refused(bench).Line);
    }

    [Fact]
    public void Ids_that_differ_only_in_letter_case_are_refused()
    {
        using var bench = new BenchFolder().Write("materials/Base.yaml", "name: Test base\nkind: base\ncontains: Water\n")
            .Recipe("{ use: base, amount: 1 g }");
        if (Directory.GetFiles(Path.Combine(bench.Path, "materials")).Length == 2)
            return; // a file system without letter case holds one file, so there is nothing to refuse
        Assert.Contains("stands twice", Refused(bench).Wrong);
    }

    [Theory]
    [InlineData("name: &a Bar\nidentity: *a\n")]
    [InlineData("name: !!binary Bar\n")]
    [InlineData("- one\n- two\n")]
    [InlineData("")]
    [InlineData("name: [unclosed\n")]
    public void A_file_that_is_no_plain_workshop_file_is_refused(string text)
    {
        using var bench = new BenchFolder().Write("recipes/bar.yaml", text);
        Assert.Equal("recipes/bar.yaml", Refused(bench).File);
    }

    [Fact]
    public void A_share_of_the_batch_is_a_share_of_the_finished_total()
    {
        // 98 g of base and 2 % of batch: 98 g is the other 98 %, so the batch is 100 g and the oil 2 g.
        using var bench = new BenchFolder().Recipe("{ use: base, amount: 98 g }", "{ use: castor-oil, amount: 2 % of batch }");
        var batch = Batch(bench);
        Assert.Equal(100m, batch.Total.Grams);
        Assert.Equal(2m, batch.Lines[1].Mass.Grams);
    }

    [Fact]
    public void A_volume_weighs_its_density()
    {
        // 2 tbsp = 29.5735295625 mL; times 0.96 g/mL = 28.39058838 g
        using var bench = new BenchFolder().Recipe("{ use: castor-oil, amount: 2 tbsp }");
        Assert.Equal(28.39058838m, Batch(bench).Total.Grams);
    }

    [Fact]
    public void A_material_made_in_the_shop_opens_up_into_what_was_bought()
    {
        // 100 g of a blend that is 3 parts base to 1 part oil, with 100 g more of base: 175 g base, 25 g oil.
        using var bench = new BenchFolder()
            .Write("materials/blend.yaml",
                "name: Blend\nkind: base\nmade from:\n  - { use: base, amount: 3 oz }\n  - { use: castor-oil, amount: 1 oz }\n")
            .Recipe("{ use: blend, amount: 100 g }", "{ use: base, amount: 100 g }");
        var workshop = Workshop.Open(bench.Path);
        var flat = ExplodedFormula.Of(workshop, BatchFormula.Of(workshop, workshop.Recipe("bar")));
        Assert.Equal([("base", 0.875m), ("castor-oil", 0.125m)], flat.Select(f => (f.Material.Id, decimal.Round(f.Share.Fraction, 12))));
    }

    private static BatchFormula Batch(BenchFolder bench)
    {
        var workshop = Workshop.Open(bench.Path);
        return BatchFormula.Of(workshop, workshop.Recipe("bar"));
    }

    private static Problem Refused(BenchFolder bench) => Assert.Throws<InputException>(() =>
    {
        var workshop = Workshop.Open(bench.Path);
        ExplodedFormula.Of(workshop, BatchFormula.Of(workshop, workshop.Recipe("bar")));
    }).Problem;
}
