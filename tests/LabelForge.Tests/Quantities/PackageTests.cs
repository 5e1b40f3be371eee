using LabelForge.Markets;
using LabelForge.Quantities;

namespace LabelForge.Tests.Quantities;

public class PackageTests
{
    private static readonly DateOnly Day = new(2026, 11, 25);
    private static readonly NetAmount FourOunces = NetAmount.Parse("4 oz").Value!;

    // By hand: 3.25 x 2.25 = 7.3125; its six sides 2(7.3125 + 3.25 + 2.25) = 25.625.
    // A tube of 16.5 by 52 mm: 16.5 pi 52 = 2695.5 sq mm = 4.178 sq in, two fifths of it 1.671.
    // A jar of 3 by 2 in: 3 pi 2 = 18.850, two fifths 7.540; its lid adds 7.069. A tin of 2 by 0.75 in: lid 3.142, wall 4.712.
    [Theory]
    [InlineData("bar", "3.25x2.25x1 in", 7.3125, 25.625)]
    [InlineData("tube", "16.5 x 52 mm", 1.671, 4.178)]
    [InlineData("jar", "3x2 in", 7.540, 25.918)]
    [InlineData("bottle", "3x2 in", 7.540, 18.850)]
    [InlineData("tin", "2x0.75 in", 3.142, 10.996)]
    [InlineData("bag", "4x7 in", 28, 56)]
    public void Panel_and_surface_come_from_the_packages_size(string shape, string size, double panel, double surface)
    {
        var package = Package.Parse(shape, size).Value!;
        Assert.Equal(panel, (double)package.PrincipalPanel(Market.Us.On(Day)).Area.SquareInches, 0.001);
        Assert.Equal(surface, (double)package.LabellingSurface.SquareInches, 0.001);
    }

    // Found by fuzzing: a figure of another script passed the pattern and then failed as a number.
    [Fact]
    public void A_figure_of_another_script_is_told_not_thrown() => Assert.Null(Package.Parse("bag", "4x4\u0663 in").Value);

    [Theory] // 21 CFR 701.13(i), 701.3(b) and (p): the floors of a bar, a tube and a tin on both sides of 5 and 12 sq in.
    [InlineData("bar", "3.25x2.25x1 in", 0.125, 0.0625)]
    [InlineData("bar", "2.5x2x1 in", 0.0625, 0.0625)]
    [InlineData("tube", "16.5x52 mm", 0.0625, 0.03125)]
    [InlineData("tin", "2x0.75 in", 0.0625, 0.03125)]
    [InlineData("tin", "2x1 in", 0.0625, 0.0625)]
    public void The_floors_of_letters_come_from_the_package(string shape, string size, double net, double ingredients)
    {
        var package = Package.Parse(shape, size).Value!;
        var floors = LetterFloors.For(Market.Us, FourOunces, package.PrincipalPanel(Market.Us.On(Day)), package, Day);
        Assert.Equal((decimal)net, floors.NetQuantity.Height.Inches);
        Assert.Equal((decimal)ingredients, floors.Ingredients.Height.Inches);
        Assert.Equal("21 CFR 701.13(i)", floors.NetQuantity.Source);
        Assert.StartsWith("21 CFR 701.3(", floors.Ingredients.Source);
        Assert.Equal("21 CFR 740.2(a)", floors.Warnings.Source);
    }

    [Fact]
    public void A_package_of_unknown_size_keeps_the_greater_floor() =>
        Assert.Equal(0.0625m, LetterFloors.For(Market.Us, FourOunces, Panel.Parse("1x1in").Value!, null, Day).Ingredients.Height.Inches);

    [Fact] // C.R.C., c. 417, s. 15.
    public void In_Canada_all_that_is_required_is_sixteen_tenths_of_a_millimetre_high() =>
        Assert.Equal(1.6m, LetterFloors.For(Market.Ca, FourOunces, Panel.Parse("2x2in").Value!, null, Day).Required.Height.Millimetres);

    [Theory]
    [InlineData("cube", "1x1x1 in", "bar, box, tube")]
    [InlineData("bar", "3x2 in", "width x height x depth")]
    [InlineData("tube", "16x50", "diameter x height")]
    [InlineData("tube", "0x50 mm", "1 mm to 2 m")]
    public void What_is_no_package_is_refused_with_what_to_write(string shape, string size, string told) =>
        Assert.Contains(told, Package.Parse(shape, size).Write);

    [Theory]
    [InlineData("cube", "1x1x1 in", "\"cube\" is not a shape")]
    [InlineData("bar", "3 by 2 in", "\"3 by 2 in\" is not a size")]
    [InlineData("bar", "3x2 in", "A bar has 3 measures, and \"3x2 in\" gives 2")]
    [InlineData("tube", "0.9x50 mm", "has a side that no package has")]
    [InlineData("tube", "16x2001 mm", "\"16x2001 mm\" has a side")]
    public void What_is_no_package_is_refused_with_what_is_wrong(string shape, string size, string told) =>
        Assert.Contains(told, Package.Parse(shape, size).Wrong);

    [Theory]
    [InlineData("bar", "3x2 in", "3.25x2.25x1 in")]
    [InlineData("tube", "16x50", "60x40 mm")]
    public void The_example_has_as_many_measures_as_the_shape(string shape, string size, string example) =>
        Assert.Contains(example, Package.Parse(shape, size).Write);

    [Theory]
    [InlineData("1x2000 mm", 1, 2000)]
    [InlineData("0.1x200 cm", 1, 2000)]
    public void A_card_may_be_a_millimetre_wide_and_two_metres_high(string size, int width, int height)
    {
        var sides = Package.Parse("card", size).Value!.Sides;
        Assert.Equal((width, height), (sides["width"].Millimetres, sides["height"].Millimetres));
    }

    [Fact] // 21 CFR 701.3(p): less than 12 square inches; a card of 2 by 3 has exactly twelve.
    public void A_surface_of_exactly_twelve_square_inches_is_not_small()
    {
        var card = Package.Parse("card", "2x3 in").Value!;
        Assert.Equal(12m, card.LabellingSurface.SquareInches);
        Assert.Equal(0.0625m,
            LetterFloors.For(Market.Us, FourOunces, card.PrincipalPanel(Market.Us.On(Day)), card, Day).Ingredients.Height.Inches);
    }

    [Theory] // Regulation (EU) No 1169/2011, Article 13(2) and (3), taken over as common practice: less than 80 square centimetres.
    [InlineData("80x100 mm", 1.2)]
    [InlineData("79x100 mm", 0.9)]
    [InlineData("90x100 mm", 1.2)]
    public void In_Europe_and_Britain_a_side_below_eighty_square_centimetres_bears_smaller_letters(string size, double millimetres)
    {
        var card = Package.Parse("card", size).Value!;
        Assert.All([Market.Eu, Market.Uk], market =>
        {
            var floors = LetterFloors.For(market, FourOunces, card.PrincipalPanel(Market.Us.On(Day)), card, Day);
            Assert.Equal(((decimal)millimetres, (decimal)millimetres),
                (floors.Ingredients.Height.Millimetres, floors.Warnings.Height.Millimetres));
        });
    }

    [Fact]
    public void In_Europe_and_Britain_a_package_of_unknown_size_keeps_the_greater_floor() => Assert.All([Market.Eu, Market.Uk], market =>
        Assert.Equal(1.2m, LetterFloors.For(market, FourOunces, Panel.Parse("40x40mm").Value!, null, Day).Ingredients.Height.Millimetres));
}
