using LabelForge.Declarations;
using LabelForge.Markets;
using LabelForge.Measures;
using LabelForge.Recipes;
using LabelForge.Recipes.Files;
using LabelForge.Tests.Declarations;

namespace LabelForge.Tests.Recipes;

/// <summary>What is wrong is said with the figures and with what to write instead.</summary>
public class SaidWithFiguresTests
{
    [Theory]
    [InlineData("at least 2 %", 2, 100)]
    [InlineData("at most 1 %", 0, 1)]
    [InlineData("up to 1 %", 0, 1)]
    [InlineData("More than 1 %", 1, 100)]
    [InlineData("less than 1 %", 0, 1)]
    [InlineData("\">= 2 %\"", 2, 100)]
    public void A_bound_may_be_written_in_words_or_quoted(string written, int low, int high)
    {
        var share = MaterialFile.Read("base",
            YamlFile.ReadText($"name: Base\nkind: base\ncontains:\n  - Glycerin: {written}\n  - Water\n",
                "materials/base.yaml")).Contains[0].Share;
        Assert.Equal((low, high), ((int)share.Low.Percent, (int)share.High.Percent));
    }

    [Theory]
    [InlineData(">= 2 %", "at least 2 %", "\">= 2 %\"")]
    [InlineData("> 1 %", "more than 1 %", "\"> 1 %\"")]
    [InlineData(">=2 %", "at least 2 %", "\">= 2 %\"")]
    public void A_bare_greater_sign_is_told_at_its_line_with_what_to_write(string written, string words, string quoted)
    {
        var problem = Assert.Throws<InputException>(() =>
            YamlFile.ReadText($"name: Base\nkind: base\ncontains:\n  - Water\n  - Glycerin: {written}\n  - Shea Butter\n",
                "materials/base.yaml")).Problem;
        Assert.Equal(5, problem.Line);
        Assert.Contains(words, problem.Write, StringComparison.Ordinal);
        Assert.Contains(quoted, problem.Write, StringComparison.Ordinal);
    }

    [Fact]
    public void A_contradiction_in_one_variant_is_told_with_its_name()
    {
        using var bench = new MakerBench()
            .Material("base", "base", "[ Glycerin: 60 %, Water: 40 % ]")
            .Material("good", "oil", "Castor Oil").Material("bad", "oil", "[ Castor Oil: 60 %, Beeswax: 60 % ]")
            .Recipe("soap-bar",
                "variants:\n  - { name: Plain, add: [ { use: good, amount: 5 g } ] }\n  - { name: Odd, add: [ { use: bad, amount: "
                    + "5 g } ] }\n", ("base", "95 g"));
        var workshop = bench.Workshop;
        var recipe = workshop.Recipe("bar");
        var problem =
            Assert.Throws<InputException>(() => Assortment.Of(workshop, recipe, ProductKindOf.Recipe(recipe), Market.Us,
                new DateOnly(2026, 11, 25))).Problem;
        Assert.StartsWith("Odd: ", problem.Wrong, StringComparison.Ordinal);
        Assert.Equal("materials/bad.yaml", problem.File);
    }

    [Fact]
    public void A_blend_of_forty_levels_each_used_twice_is_opened_once_a_level()
    {
        // Twice at each level would be a million million openings.
        using var bench = new MakerBench().Material("m0", "base", "[ Glycerin: 60 %, Water: 40 % ]").Material("n0", "oil", "Castor Oil");
        for (var level = 1; level <= 40; level++)
        {
            bench.Write($"materials/m{level}.yaml",
                $"name: m{level}\nkind: base\nmade from:\n  - {{ use: m{level - 1}, amount: 60 g }}\n "
                    + $" - {{ use: n{level - 1}, amount: 40 g }}\n");
            bench.Write($"materials/n{level}.yaml",
                $"name: n{level}\nkind: base\nmade from:\n  - {{ use: n{level - 1}, amount: 70 g }}\n "
                    + $" - {{ use: m{level - 1}, amount: 30 g }}\n");
        }
        bench.Recipe("soap-bar", "", ("m40", "50 g"), ("n40", "50 g"));
        var workshop = bench.Workshop;
        var flat = ExplodedFormula.Of(workshop, BatchFormula.Of(workshop, workshop.Recipe("bar")));
        Assert.Equal(2, flat.Length);
        Assert.Equal(1m, flat.Sum(f => f.Share.Fraction), 20);
        // The shares settle where as much goes from one to the other as comes back: 3 to 4.
        Assert.Equal(3m / 7, flat.Single(f => f.Material.Id == "m0").Share.Fraction, 12);
    }

    [Theory]
    [InlineData("614141", null, "0614141")]
    [InlineData("U.P.C. 614141", "0614141", null)]
    [InlineData("GS1 614141", "614141", null)]
    [InlineData("9521321", "9521321", null)]
    [InlineData("0614141", "0614141", null)]
    [InlineData("61414", null, "7 to 11 digits")]
    public void Six_digits_are_asked_about_since_they_may_be_a_prefix_of_either_kind(string written, string? prefix, string? write)
    {
        Business Read() =>
            Business.Read(YamlFile.ReadText($"business: Moor\ngtin prefix: \"{written}\"\n", "workshop.yaml"), MarketBook.Shipped);
        if (write is not null)
            Assert.Contains(write, Assert.Throws<InputException>(Read).Problem.Write, StringComparison.Ordinal);
        else
            Assert.Equal(prefix, Read().GtinPrefix);
    }

    [Fact]
    public void A_material_used_twice_is_told_with_both_amounts()
    {
        using var bench = new MakerBench().Material("oil", "oil", "Castor Oil").Material("water", "water", "Water")
            .Recipe("body-butter", "", ("oil", "450 g"), ("water", "1 lb"), ("oil", "3 % of batch"));
        var problem = Assert.Throws<InputException>(() => bench.Declare(Market.Us)).Problem;
        Assert.Equal("\"oil\" is used twice: 450 g and 3 % of batch.", problem.Wrong);
    }

    [Fact]
    public void A_constituent_listed_twice_is_told_with_both_figures()
    {
        using var bench = new MakerBench().Material("oil", "oil", "[ Castor Oil: 60 %, Beeswax, Castor Oil: 5-10 % ]")
            .Recipe("body-butter", "", ("oil", "450 g"));
        Assert.EndsWith("60 % and 5 % to 10 %.", Assert.Throws<InputException>(() => bench.Declare(Market.Us)).Problem.Wrong,
            StringComparison.Ordinal);
    }

    [Fact]
    public void Figures_that_miss_the_whole_by_rounding_are_told_with_what_they_were_rounded_from()
    {
        using var bench = new MakerBench()
            .Material("blend", "oil", "[ Castor Oil: 33.3 %, Beeswax: 33.3 %, Shea Butter: 33.3 % ]", "listed: none\n")
            .Recipe("body-butter", "", ("blend", "450 g"));
        var problem = Assert.Throws<InputException>(() => bench.Declare(Market.Us)).Problem;
        Assert.Contains("at most 99.9 %", problem.Wrong, StringComparison.Ordinal);
        Assert.Contains("They miss 100 % by 0.1 %", problem.Write, StringComparison.Ordinal);
        Assert.Contains(": 33.25-33.35 %", problem.Write, StringComparison.Ordinal);
    }
}
