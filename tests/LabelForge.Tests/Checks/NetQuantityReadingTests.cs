using LabelForge.Checks;
using LabelForge.Checks.Reading;
using LabelForge.Markets;
using LabelForge.Quantities;

namespace LabelForge.Tests.Checks;

/// <summary>Net quantities in the ways people write them, and whether the two systems state one quantity.</summary>
public sealed class NetQuantityReadingTests
{
    // Ways of writing seen on labels; figures by NIST Handbook 44, Appendix C (1 oz = 28.349523125 g, 1 fl oz = 29.5735295625 mL).
    [Theory]
    [InlineData("4oz/113g", "113.3981", "113")]
    [InlineData("NET WT. 4 OZ (113 GRAMS)", "113.3981", "113")]
    [InlineData("113 g e 4 oz", "113.3981", "113")]
    [InlineData("113g ℮ 4oz", "113.3981", "113")]
    [InlineData("8 fl. oz. 237ml", "236.5882", "237")]
    [InlineData("8 FL OZ • 236 mL", "236.5882", "236")]
    [InlineData("1 lb. 2 oz (510 g)", "510.2914", "510")]
    [InlineData("1 lb, 2 oz | 510 g", "510.2914", "510")]
    [InlineData("Net Wt 24 oz (1 lb 8 oz) 680 g", "680.3886", "680")]
    [InlineData("Net Wt. 4 1/2 oz. (127 g)", "127.5729", "127")]
    [InlineData("Net weight 4½ oz / 127 grams", "127.5729", "127")]
    [InlineData("NET CONTENTS: 1 PT (16 FL OZ) 473 ML", "473.1765", "473")]
    [InlineData("Net Wt .15 oz - 4.25g", "4.2524", "4.25")]
    [InlineData("4 ounces\n113 grams", "113.3981", "113")]
    [InlineData("Net Wt 2.2 lb (1,000 g)", "997.9032", "1000")]
    public void A_net_quantity_is_read_in_both_systems(string written, string customary, string metric)
    {
        var read = Assert.Single(NetQuantityReader.Read(written));
        Assert.Equal(decimal.Parse(customary, System.Globalization.CultureInfo.InvariantCulture),
            Math.Round(read.In(MeasureSystem.Customary)!.Metric, 4));
        Assert.Equal(decimal.Parse(metric, System.Globalization.CultureInfo.InvariantCulture), read.In(MeasureSystem.Metric)!.Metric);
    }

    // 21 CFR 701.13 asks for exact statements; what ordinary rounding is: common practice after NIST Handbook 130.
    [Theory]
    [InlineData("4 oz (113 g)", Agreement.Agree)]
    [InlineData("16 oz (453 g)", Agreement.Agree)]
    [InlineData("16 oz (454 g)", Agreement.Agree)]
    [InlineData("8 fl oz (237 mL)", Agreement.RoundedUp)]
    [InlineData("3.4 fl oz (100 mL)", Agreement.Agree)]
    [InlineData("1 oz (28 g)", Agreement.Agree)]
    [InlineData("3.52 oz (100 g)", Agreement.Agree)]
    [InlineData("3.53 oz (100 g)", Agreement.Agree)]
    [InlineData("3.5 oz (100 g)", Agreement.CutShort)]
    [InlineData("4 oz (133 g)", Agreement.Disagree)]
    [InlineData("4 oz (112 g)", Agreement.Disagree)]
    [InlineData("4 oz (114 g)", Agreement.Disagree)]
    [InlineData("8 oz (227 mL)", Agreement.Disagree)]
    [InlineData("1 lb (450 g)", Agreement.Disagree)]
    public void Two_systems_disagree_only_beyond_ordinary_rounding(string written, Agreement expected)
    {
        var read = Assert.Single(NetQuantityReader.Read(written));
        Assert.Equal(expected, QuantityAgreement.Between(read.In(MeasureSystem.Customary)!, read.In(MeasureSystem.Metric)!));
    }

    // What the tool itself states must never be found to disagree with itself.
    [Fact]
    public void Every_statement_made_here_agrees_with_itself()
    {
        for (var tenths = 10; tenths < 20_000; tenths += tenths < 300 ? 1 : 37)
        {
            var written = (tenths / 10m).ToString(System.Globalization.CultureInfo.InvariantCulture);
            foreach (var unit in new[] { "g", "mL", "oz", "fl oz" })
            {
                var amount = NetAmount.Parse($"{written} {unit}").Value!;
                var statement = NetQuantityStatement.For(MarketBook.Shipped.Usual, amount, new DateOnly(2026, 11, 25)).Statement;
                var read = Assert.Single(NetQuantityReader.Read(statement));
                Assert.True(QuantityAgreement.Between(read.In(MeasureSystem.Customary)!,
                    read.In(MeasureSystem.Metric)!) != Agreement.Disagree, $"{amount}: {statement}");
            }
        }
    }

    [Theory]
    [InlineData("Dissolve 2 oz in the bath.")]
    [InlineData("Use 5 g per wash")]
    [InlineData("Contains 100 % natural oils")]
    [InlineData("12 Mill Road")]
    public void What_tells_how_to_use_it_is_no_net_quantity(string text) => Assert.Empty(NetQuantityReader.Read(text));
}
