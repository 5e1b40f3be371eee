using LabelForge.Ingredients;
using LabelForge.Measures;

namespace LabelForge.Tests.Ingredients;

public class ColourAdditiveTests
{
    private static readonly ColourAdditives Additives = IngredientDictionary.Shipped.Colours;

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
    public void A_colour_is_permitted_where_its_paragraph_says(string name, string citation, bool certified, bool eye, bool lips,
        bool external)
    {
        var additive = Additives.Find(name)!;
        Assert.Equal((citation, certified, eye, lips, external),
            (additive.Citation, additive.Certified, additive.EyeArea, additive.Lips, additive.External));
    }

    [Fact]
    public void Red_33_on_the_lips_is_limited_to_three_percent() =>
        Assert.Contains("3.0 percent", Additives.Find("Red 33")!.Limit, StringComparison.Ordinal);

    // 21 CFR part 73 subpart C: exempt from certification; part 74 subpart C: certified; part 82: lakes, certified.
    [Fact]
    public void Every_paragraph_of_parts_74_and_82_is_of_a_certified_colour_and_of_part_73_of_an_exempt_one() =>
        Assert.All(Additives.All,
            a => Assert.Matches(a.Certified ? @"^21 CFR (74\.2\d{3}a?|82\.(\d{3}|[12]\d{3}a?))$" : @"^21 CFR 73\.2\d{3}$", a.Citation));

    [Fact]
    public void No_paragraph_lists_two_colours_save_that_of_red_40_and_its_lake() =>
        Assert.Equal(["21 CFR 74.2340"], Additives.All.GroupBy(a => a.Citation).Where(g => g.Count() > 1).Select(g => g.Key));

    // The last three digits of a paragraph of part 82 are those of the colour's own in part 74: 74.2306 and 82.1306, 74.2101 and 82.101.
    [Fact]
    public void A_lake_stands_in_part_82_under_the_number_of_its_colour_and_may_be_used_where_it_may()
    {
        var lakes = Additives.All.Where(a => a.Citation.StartsWith("21 CFR 82.", StringComparison.Ordinal)).ToArray();
        Assert.Equal(28, lakes.Length);
        foreach (var lake in lakes)
        {
            var colour = Additives.Find(lake.Name[..^" Lake".Length])!;
            Assert.Equal(colour.Citation[^3..], lake.Citation[^3..]);
            // 21 CFR 81.1: lakes that are listed provisionally stay away from the eye; of these the colour alone is listed for it.
            Assert.Equal((colour.EyeArea && lake.Name != "Green 5 Lake", colour.Lips, colour.External),
                (lake.EyeArea, lake.Lips, lake.External));
            Assert.Equal(colour.Name.StartsWith("Ext.", StringComparison.Ordinal)
                ? "82.2"
                : colour.OtherNames[0].StartsWith("FD&C", StringComparison.Ordinal)
                ? "82."
                : "82.1",
                lake.Citation.Length == "21 CFR 82.101".Length ? "82." : lake.Citation["21 CFR ".Length..][..4]);
        }
    }

    [Fact]
    public void What_is_listed_is_flagged_as_a_colourant_in_the_dictionary() =>
        Assert.Empty(Additives.All
            .Where(a => IngredientDictionary.Shipped.Find(a.Name) is { IsColourant: false })
            .Select(a => a.Name));

    [Fact]
    public void A_lake_is_found_under_its_own_name_and_paragraph() =>
        Assert.Equal("21 CFR 82.705", Additives.Find(IngredientDictionary.Shipped.Find("Yellow 5 Lake")!)?.Citation);

    [Fact]
    public void A_number_finds_the_colour_itself_and_not_its_lake() =>
        Assert.Equal("Yellow 5", Additives.Find("CI 19140")?.Name);

    [Theory]
    [InlineData("CI 77015")]
    [InlineData("Tin Oxide")]
    public void What_is_not_listed_is_not_found(string name) => Assert.Null(Additives.Find(name));

    [Fact]
    public void A_word_that_is_neither_yes_nor_no_is_refused()
    {
        const string Table =
            "name,other,ci,citation,batch,eye,lips,external,only,max,limits,limit,label,source,basis,read\nMica,,77019,21 CFR "
                + "73.2496,exempt,perhaps,yes,yes,,,,,,test,memory,\n";
        var refusal = Assert.Throws<InputException>(() => ColourAdditives.Read(DataTable.Of("bench.csv", Table)));
        Assert.Contains("perhaps", refusal.Message, StringComparison.Ordinal);
    }
}
