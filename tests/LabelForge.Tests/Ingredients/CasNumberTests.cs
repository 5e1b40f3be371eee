using CsCheck;
using LabelForge.Ingredients;

namespace LabelForge.Tests.Ingredients;

public class CasNumberTests
{
    /// <summary>
    /// Water, 7732-18-5, worked by hand: from the right 8*1 + 1*2 + 2*3 + 3*4 + 7*5 + 7*6 = 105, and 105 mod 10 = 5.
    /// CAS's own example, caffeine, 58-08-2: 8*1 + 0*2 + 8*3 + 5*4 = 52, and 52 mod 10 = 2.
    /// </summary>
    [Theory]
    [InlineData("7732-18-5")]
    [InlineData("58-08-2")]
    [InlineData("107-07-3")]
    [InlineData(" 56-81-5 ")]
    [InlineData("1286686-34-7")]
    public void A_number_whose_check_digit_is_right_is_read(string written) =>
        Assert.Equal(written.Trim(), CasNumber.Parse(written).Value.ToString());

    [Theory]
    [InlineData("7732-18-4", "would end in 5")]
    [InlineData("1205-50-3", "would end in")]
    public void A_wrong_check_digit_is_refused_and_the_due_one_named(string written, string advice) =>
        Assert.Contains(advice, CasNumber.Parse(written).Write!, StringComparison.Ordinal);

    [Theory]
    [InlineData("")]
    [InlineData("7732185")]
    [InlineData("7-18-5")]
    [InlineData("77321-8-5")]
    [InlineData("12345678-18-5")]
    [InlineData("７７32-18-5")]
    public void What_has_another_shape_is_refused(string written) => Assert.False(CasNumber.Parse(written).IsValue);

    [Fact]
    public void Of_the_ten_check_digits_exactly_one_is_right() =>
        Gen.Select(Gen.Int[10, 9999999], Gen.Int[0, 99]).Sample((first, second) =>
            Enumerable.Range(0, 10).Count(check => CasNumber.Parse($"{first}-{second:00}-{check}").IsValue) == 1);
}
