using LabelForge.Checks.Reading;

namespace LabelForge.Tests.Measures;

/// <summary>Accents written behind their letters, as some programs save them, are read as the letters with their accents.</summary>
public class ComposedTextTests
{
    [Theory]
    [InlineData("e\u0301", "é")]
    [InlineData("Rosmarin a\u0300 la cre\u0300me", "Rosmarin à la crème")]
    [InlineData("A\u030Angstro\u0308m", "Ångström")]
    [InlineData("Σαπου\u0301νι", "Σαπούνι")]
    [InlineData("\uFF11\uFF10\uFF10 \uFF47", "100 g")]
    [InlineData("Glycerin", "Glycerin")]
    [InlineData("\u0301 alone", "\u0301 alone")]
    public void A_mark_joins_its_letter(string apart, string whole) => Assert.Equal(whole, ComposedText.Of(apart));

    [Fact]
    public void A_label_in_apart_written_accents_is_the_same_label() =>
        Assert.Equal(LabelText.Of("Savon a\u0300 la lavande\nIngrédients: Glycerin", "a").Text,
            LabelText.Of("Savon à la lavande\nIngre\u0301dients: Glycerin", "a").Text);
}
