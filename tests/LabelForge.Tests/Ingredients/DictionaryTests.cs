using LabelForge.Ingredients;
using LabelForge.Measures;

namespace LabelForge.Tests.Ingredients;

public class DictionaryTests
{
    private static readonly IngredientDictionary Dictionary = IngredientDictionary.Shipped;

    [Fact]
    public void The_dictionary_holds_what_makers_commonly_meet() => Assert.True(Dictionary.Entries.Length >= 120);

    [Fact]
    public void No_two_entries_share_a_key() =>
        Assert.Empty(Dictionary.Entries.GroupBy(e => e.Key, StringComparer.OrdinalIgnoreCase).Where(g => g.Count() > 1).Select(g => g.Key));

    [Fact]
    public void Every_name_of_an_entry_finds_that_entry_unless_colours_share_it() =>
        Assert.Empty(
            from entry in Dictionary.Entries
            from name in entry.Names
            let found = Dictionary.Find(name)
            where found != entry && !(found!.Us == entry.Us && entry.IsColourant)
            select $"{name}: {entry.Key} or {found.Key}");

    [Fact]
    public void Every_colourant_has_its_colour_index_number() =>
        Assert.Empty(Dictionary.Entries.Where(e => e.IsColourant && e.ColourIndex is null).Select(e => e.Key));

    [Fact]
    public void A_colourant_is_declared_in_the_EU_by_its_colour_index_number() =>
        Assert.Empty(Dictionary.Entries.Where(e => e.IsColourant && e.Eu != $"CI {e.ColourIndex}").Select(e => e.Key));

    [Theory]
    [InlineData("castor oil", "Ricinus Communis (Castor) Seed Oil")]
    [InlineData("Ricinus Communis Seed Oil", "Ricinus Communis (Castor) Seed Oil")]
    [InlineData("RICINUS COMMUNIS (CASTOR) SEED OIL", "Ricinus Communis (Castor) Seed Oil")]
    [InlineData("shea butter", "Butyrospermum Parkii (Shea) Butter")]
    [InlineData("vitamin E", "Tocopherol")]
    [InlineData("sea salt", "Sea Salt")]
    [InlineData("Aqua", "Water")]
    [InlineData("Water (Aqua)", "Water")]
    [InlineData("Aqua (Water)", "Water")]
    [InlineData("Parfum (Fragrance)", "Fragrance")]
    [InlineData("CI 77891", "Titanium Dioxide")]
    [InlineData("ci77891", "Titanium Dioxide")]
    [InlineData("Iron Oxides (CI 77499)", "Iron Oxides")]
    public void A_name_as_people_and_suppliers_write_it_is_found(string written, string us) => Assert.Equal(us, Dictionary.Find(written)?.Us);

    [Fact]
    public void A_colour_in_parentheses_is_told_by_its_number() => Assert.Equal("77499", Dictionary.Find("Iron Oxides (CI 77499)")!.ColourIndex);

    [Fact]
    public void A_misspelt_name_is_never_guessed_but_the_nearest_are_offered()
    {
        Assert.Null(Dictionary.Find("Glycerrin"));
        Assert.Equal("Glycerin", Dictionary.Suggest("Glycerrin")[0].Us);
    }

    // CAS, "Check Digit Verification of CAS Registry Numbers": the sum of (digit times its place from the right) modulo 10.
    // Water 7732-18-5: 8*1 + 1*2 + 2*3 + 3*4 + 7*5 + 7*6 = 105, so 5.
    [Theory]
    [InlineData("7732-18-5", true)]
    [InlineData("107-07-3", true)]
    [InlineData("7732-18-6", false)]
    [InlineData("1205-50-3", false)] // an error in the official Annex V export; the right one is 120-50-3
    [InlineData("77321-8-5", false)]
    public void A_CAS_number_proves_itself_by_its_check_digit(string text, bool right) => Assert.Equal(right, CasNumber.Parse(text).IsValue);

    [Theory]
    [InlineData("Water,Aqua,,,7732-18-6,,,,,,,somewhere", "check digit")]
    [InlineData("Water,,,,,,,,,,,somewhere", "EU name")]
    [InlineData("Water,Aqua,,,,,,,,,,", "source")]
    [InlineData("Water,Aqua,,,,,,,,shiny,,somewhere", "not a flag")]
    [InlineData("Water,Aqua", "cells")]
    public void A_row_that_is_no_entry_is_refused_with_its_row(string row, string wrong)
    {
        var text = "us,eu,inci,ca,cas,ec,ci,everyday,roles,flags,koh,source\n" + row + "\n";
        var problem = Assert.Throws<InputException>(() => DictionaryFile.Read(new StringReader(text), "test.csv")).Problem;
        Assert.Equal(2, problem.Line);
        Assert.Contains(wrong, problem.Wrong);
    }
}
