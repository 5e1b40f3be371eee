using LabelForge.Ingredients;
using LabelForge.Ingredients.Supplied;
using LabelForge.Measures;

namespace LabelForge.Tests.Ingredients.Supplied;

/// <summary>Papers in the shapes that suppliers use; invented, since only the shapes matter.</summary>
public class SuppliedTextTests
{
    private static readonly NameMatcher Matcher = new(IngredientDictionary.Shipped);

    private static SuppliedList Read(string text) => SuppliedText.Read(text, Matcher.Knows);

    private static string[] Names(string text) => [.. Read(text).Names.Select(n => n.Text)];

    public static TheoryData<string, string[]> Papers => new()
    {
        { "Glycerin, Water (Aqua), Sodium Stearate", ["Glycerin", "Water (Aqua)", "Sodium Stearate"] },
        { "Ingredients: Glycerin, Water.", ["Glycerin", "Water"] },
        { "INGREDIENTS (INCI): GLYCERIN, AQUA, SODIUM STEARATE.", ["GLYCERIN", "AQUA", "SODIUM STEARATE"] },
        { "Clear Shea Base\nIngredients:\nGlycerin, Water", ["Glycerin", "Water"] },
        { "Glycerin; Water; Sorbitol", ["Glycerin", "Water", "Sorbitol"] },
        { "Glycerin\nWater\nSorbitol\n1,2-Hexanediol", ["Glycerin", "Water", "Sorbitol", "1,2-Hexanediol"] },
        { "• Glycerin\n• Water\n• Butyrospermum Parkii (Shea) Butter", ["Glycerin", "Water", "Butyrospermum Parkii (Shea) Butter"] },
        { "- Glycerin\n- Water\n- Sorbitol", ["Glycerin", "Water", "Sorbitol"] },
        { "* Glycerin\n* Water\n* Sorbitol", ["Glycerin", "Water", "Sorbitol"] },
        { "1. Glycerin\n2. Water\n3. 1,2-Hexanediol", ["Glycerin", "Water", "1,2-Hexanediol"] },
        { "Glycerin, Water, Sodium\nStearate, Butyrospermum Parkii\n(Shea) Butter",
            ["Glycerin", "Water", "Sodium Stearate", "Butyrospermum Parkii (Shea) Butter"] },
        { "Glycerin, Water, Sodium Stea-\nrate, Butyrospermum Parkii Butter",
            ["Glycerin", "Water", "Sodium Stearate", "Butyrospermum Parkii Butter"] },
        { "Glycerin, Alpha-\nIsomethyl Ionone, Linalool", ["Glycerin", "Alpha-Isomethyl Ionone", "Linalool"] },
        { "1,2-\nHexanediol, Glycerin", ["1,2-Hexanediol", "Glycerin"] },
        { "Caprylic/Capric Triglyceride, Glycerin", ["Caprylic/Capric Triglyceride", "Glycerin"] },
        { "Water/Aqua/Eau, Glycerin", ["Water/Aqua/Eau", "Glycerin"] },
        { "Glycerin/Sorbitol, Water", ["Glycerin", "Sorbitol", "Water"] },
        { "Glycerin, Water, and Sorbitol", ["Glycerin", "Water", "Sorbitol"] },
        { "Glycerin & Water", ["Glycerin", "Water"] },
        { "Glycerin (and) Water (and) Xylophonate", ["Glycerin", "Water", "Xylophonate"] },
        { "Black and White Mud, Water", ["Black and White Mud", "Water"] },
        { "D&C Red No. 6, FD&C Blue No. 1, C.I. 77891", ["D&C Red No. 6", "FD&C Blue No. 1", "C.I. 77891"] },
        { "Mica, Iron Oxides (CI 77491, CI 77492, CI 77499)", ["Mica", "CI 77491", "CI 77492", "CI 77499"] },
        { "2-Bromo-2-Nitropropane-1,3-Diol,Glycerin,Water", ["2-Bromo-2-Nitropropane-1,3-Diol", "Glycerin", "Water"] },
        { "Water,Glycerin,Sorbitol", ["Water", "Glycerin", "Sorbitol"] },
        { "Glycerin. Water. Sorbitol.", ["Glycerin", "Water", "Sorbitol"] },
        { "Water (Aqua, Glycerin", ["Water (Aqua", "Glycerin"] },
        { "Glycerin  |  Water  |  Sorbitol", ["Glycerin", "Water", "Sorbitol"] },
        { "Glycerin,, Water, ;", ["Glycerin", "Water"] },
        { "Glycerin\r\nWater\r\n", ["Glycerin", "Water"] },
        { "Soap Base (Sodium Palmate, Water), Glycerin", ["Soap Base (Sodium Palmate, Water)", "Glycerin"] },
        { "Organic Castor Oil, Castor Oil (organic)", ["Castor Oil", "Castor Oil"] },
    };

