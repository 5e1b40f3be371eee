using LabelForge.Ingredients.Supplied;
using LabelForge.Measures;

namespace LabelForge.Tests.Ingredients.Supplied;

/// <summary>Certificates of fragrance houses, as such papers are commonly laid out; the oils and figures are invented.</summary>
public sealed class CertificateTextTests
{
    [Theory]
    [InlineData("Category 9   Soap, shower gel   4.8 %", "9", 4.8)]
    [InlineData("IFRA Category 5A: 2.10%", "5A", 2.1)]
    [InlineData("Category 5.B 1,25 %", "5B", 1.25)]
    [InlineData("Cat. 10 A 0.5%", "10A", 0.5)]
    [InlineData("• Category 12 Not restricted", "12", 100)]
    [InlineData("CATEGORY 1 Not permitted", "1", 0)]
    [InlineData("Category 11 (B) products with skin contact 100 %", "11B", 100)]
    public void A_row_of_a_category_gives_its_limit(string row, string category, double percent) =>
        Assert.Equal([(category, (decimal)percent)], Read(row).Limits);

    [Theory]
    [InlineData("Linalool 78-70-6 3.2 %", "Linalool", "3.2 %")]
    [InlineData("d-Limonene   5989-27-5   201-…   0.75%", "Limonene", "0.75 %")]
    [InlineData("Geraniol 106-24-1 1 - 3 %", "Geraniol", "1-3 %")]
    [InlineData("Citral < 0.01 %", "Citral", "< 0.01 %")]
    [InlineData("Coumarin 91-64-5 120 ppm", "Coumarin", "0.012 %")]
    [InlineData("Benzyl alcohol: 4 %", "Benzyl Alcohol", "4 %")]
    public void A_row_of_an_allergen_gives_its_share(string row, string name, string share)
    {
        Assert.Equal([(name, share)], Read(row).Allergens);
        Assert.True(ShareText.Parse(share).IsValue, "what is read can stand in a material's file");
    }

    [Fact]
    public void Of_two_limits_for_one_category_the_lower_counts() =>
        Assert.Equal([("9", 2m)], Read("Category 9 4 %\nCategory 9 2 %\nCategory 9 3 %").Limits);

    [Fact]
    public void Bare_figures_count_only_under_a_heading_that_says_percent()
    {
        Assert.Equal([("9", 4.8m)], Read("Category   Maximum level (%)\nCategory 9 4.8").Limits);
        var bare = Read("Category 9 4.8");
        Assert.Empty(bare.Limits);
        Assert.Equal(["Category 9 4.8"], bare.Unread);
    }

    [Fact]
    public void The_categories_stand_in_their_order() =>
        Assert.Equal(["1", "2", "5A", "5B", "10A"],
            Read("Category 10A 1 %\nCategory 2 1 %\nCategory 5B 1 %\nCategory 1 1 %\nCategory 5A 1 %").Limits
                .Select(l => l.Category));

    // The classes of the 43rd Amendment and before were others: class 9 is not category 9 (IFRA, 48th to 49th Amendment; from memory).
    [Fact]
    public void The_old_classes_are_not_taken_for_categories() =>
        Assert.Empty(Read("Class 9 4.8 %\nClass 11 100 %").Limits);

    [Theory]
    [InlineData("We certify that the above oil, 100 % natural, complies.")]
    [InlineData("Rev. 3, page 2 of 5")]
    [InlineData("Linalool 78-70-6 not present")]
    [InlineData("Flash point 95 C, density 1.01 g/mL at 20 %")]
    [InlineData("")]
    public void What_is_no_row_of_a_table_is_left_alone(string row)
    {
        var read = Read(row);
        Assert.Empty(read.Limits);
        Assert.Empty(read.Allergens);
    }

    [Fact]
    public void A_text_longer_than_any_certificate_is_refused() =>
        Assert.Throws<InputException>(() => Read(new string('x', CertificateText.MostCharacters + 1)));

    private static Certificate Read(string text) => CertificateText.Read(text, IngredientDictionary.Shipped.Allergens);
}
