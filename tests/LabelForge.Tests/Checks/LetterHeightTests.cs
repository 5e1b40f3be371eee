using System.Globalization;
using System.Text.RegularExpressions;
using LabelForge.Checks;
using LabelForge.Checks.Reading;
using LabelForge.Markets;
using LabelForge.Measures;
using LabelForge.Quantities;

namespace LabelForge.Tests.Checks;

/// <summary>Heights of letters against the tables of the law, at each of their bounds. Flat letters stand up to 0.07 mm below the
/// round ones that the law measures, so that much less is no finding.</summary>
public sealed partial class LetterHeightTests
{
    private const string Us =
        "Lip balm\nNet Wt 4 oz (113 g)\nIngredients: Beeswax, Lanolin.\nExample Works, 12 Mill Road, Fairport, ME 04999\nLot 1\n";
    private const string Ca =
        "Lip balm / Baume à lèvres\n113 g\nIngredients: Beeswax, Lanolin.\nExample Works, 12 Mill Road, Exampleton, ON K1A 0A1\nLot 1\n";

    // 21 CFR 701.13(i): 1/16 in up to 5 square inches, 1/8 up to 25, 3/16 up to 100, 1/4 up to 400, 1/2 above.
    // C.R.C., c. 417, s. 14(2): 1.6 mm up to 32 cm2, 3.2 up to 258, 6.4 up to 645, 9.5 up to 2,580, 12.7 above.
    [Theory]
    [InlineData("us", "1x5in", 1.5875)]
    [InlineData("us", "1x5.01in", 3.175)]
    [InlineData("us", "5x5in", 3.175)]
    [InlineData("us", "5x5.01in", 4.7625)]
    [InlineData("us", "10x10in", 4.7625)]
    [InlineData("us", "10x10.01in", 6.35)]
    [InlineData("us", "20x20in", 6.35)]
    [InlineData("us", "20x20.01in", 12.7)]
    [InlineData("ca", "40x80mm", 1.6)]
    [InlineData("ca", "40x81mm", 3.2)]
    [InlineData("ca", "100x258mm", 3.2)]
    [InlineData("ca", "100x259mm", 6.4)]
    [InlineData("ca", "100x645mm", 6.4)]
    [InlineData("ca", "100x646mm", 9.5)]
    [InlineData("ca", "200x1290mm", 9.5)]
    [InlineData("ca", "200x1291mm", 12.7)]
    public void The_net_quantity_is_as_high_as_its_panel_asks(string market, string panel, double least)
    {
        var text = market == "us" ? Us : Ca;
        var asked = (decimal)least - 0.07m;
        Assert.Empty(TooSmall(market, Measured(text, asked, asked), panel));
        var found = Assert.Single(TooSmall(market, Measured(text, asked - 0.001m, asked - 0.001m), panel));
        Assert.Equal(Severity.Must, found.Severity);
        Assert.Contains(Millimetres((decimal)least), found.Message, StringComparison.Ordinal);
        Assert.Contains(Millimetres(asked - 0.001m), found.Message, StringComparison.Ordinal);
    }

    // Directive 76/211/EEC, Annex I, 3.1: 2 mm up to 50 g, 3 mm up to 200 g, 4 mm up to 1,000 g, 6 mm above; no panel is asked for.
    [Theory]
    [InlineData("50 g", 2)]
    [InlineData("51 g", 3)]
    [InlineData("200 g", 3)]
    [InlineData("201 g", 4)]
    [InlineData("1000 g", 4)]
    [InlineData("1001 g", 6)]
    [InlineData("1.1 kg", 6)]
    [InlineData("50 ml", 2)]
    public void In_europe_the_quantity_itself_says_how_high_it_stands(string quantity, int least)
    {
        var text = $"Body lotion\n{quantity}\nIngredients: Aqua, Glycerin.\nExample Works, 12 Rue du Moulin, 75001 Exempleville, France\n";
        foreach (var market in new[] { "eu", "uk" })
        {
            Assert.Empty(TooSmall(market, Measured(text, 1.2m, least - 0.07m), null));
            var found = Assert.Single(TooSmall(market, Measured(text, 1.2m, least - 0.08m), null));
            Assert.Contains(Millimetres(least), found.Message, StringComparison.Ordinal);
        }
    }

    // 21 CFR 701.13(h)(2): where capitals and small letters are mixed, the lower-case o is measured. Elsewhere the figures are.
    [Fact]
    public void Small_letters_count_where_the_law_measures_the_o()
    {
        Assert.Single(TooSmall("us", Measured(Us, 1.5m, 3m), "1x5in"));
        Assert.Empty(TooSmall("us", Measured(Us, null, 1.6m), "1x5in"));
        Assert.Empty(TooSmall("ca", Measured(Ca, 0.8m, 1.6m), "40x80mm"));
        Assert.Single(TooSmall("ca", Measured(Ca, 1.6m, 1.5m), "40x80mm"));
    }

