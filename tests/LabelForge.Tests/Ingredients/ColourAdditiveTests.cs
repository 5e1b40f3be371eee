using LabelForge.Ingredients;
using LabelForge.Measures;

namespace LabelForge.Tests.Ingredients;

public class ColourAdditiveTests
{
    private static readonly ColourAdditives Additives = ColourAdditives.Shipped;

    // 21 CFR 73 subpart C and 74 subpart C, by paragraph.
    [Theory]
    [InlineData("Ultramarines", "21 CFR 73.2725", false, true, false, true)]
    [InlineData("CI 77288", "21 CFR 73.2327", false, true, false, true)]
    [InlineData("Ferric Ferrocyanide", "21 CFR 73.2299", false, true, false, true)]
    [InlineData("CI 77491", "21 CFR 73.2250", false, true, true, true)]
    [InlineData("Manganese Violet", "21 CFR 73.2775", false, true, true, true)]
    [InlineData("Mica", "21 CFR 73.2496", false, true, true, true)]
    [InlineData("titanium dioxide", "21 CFR 73.2575", false, true, true, true)]
    [InlineData("Carmine", "21 CFR 73.2087", false, true, true, true)]
    [InlineData("D&C Red No. 33", "21 CFR 74.2333", true, false, true, true)]
    [InlineData("Red 17", "21 CFR 74.2317", true, false, false, true)]
    public void A_colour_is_permitted_where_its_paragraph_says(string name, string citation, bool certified, bool eye, bool lips, bool external)
    {
        var additive = Additives.Find(name)!;
        Assert.Equal((citation, certified, eye, lips, external), (additive.Citation, additive.Certified, additive.EyeArea, additive.Lips, additive.External));
    }

    [Fact]
    public void Red_33_on_the_lips_is_limited_to_three_percent() =>
        Assert.Contains("3.0 percent", Additives.Find("Red 33")!.Limit, StringComparison.Ordinal);

    [Fact]
    public void Every_paragraph_of_part_74_is_of_a_certified_colour_and_of_part_73_of_an_exempt_one() =>
        Assert.All(Additives.All, a => Assert.StartsWith(a.Certified ? "21 CFR 74.2" : "21 CFR 73.2", a.Citation, StringComparison.Ordinal));

    [Fact]
    public void No_paragraph_lists_two_colours() =>
        Assert.Equal(Additives.All.Length, Additives.All.Select(a => a.Citation).Distinct().Count());

    [Fact]
    public void What_is_listed_is_flagged_as_a_colourant_in_the_dictionary() =>
        Assert.Empty(Additives.All
            .Where(a => IngredientDictionary.Shipped.Find(a.Name) is { IsColourant: false })
            .Select(a => a.Name));

    [Fact]
    public void A_lake_is_judged_as_the_colour_it_is_made_of() =>
        Assert.Equal("Yellow 5", Additives.Find(IngredientDictionary.Shipped.Find("Yellow 5 Lake")!)?.Name);

    [Theory]
    [InlineData("CI 77015")]
    [InlineData("Tin Oxide")]
    public void What_is_not_listed_is_not_found(string name) => Assert.Null(Additives.Find(name));

    [Fact]
    public void A_word_that_is_neither_yes_nor_no_is_refused()
    {
        const string Table = "name,other,ci,citation,batch,eye,lips,external,limit,source\nMica,,77019,21 CFR 73.2496,exempt,perhaps,yes,yes,,test\n";
        var refusal = Assert.Throws<InputException>(() => ColourAdditives.Read(("bench.csv", new StringReader(Table))));
        Assert.Contains("perhaps", refusal.Message, StringComparison.Ordinal);
    }
}