    [Theory]
    [MemberData(nameof(Papers))]
    public void A_paper_is_read_name_by_name(string paper, string[] names) => Assert.Equal(names, Names(paper));

    [Theory]
    [InlineData("Glycerin 5%", 5, 5)]
    [InlineData("Glycerin (5%)", 5, 5)]
    [InlineData("Glycerin (5 %)", 5, 5)]
    [InlineData("5% Glycerin", 5, 5)]
    [InlineData("(5%) Glycerin", 5, 5)]
    [InlineData("Glycerin: 10-30 %", 10, 30)]
    [InlineData("Glycerin 10%-30%", 10, 30)]
    [InlineData("Glycerin (10 – 30%)", 10, 30)]
    [InlineData("Glycerin - 10 to 30%", 10, 30)]
    [InlineData("Glycerin <1%", 0, 1)]
    [InlineData("Glycerin (< 1 %)", 0, 1)]
    [InlineData("Glycerin ≤0.2%", 0, 0.2)]
    [InlineData("Glycerin >= 2 %", 2, 100)]
    [InlineData("Glycerin max. 1 %", 0, 1)]
    [InlineData("Glycerin up to 1.5%", 0, 1.5)]
    [InlineData("Glycerin min 50%", 50, 100)]
    [InlineData("Glycerin >=1 - <5%", 1, 5)]
    [InlineData("Glycerin ≥ 10 – < 25 % w/w", 10, 25)]
    [InlineData("Glycerin 0,5 %", 0.5, 0.5)]
    [InlineData("Glycerin .... 12.5 %", 12.5, 12.5)]
    [InlineData("Glycerin\t56-81-5\t10-30%", 10, 30)]
    [InlineData("Glycerin*: 10-30 %\n* organic", 10, 30)]
    [InlineData("Glycerin", 0, 100)]
    [InlineData("Glycerin ~5%", 0, 100)]
    [InlineData("Glycerin approx. 5%", 0, 100)]
    [InlineData("Glycerin q.s.", 0, 100)]
    [InlineData("Glycerin (balance)", 0, 100)]
    public void A_share_is_read_from_either_side_of_its_name(string paper, decimal low, decimal high)
    {
        var name = Assert.Single(Read(paper).Names);
        Assert.Equal(("Glycerin", low, high), (name.Text, name.Share.Low.Percent, name.Share.High.Percent));
    }

    [Fact]
    public void A_strength_is_no_share() =>
        Assert.Equal(("Sorbitol 70% solution", ShareRange.Unknown),
            Read("Sorbitol 70% solution, Water").Names.Select(n => (n.Text, n.Share)).First());

    [Theory]
    [InlineData("Glycerin 120%")]
    [InlineData("Glycerin 30-10%")]
    public void A_share_that_cannot_be_is_refused(string paper) =>
        Assert.Contains("%", Assert.Throws<InputException>(() => Read(paper)).Problem.Write, StringComparison.Ordinal);

