using LabelForge.Markets;
using LabelForge.Measures;
using LabelForge.Quantities;

namespace LabelForge.Tests.Quantities;

public class LetterHeightTests
{
    private static readonly DateOnly Day = new(2026, 11, 25);
    private static readonly NetAmount Bar = NetAmount.Of(Mass.FromGrams(113m));

    /// <summary>21 CFR 701.13(i): each bound belongs to the smaller letters.</summary>
    [Theory]
    [InlineData(5, 0.0625)]
    [InlineData(5.01, 0.125)]
    [InlineData(25, 0.125)]
    [InlineData(25.01, 0.1875)]
    [InlineData(100, 0.1875)]
    [InlineData(100.01, 0.25)]
    [InlineData(400, 0.25)]
    [InlineData(400.01, 0.5)]
    public void Us_letters_grow_with_the_principal_display_panel(double squareInches, double inches)
    {
        var panel = Panel.Rectangle(Length.FromInches((decimal)squareInches), Length.FromInches(1m));
        var least = LetterHeight.Least(Market.Us, Bar, panel, Day)!;
        Assert.Equal(((decimal)inches, (decimal)inches * 25.4m, "21 CFR 701.13(i)"), (least.Inches, least.Mm, least.Source));
    }

    /// <summary>Consumer Packaging and Labelling Regulations, C.R.C., c. 417, s. 14(2)(a) to (e).</summary>
    [Theory]
    [InlineData(32, 1.6)]
    [InlineData(32.1, 3.2)]
    [InlineData(258, 3.2)]
    [InlineData(258.1, 6.4)]
    [InlineData(645, 6.4)]
    [InlineData(645.1, 9.5)]
    [InlineData(2580, 9.5)]
    [InlineData(2580.1, 12.7)]
    public void Canadian_figures_grow_with_the_principal_display_surface(double squareCentimetres, double millimetres)
    {
        var panel = Panel.Rectangle(Length.FromMillimetres((decimal)squareCentimetres * 10m), Length.FromMillimetres(10m));
        Assert.Equal((decimal)millimetres, LetterHeight.Least(Market.Ca, Bar, panel, Day)!.Mm);
    }

    /// <summary>Directive 76/211/EEC, Annex I, 3.1: each bound belongs to the smaller figures.</summary>
    [Theory]
    [InlineData(50, 2)]
    [InlineData(50.1, 3)]
    [InlineData(200, 3)]
    [InlineData(200.1, 4)]
    [InlineData(1000, 4)]
    [InlineData(1000.1, 6)]
    public void European_and_british_figures_grow_with_the_quantity_itself(double grams, int millimetres)
    {
        var mass = NetAmount.Of(Mass.FromGrams((decimal)grams));
        var volume = NetAmount.Of(Volume.FromMillilitres((decimal)grams));
        Assert.All([Market.Eu, Market.Uk], market =>
        {
            Assert.Equal(millimetres, LetterHeight.Least(market, mass, null, Day)!.Mm);
            Assert.Equal(millimetres, LetterHeight.Least(market, volume, null, Day)!.Mm);
        });
    }

    [Theory]
    [InlineData("us")]
    [InlineData("ca")]
    public void No_height_is_named_where_it_turns_on_a_panel_that_is_not_known(string market) =>
        Assert.Null(LetterHeight.Least(Market.Named(market), Bar, null, Day));
}