    // A page may hold several panels: what the least of any panel forbids is certain, the rest hangs on the panel.
    [Fact]
    public void Of_a_page_whose_panel_nobody_gave_only_the_least_height_of_any_is_certain()
    {
        var page = (Length.FromInches(4), Length.FromInches(6));
        Assert.Equal(Severity.Must, Assert.Single(TooSmall("us", Measured(Us, 1.4m, 1.4m) with { Page = page }, null)).Severity);
        var perhaps = Assert.Single(TooSmall("us", Measured(Us, 2m, 2m) with { Page = page }, null));
        Assert.NotEqual(Severity.Must, perhaps.Severity);
        Assert.Contains("a panel of 24 square inches", perhaps.Message, StringComparison.Ordinal);
        Assert.Equal(Severity.Must, Assert.Single(TooSmall("us", Measured(Us, 2m, 2m) with { Page = page }, "4x6in")).Severity);
    }

    [Fact]
    public void What_was_not_measured_is_said_with_what_is_wanting()
    {
        var words = Assert.Single(Found("us", LabelText.Of(Us, "label.txt"), "1x5in"), f => f.Rule == "net-quantity.type-not-measured");
        Assert.Contains("the label came as text, or its letters have no outlines", words.Message, StringComparison.Ordinal);
        Assert.Contains("1.59 mm", words.Fix, StringComparison.Ordinal);
        Assert.DoesNotContain("and more on a larger panel", words.Fix, StringComparison.Ordinal);
        var panel = Assert.Single(Found("us", Measured(Us, 3m, 3m), null), f => f.Rule == "net-quantity.type-not-measured");
        Assert.Contains("the size of the panel is not known; give its width and height", panel.Message, StringComparison.Ordinal);
        Assert.Contains("1.59 mm, and more on a larger panel", panel.Fix, StringComparison.Ordinal);
        Assert.DoesNotContain(Found("us", Measured(Us, 3m, 3m), "1x5in"), f => f.Rule == "net-quantity.type-not-measured");
    }

    // 21 CFR 701.3(b), (p): 1/16 in, and 1/32 in where all of the package has less than 12 square inches for labels.
    [Theory]
    [InlineData(1.518, null)]
    [InlineData(1.517, "Should")]
    [InlineData(0.724, "Should")]
    [InlineData(0.723, "Must")]
    public void The_ingredients_of_a_small_package_may_be_half_as_high(double height, string? severity)
    {
        var found = Found("us", Measured(Us, (decimal)height, 3m), "4x6in").Where(f => f.Rule == "ingredients.type-too-small").ToArray();
        Assert.Equal(severity, found.SingleOrDefault()?.Severity.ToString());
        if (found.Length > 0)
            Assert.Contains(Millimetres((decimal)height), found[0].Message, StringComparison.Ordinal);
    }

    // C.R.C., c. 417, s. 15 and 16: 1.6 mm, and 0.8 mm where the principal display surface is at most 10 square centimetres.
    [Theory]
    [InlineData("20x50mm", 0.74, false)]
    [InlineData("20x50mm", 0.72, true)]
    [InlineData("20x51mm", 1.52, true)]
    [InlineData("20x51mm", 1.53, false)]
    public void Canadas_lesser_height_is_for_a_very_small_panel(string panel, double height, bool found) =>
        Assert.Equal(found, Found("ca", Measured(Ca, (decimal)height, 3.2m), panel)
            .Any(f => f.Rule == "ingredients.type-too-small" && f.Severity == Severity.Must));

    private static Finding[] TooSmall(string market, LabelText text, string? panel) =>
        [.. Found(market, text, panel).Where(f => f.Rule == "net-quantity.type-too-small")];

    private static Finding[] Found(string market, LabelText text, string? panel) =>
        CheckedLabel.Found(text, Market.Named(market), panel is null ? null : Panel.Parse(panel).OrRefuse());

    // Every word as high as the next: small letters, and capitals and figures.
    private static LabelText Measured(string text, decimal? lower, decimal upper)
    {
        var read = LabelText.Of(text, "label.pdf");
        return read with
        {
            Heights =
            [
                .. Word().Matches(read.Text).Select(w => new WordHeight(new(w.Index, w.Length), 1,
                    lower is { } l ? Length.FromMillimetres(l) : null, Length.FromMillimetres(upper))),
            ],
        };
    }

    private static string Millimetres(decimal length) => length.ToString("0.00", CultureInfo.InvariantCulture) + " mm";

    [GeneratedRegex(@"\S+")]
    private static partial Regex Word();
}