    [Theory]
    [InlineData("Glycerin*, Water, Castor Oil*. *Certified organic ingredient.", "Glycerin;Castor Oil")]
    [InlineData("*Glycerin, Water, *Castor Oil\n* = organic", "Glycerin;Castor Oil")]
    [InlineData("Glycerin**, Water*, Castor Oil\n*Upcycled\n**From organic farming", "Glycerin")]
    [InlineData("Glycerin†, Water († organic)", "Glycerin")]
    [InlineData("Glycerin*, Water, *certified organic, Castor Oil*", "Glycerin;Castor Oil")]
    [InlineData("Glycerin, Organic Castor Oil, Water", "Castor Oil")]
    [InlineData("Glycerin*, Water", "")]
    public void A_footnote_says_what_is_organic(string paper, string organic)
    {
        var names = Read(paper).Names;
        Assert.Contains(names, n => n.Text == "Water");
        Assert.Equal(organic, string.Join(';', names.Where(n => n.Organic).Select(n => n.Text)));
    }

    [Fact]
    public void A_sign_that_nothing_explains_is_told() =>
        Assert.Equal("the sign * is not explained", Assert.Single(Read("Glycerin*, Water").Names[0].Remarks));

    [Theory]
    [InlineData("Glycerin, Water. May contain: Titanium Dioxide, Mica.")]
    [InlineData("Glycerin, Water, +/- Titanium Dioxide, Mica")]
    [InlineData("Glycerin, Water, [+/- Titanium Dioxide, Mica]")]
    [InlineData("Glycerin, Water [± Titanium Dioxide, Mica]")]
    [InlineData("Glycerin, Water, May contain (+/-): Titanium Dioxide, Mica")]
    [InlineData("GLYCERIN, WATER\nMAY CONTAIN TITANIUM DIOXIDE, MICA")]
    [InlineData("Glycerin*, Water. *Certified organic. May contain: Titanium Dioxide, Mica. Made by hand.")]
    [InlineData("Glycerin, Water, Peut contenir: Titanium Dioxide and Mica")]
    public void What_may_be_contained_is_kept_apart(string paper)
    {
        var names = Read(paper).Names;
        Assert.Equal(["glycerin", "water", "titanium dioxide", "mica"], names.Select(n => n.Text.ToLowerInvariant()));
        Assert.Equal([false, false, true, true], names.Select(n => n.MayContain));
        Assert.Equal([1, 2, 3, 4], names.Select(n => n.Position));
    }

    [Fact]
    public void Sentences_that_are_no_names_are_left_out_and_shown()
    {
        var list =
            Read(
                "Clear base no. 4\nIngredients: Glycerin, Water*. *Upcycled. Made in a shop that handles nuts. May contain "
                    + "traces of almond.");
        Assert.Equal(["Glycerin", "Water"], list.Names.Select(n => n.Text));
        Assert.Contains("Clear base no. 4", list.LeftOut);
        Assert.Contains(list.LeftOut, l => l.Contains("Upcycled", StringComparison.Ordinal));
        Assert.Contains(list.LeftOut, l => l.Contains("nuts", StringComparison.Ordinal));
    }

    [Fact]
    public void A_CAS_number_is_taken_out_of_the_name_where_its_check_digit_is_right()
    {
        Assert.Equal(("Glycerin", "56-81-5"),
            Read("Glycerin (CAS No. 56-81-5), Water").Names.Select(n => (n.Text, n.Cas.ToString())).First());
        Assert.Null(Read("Glycerin 56-81-4, Water").Names[0].Cas);
    }

    [Theory]
    [InlineData("")]
    [InlineData("  \n ")]
    [InlineData("Ingredients:")]
    [InlineData("*,*;.()")]
    public void A_paper_without_a_name_is_refused(string paper) => Assert.Throws<InputException>(() => Read(paper));
}
