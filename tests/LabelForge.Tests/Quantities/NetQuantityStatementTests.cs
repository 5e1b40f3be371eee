using LabelForge.Markets;
using LabelForge.Measures;
using LabelForge.Quantities;

namespace LabelForge.Tests.Quantities;

public class NetQuantityStatementTests
{
    private static readonly DateOnly Day = new(2026, 11, 25);

    /// <summary>Worked by hand with 28.349523125 g and 29.5735295625 mL, cut and never rounded up.</summary>
    [Theory]
    [InlineData("4 oz", "Net Wt 4 oz (113 g)")]            // 113.398 g
    [InlineData("113.4 g", "Net Wt 4 oz (113 g)")]         // 4.00007 oz
    [InlineData("113 g", "Net Wt 3.98 oz (113 g)")]        // 3.98596 oz: four ounces are not there
    [InlineData("110 g", "Net Wt 3.88 oz (110 g)")]       // 3.88013 oz
    [InlineData("50 g", "Net Wt 1.7 oz (50 g)")]           // 1.76370 oz, measured to two digits
    [InlineData("50.0 g", "Net Wt 1.76 oz (50 g)")]        // the same to three
    [InlineData("5 g", "Net Wt 0.17 oz (5 g)")]            // 0.17637 oz: two digits are the fewest
    [InlineData("0.15 oz", "Net Wt 0.15 oz (4.2 g)")]      // 4.25243 g
    [InlineData("3.5 oz", "Net Wt 3.5 oz (99 g)")]         // 99.2233 g
    [InlineData("15.99 oz", "Net Wt 15.99 oz (453 g)")]    // 453.309 g
    [InlineData("16 oz", "Net Wt 16 oz (1 lb) 453 g")]     // 453.592 g
    [InlineData("1.1 lb", "Net Wt 17.6 oz (1 lb 1.6 oz) 498 g")] // 498.952 g
    [InlineData("63.99 oz", "Net Wt 63.99 oz (3 lb 15.99 oz) 1.81 kg")]
    [InlineData("4 lb", "Net Wt 4 lb (1.81 kg)")]          // 1814.37 g
    [InlineData("4 lb 8 oz", null)]
    [InlineData("1134 g", "Net Wt 40 oz (2 lb 8 oz) 1.134 kg")] // 40.0007 oz
    [InlineData("8 fl oz", "8 fl oz (236 mL)")]            // 236.588 mL
    [InlineData("250 mL", "8.45 fl oz (250 mL)")]          // 8.45351 fl oz
    [InlineData("30 mL", "1 fl oz (30 mL)")]               // 1.01442 fl oz
    [InlineData("1 fl oz", "1 fl oz (29 mL)")]             // 29.5735 mL
    [InlineData("16 fl oz", "16 fl oz (1 pt) 473 mL")]     // 473.176 mL
    [InlineData("127 fl oz", "127 fl oz (3 qt 1 pt 15 fl oz) 3.75 L")] // 3755.84 mL
    [InlineData("128 fl oz", "1 gal (3.78 L)")]            // 3785.41 mL
    public void A_us_statement_reads_as_worked_by_hand(string amount, string? statement)
    {
        var parsed = NetAmount.Parse(amount);
        if (statement is null)
            Assert.False(parsed.IsValue);
        else
            Assert.Equal(statement, NetQuantityStatement.For(Market.Us, parsed.Value!, Day).Statement);
    }

    /// <summary>The regulation's own examples, 21 CFR 701.13, in the forms that it prints without full stops.</summary>
    [Theory]
    [InlineData("1 1/2 lb", "24 oz (1 lb 8 oz)")]
    [InlineData("3/4 lb", "12 oz")]
    [InlineData("32 fl oz", "32 fl oz (1 qt)")]
    [InlineData("56 fl oz", "56 fl oz (1 qt 1 pt 8 fl oz)")]
    [InlineData("320 fl oz", "2 gal 2 qt")]
    public void The_examples_of_the_us_regulation_come_out_as_printed(string amount, string customary) =>
        Assert.Equal(customary, NetQuantityStatement.For(Market.Us, NetAmount.Parse(amount).Value!, Day).Customary);

    [Fact]
    public void Pounds_in_parentheses_leave_the_metric_part_without_its_own() =>
        Assert.Equal("Net Wt 24 oz (1 lb 8 oz) 680 g",
            NetQuantityStatement.For(Market.Us, NetAmount.Parse("24 oz").Value!, Day).Statement);

    [Theory]
    [InlineData("ca", "113 g", "113 g")]
    [InlineData("ca", "4 oz", "113 g")]
    [InlineData("ca", "1134 g", "1.13 kg")]   // three figures are law there: CPLR ss. 25 and 26
    [InlineData("ca", "250 mL", "250 mL")]
    [InlineData("eu", "113 g", "113 g")]
    [InlineData("eu", "250 ml", "250 ml")]
    [InlineData("eu", "1134 g", "1.134 kg")]
    [InlineData("eu", "4.25 g", "4.25 g")]
    [InlineData("uk", "1.5 L", "1.5 L")]
    public void Markets_outside_the_us_state_the_metric_quantity_alone(string market, string amount, string statement)
    {
        var quantity = NetQuantityStatement.For(Market.Named(market), NetAmount.Parse(amount).Value!, Day);
        Assert.Equal((statement, statement, null), (quantity.Statement, quantity.Metric, quantity.Customary));
    }

    [Fact]
    public void A_quantity_too_small_to_state_is_refused_in_words()
    {
        var refused = Assert.Throws<InputException>(() => NetQuantityStatement.For(Market.Us, Mass.FromGrams(0.1m), null, Day));
        Assert.Contains("0.1 g is too little", refused.Message, StringComparison.Ordinal);
        Assert.Contains("one whole package", refused.Problem.Write, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("0.01 mL", "0.01 mL is too little")]
    [InlineData("0.001 oz", "0.0283 g is too little")]   // 0.02 g are there, and not a hundredth of an ounce
    public void A_quantity_that_one_of_the_two_systems_cannot_state_is_refused(string amount, string told) =>
        Assert.Contains(told,
            Assert.Throws<InputException>(() => NetQuantityStatement.For(Market.Us, NetAmount.Parse(amount).Value!, Day)).Message,
            StringComparison.Ordinal);

    [Theory]
    [InlineData("3/4 lb", null)]   // a common fraction is exact
    [InlineData("1 1/2 lb", null)]
    [InlineData("12 oz", 2)]
    [InlineData("12.0 oz", 3)]
    [InlineData("0.50 oz", 2)]
    public void Every_digit_written_counts_as_measured(string amount, int? digits) =>
        Assert.Equal(digits, NetAmount.Parse(amount).Value!.Digits);

    [Theory]
    [InlineData("20 drops")]
    [InlineData("5 % of batch")]
    [InlineData("113")]
    public void Measures_that_no_package_is_labelled_in_are_refused(string text) => Assert.False(NetAmount.Parse(text).IsValue);

    [Fact]
    public void A_measure_that_no_package_is_labelled_in_is_named_beside_those_that_are()
    {
        var refused = NetAmount.Parse("20 drops");
        Assert.Contains("\"20 drops\" is not a measure", refused.Wrong);
        Assert.Contains("fl oz", refused.Write);
    }
}
