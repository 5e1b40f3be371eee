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
    // Liang's own title; the others by a dictionary's syllables, said by nobody whose tongue they are.
    [Theory]
    [InlineData("en", "hyphenation", "hy-phen-ation")]
    [InlineData("en", "computer", "com-puter")]
    [InlineData("en", "Elderflower", "El-der-flower")]
    [InlineData("fr", "saponification", "sa-po-ni-fi-ca-tion")]
    [InlineData("fr", "exfoliant", "ex-fo-liant")]
    [InlineData("de", "Körperpflegemittel", "Kör-per-pfle-ge-mit-tel")]
    [InlineData("de", "Ringelblumenseife", "Rin-gel-blu-men-sei-fe")]
    [InlineData("es", "manzanilla", "man-za-ni-lla")]
    [InlineData("it", "lavanda", "la-van-da")]
    [InlineData("nl", "kamillebloemen", "ka-mil-le-bloe-men")]
    [InlineData("pl", "lawendowe", "la-wen-do-we")]
    [InlineData("pt", "alfazema", "al-fa-zema")]
    [InlineData("sv", "lavendel", "la-ven-del")]
    [InlineData("da", "lavendel", "la-ven-del")]
    [InlineData("fi", "saippua", "saip-pua")]
    [InlineData("sl", "sivka", "siv-ka")]
    [InlineData("hr", "lavanda", "la-van-da")]
    [InlineData("et", "lavendel", "la-ven-del")]
    [InlineData("lt", "levanda", "le-van-da")]
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
    public void A_word_of_a_language_without_patterns_is_broken_as_in_English() =>
        Assert.Same(Hyphenation.Of("en"), Hyphenation.For("Szappan", ["hu"]));

    [Fact]
    public void All_languages_that_are_named_have_patterns_and_a_notice_of_whose_they_are()
    {
        var notices = File.ReadAllText(Path.Combine(Folder(), "LICENSES.txt"));
        Assert.All(Hyphenation.Languages, l =>
        {
            Assert.NotNull(Hyphenation.Of(l));
            Assert.Contains($"\n{l}.txt\n\n    ", notices, StringComparison.Ordinal);
        });
        Assert.Equal(Hyphenation.Languages, Directory.GetFiles(Folder(), "??.txt")
            .Select(Path.GetFileNameWithoutExtension).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_German_label_is_broken_as_German_but_for_its_ingredients()
    {
        var content = FrontTests.Usual(Market.Eu) with { Languages = ["de"] };
        ElementText Text(Role role) => ElementText.From(
            LabelDesign.Load("lip-tube-wrap").Panels.SelectMany(p => p.Elements).First(e => e.Role == role), content, "d")!;
        Assert.Equal(["de"], Text(Role.Name).Languages);
        Assert.Equal(["en", "de"], Text(Role.Ingredients).Languages);
    }

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

    private static string Folder()
    {
        var at = new DirectoryInfo(AppContext.BaseDirectory);
        while (at is not null && !File.Exists(Path.Combine(at.FullName, "LabelForge.sln")))
            at = at.Parent;
        return Path.Combine(at!.FullName, "templates", "hyphens");
    }
}
