using LabelForge.Web.Workbench;

namespace LabelForge.Web.Tests.Editing;

/// <summary>Numbers as people write them are read, and what could mean two things is not guessed at.</summary>
public sealed class LooseTests
{
    [Theory]
    [InlineData("900 g", "900 g")]
    [InlineData("½ tsp", "0.5 tsp")]
    [InlineData("1½ lb", "1.5 lb")]
    [InlineData("1 1/2 lb", "1.5 lb")]
    [InlineData("3/4 tsp", "0.75 tsp")]
    [InlineData("0,5 g", "0.5 g")]
    [InlineData("12,75 oz", "12.75 oz")]
    [InlineData("1 lb 11 oz", "27 oz")]
    [InlineData("2 lbs 4.5 oz", "36.5 oz")]
    [InlineData("1 pound and 8 ounces", "24 oz")]
    [InlineData("2 cups", "32 tbsp")]
    [InlineData("½ cup", "8 tbsp")]
    [InlineData("3 Teaspoons", "3 tsp")]
    [InlineData("250 ml", "250 mL")]
    [InlineData("16 fl. oz.", "16 fl oz")]
    [InlineData("1,5% of batch", "1.5 % of batch")]
    [InlineData("450 grams", "450 g")]
    public void An_amount_is_understood(string typed, string understood) =>
        Assert.Equal(LabelForge.Measures.Amount.Parse(understood).Value, LabelForge.Measures.Amount.Parse(Loose.Amount(typed)).Value);

    [Theory]
    [InlineData("900 g")]
    [InlineData("3/4 tsp")]
    [InlineData("450 grams")]
    public void What_is_read_strictly_already_stays_to_the_letter(string typed) => Assert.Equal(typed, Loose.Amount(typed));

    [Theory]
    [InlineData("1,000 g")]
    [InlineData("2 %")]
    [InlineData("450")]
    [InlineData("½")]
    [InlineData("1/0 tsp")]
    [InlineData("a pinch")]
    [InlineData("")]
    [InlineData("٣ g")]
    public void What_could_mean_two_things_or_none_is_left_for_its_reader_to_ask(string typed) => Assert.Equal(typed, Loose.Amount(typed));

    [Theory]
    [InlineData("$11.99", "11.99")]
    [InlineData("11,99", "11.99")]
    [InlineData("€ 9,50", "9.50")]
    [InlineData("9.50 USD", "9.50")]
    [InlineData("31.50", "31.50")]
    [InlineData("1,200", "1,200")]
    [InlineData("cheap", "cheap")]
    public void A_sum_is_understood(string typed, string understood) => Assert.Equal(understood, Loose.Money(typed));

    [Theory]
    [InlineData("0,96 g/mL", "0.96 g/mL")]
    [InlineData("98,5 %", "98.5 %")]
    [InlineData("1,000", "1,000")]
    public void A_figure_with_a_decimal_comma_is_understood(string typed, string understood) =>
        Assert.Equal(understood, Loose.Decimals(typed));

    [Theory]
    [InlineData("10 sheets", "10")]
    [InlineData("8 bars", "8")]
    [InlineData("8", "8")]
    [InlineData("eight", "eight")]
    public void A_count_is_understood(string typed, string understood) => Assert.Equal(understood, Loose.Count(typed));

    [Theory]
    [InlineData(5_000)]
    public void A_long_text_is_no_amount_and_is_told_so_at_once(int characters) =>
        Assert.Equal(new string('1', characters), Loose.Amount(new string('1', characters)));
}
