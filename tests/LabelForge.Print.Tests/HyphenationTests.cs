using LabelForge.Markets;
using LabelForge.Measures;
using LabelForge.Print.Designs;
using LabelForge.Print.Fitting;
using LabelForge.Print.Lettering;
using LabelForge.Print.Looks;
using LabelForge.Print.Ornaments;
using LabelForge.Print.Tests.Looks;

namespace LabelForge.Print.Tests;

public class HyphenationTests
{
    // Liang's own title; the others by a dictionary's syllables.
    [Theory]
    [InlineData("en", "hyphenation", "hy-phen-ation")]
    [InlineData("en", "computer", "com-puter")]
    [InlineData("en", "Elderflower", "El-der-flower")]
    [InlineData("fr", "saponification", "sa-po-ni-fi-ca-tion")]
    [InlineData("fr", "exfoliant", "ex-fo-liant")]
    [InlineData("en", "Io", "Io")]
    public void A_word_is_broken_between_its_syllables(string language, string word, string broken)
    {
        var at = Hyphenation.Of(language).BreaksIn(word).ToList();
        Assert.Equal(broken, string.Concat(word.Select((c, i) => at.Contains(i) ? $"-{c}" : $"{c}")));
    }

    [Fact]
    public void A_letter_that_English_has_not_is_broken_as_in_French() =>
        Assert.Same(Hyphenation.Of("fr"), Hyphenation.For("Régénératrice", ["en", "fr"]));

    [Fact]
    public void A_name_too_wide_for_its_tube_is_broken_and_still_said_whole()
    {
        var look = FrontTests.Of("split", "bookish", OrnamentFamily.All[2], null, 120);
        var content = FrontTests.Usual(Market.Us) with
        {
            ProductName = "Elderflowerandchamomile",
            NetQuantity = "Net Wt 0.15 oz (4.5 g)",
            Ingredients = ["Glycerin"],
            Warnings = [],
        };
        var layout = LabelFitter.Fit(LabelDesign.Load("lip-tube-wrap").In(look), content, null).OrRefuse();
        var name = layout.Texts.Single(t => t.Role == Role.Name);
        Assert.Equal("Elderflowerandchamomile", name.Text);
        var lines = layout.Lines.Where(l => l.Role == Role.Name).Select(l => l.Text.Text).ToList();
        Assert.True(lines.Count > 1);
        Assert.All(lines.SkipLast(1), l => Assert.EndsWith("-", l));
        Assert.Equal("Elderflowerandchamomile", string.Concat(lines.Select(l => l.TrimEnd('-'))));
    }

    [Fact]
    public void A_name_that_fits_with_smaller_letters_is_not_broken()
    {
        var layout = LabelFitter.Fit(LabelDesign.Load("bar-front-2x2")
            .In(FrontTests.Of("stack", "bookish", OrnamentFamily.All[2], null, 120)),
            FrontTests.Usual(Market.Us) with { ProductName = "Elderflower" }, null).OrRefuse();
        Assert.Equal("Elderflower", layout.Lines.Single(l => l.Role == Role.Name).Text.Text);
    }

    [Fact]
    public void A_net_quantity_is_never_broken()
    {
        var items = Paragraph.Hyphenated(new ParagraphItem(BundledFaces.Regular, "113"), 0.5, ["en"]).ToList();
        Assert.Single(items);
    }
}
