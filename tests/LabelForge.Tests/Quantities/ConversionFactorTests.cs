using LabelForge.Measures;

namespace LabelForge.Tests.Quantities;

/// <summary>NIST Handbook 44, Appendix C, tables of units of mass and of liquid volume: the
/// values there, exact or to the digits given.</summary>
public class ConversionFactorTests
{
    [Fact]
    public void The_exact_factors_are_those_of_handbook_44()
    {
        Assert.Equal(28.349523125m, Mass.FromOunces(1m).Grams);
        Assert.Equal(453.59237m, Mass.FromPounds(1m).Grams);
        Assert.Equal(29.5735295625m, Volume.FromFluidOunces(1m).Millilitres);
        Assert.Equal(473.176473m, Volume.FromFluidOunces(16m).Millilitres);    // 1 liquid pint
        Assert.Equal(946.352946m, Volume.FromFluidOunces(32m).Millilitres);    // 1 liquid quart
        Assert.Equal(3785.411784m, Volume.FromFluidOunces(128m).Millilitres);  // 1 gallon
        Assert.Equal(25.4m, Length.FromInches(1m).Millimetres);
    }

    [Fact]
    public void A_gallon_is_231_cubic_inches() =>
        Assert.Equal(231m * 2.54m * 2.54m * 2.54m, Volume.FromFluidOunces(128m).Millilitres);

    [Fact]
    public void A_gram_and_a_millilitre_come_out_as_tabled()
    {
        Assert.Equal(0.03527396m, Math.Round(Mass.FromGrams(1m).Ounces, 8));
        Assert.Equal(0.03381402m, Math.Round(Volume.FromMillilitres(1m).FluidOunces, 8));
    }
}
