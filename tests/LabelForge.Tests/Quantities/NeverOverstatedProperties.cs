using System.Globalization;
using CsCheck;
using LabelForge.Markets;
using LabelForge.Measures;
using LabelForge.Quantities;

namespace LabelForge.Tests.Quantities;

public class NeverOverstatedProperties
{
    private static readonly DateOnly Day = new(2026, 11, 25);

    private static readonly Gen<NetAmount> Amounts =
        from hundredths in Gen.Long[30, 1_000_000] // below 0.3 g or mL there is not a hundredth of an ounce to state
        from isMass in Gen.Bool
        from customary in Gen.Bool
        from digits in Gen.Int[0, 7]
        let figure = hundredths / 100m
        let system = customary ? MeasureSystem.Customary : MeasureSystem.Metric
        let known = digits == 0 ? (int?)null : digits
        select (isMass, customary) switch
        {
            (true, true) => NetAmount.Of(Mass.FromOunces(figure), system, known),
            (true, false) => NetAmount.Of(Mass.FromGrams(figure), system, known),
            (false, true) => NetAmount.Of(Volume.FromFluidOunces(figure), system, known),
            (false, false) => NetAmount.Of(Volume.FromMillilitres(figure), system, known),
        };

    [Fact]
    public void Neither_figure_states_more_than_the_package_holds() => Amounts.Sample(
        amount =>
        {
            var stated = NetQuantityStatement.For(Market.Us, amount, Day);
            Assert.True(Units(stated.Metric) <= amount.Metric, stated.Statement);
            Assert.True(Ounces(stated.Customary!) <= amount.Ounces, stated.Statement);
        },
        iter: 5_000);

    [Fact]
    public void Pounds_and_pints_in_parentheses_say_the_same_as_the_ounces() => Amounts.Sample(
        amount =>
        {
            var customary = NetQuantityStatement.For(Market.Us, amount, Day).Customary!;
            if (customary.Split(" (") is [var ounces, var beside])
                Assert.Equal(Ounces(ounces), Ounces(beside.TrimEnd(')')));
        },
        iter: 5_000);

    [Fact]
    public void The_makers_own_customary_figure_is_kept_to_the_hundredth() =>
        Amounts.Where(a => a.System == MeasureSystem.Customary).Sample(
            amount => Assert.Equal(amount.Ounces, Ounces(NetQuantityStatement.For(Market.Us, amount, Day).Customary!)),
            iter: 5_000);

    [Fact]
    public void What_is_cut_off_is_less_than_a_tenth_of_the_package() => Amounts.Where(a => a.Ounces >= 0.1m).Sample(
        amount =>
        {
            var stated = NetQuantityStatement.For(Market.Us, amount, Day);
            Assert.True(Ounces(stated.Customary!) > 0.9m * amount.Ounces, stated.Statement);
        },
        iter: 5_000);

    [Fact]
    public void A_converted_ounce_figure_has_no_more_digits_than_the_measurement() =>
        Amounts.Where(a => a is { System: MeasureSystem.Metric, Digits: >= 2 }).Sample(
            amount =>
            {
                var ounces = NetQuantityStatement.For(Market.Us, amount, Day).Customary!.Split(" (")[0];
                if (ounces.Contains("oz", StringComparison.Ordinal)
                    && ounces.Split(' ') is [var figure, ..]
                    && figure.Contains('.')
                    && Ounces(ounces) < 64m)
                    Assert.True(figure.Replace(".", "", StringComparison.Ordinal).TrimStart('0').Length <= amount.Digits, ounces);
            },
            iter: 5_000);

    // Reads a statement back without the code that wrote it: figures and units in turn, up to the first parenthesis.
    private static decimal Ounces(string customary)
    {
        var words = customary.Split(" (")[0].Replace("fl oz", "floz", StringComparison.Ordinal).Split(' ');
        return words.Chunk(2).Sum(p => decimal.Parse(p[0], CultureInfo.InvariantCulture) * p[1] switch
        {
            "oz" or "floz" => 1m,
            "lb" or "pt" => 16m,
            "qt" => 32m,
            "gal" => 128m,
            _ => throw new FormatException(customary),
        });
    }

    private static decimal Units(string metric) => metric.Split(' ') is [var figure, var unit]
        ? decimal.Parse(figure, CultureInfo.InvariantCulture) * (unit is "kg" or "L" ? 1000m : 1m)
        : throw new FormatException(metric);
}
