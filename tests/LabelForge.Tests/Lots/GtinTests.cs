using CsCheck;
using LabelForge.Lots;

namespace LabelForge.Tests.Lots;

public class GtinTests
{
    // GS1 General Specifications, 7.9.1, and GS1's published page on check digits: 629104150021 asks for 3.
    // 730001100001 asks for 7: GS1 Sweden's published example.
    [Theory]
    [InlineData("629104150021", '3')]
    [InlineData("730001100001", '7')]
    public void Published_numbers_have_their_published_check_digit(string body, char check)
    {
        Assert.Equal(check, Gtin.CheckDigit(body));
        Assert.True(Gtin.Parse(body + check).IsValue);
    }

    [Theory]
    [InlineData("9521321", 1, "9521321000018")]
    [InlineData("9521321", 99999, null)]
    [InlineData("0614141", 12345, "614141123452")]
    public void A_makers_item_gets_a_number(string prefix, int item, string? digits)
    {
        var gtin = Gtin.FromPrefix(prefix, item).Value!;
        Assert.True(Gtin.Parse(gtin.Digits).IsValue);
        Assert.StartsWith(prefix.TrimStart('0'), gtin.Digits);
        if (digits is not null)
            Assert.Equal(digits, gtin.Digits);
    }

    [Theory]
    [InlineData("9521321", 100_000, "room for 5 digits")]
    [InlineData("9521321", -1, "room for 5 digits")]
    [InlineData("952", 1, "not a GS1 Company Prefix")]
    [InlineData("952132A", 1, "not a GS1 Company Prefix")]
    public void A_number_that_cannot_be_built_is_refused(string prefix, int item, string says) =>
        Assert.Contains(says, Gtin.FromPrefix(prefix, item).Wrong);

    [Theory]
    [InlineData("629104150021", "check digit")]
    [InlineData("6291041500214", "check digit")]
    [InlineData("62910415002", "11 digits")]
    [InlineData("629104150021X", "more than digits")]
    [InlineData("", "more than digits")]
    [InlineData("٦٢٩١٠٤١٥", "more than digits")]
    public void A_wrong_number_is_refused(string text, string says) => Assert.Contains(says, Gtin.Parse(text).Wrong);

    [Fact]
    public void Zeros_before_a_number_do_not_make_another_item()
    {
        Assert.Equal(Gtin.Parse("614141123452").Value, Gtin.Parse("0614141123452").Value);
        Assert.Equal("00614141123452", Gtin.Parse("614141123452").Value!.Fourteen);
        Assert.Equal("614141123452", Gtin.Parse("00614141123452").Value!.Twelve);
        Assert.Null(Gtin.Parse("6291041500213").Value!.Twelve);
    }

    [Fact]
    public void One_wrong_digit_is_always_refused() =>
        Gen.Select(Gen.Int[0, 99_999], Gen.Int[0, 12], Gen.Int[1, 9]).Sample((item, at, change) =>
        {
            var digits = Gtin.FromPrefix("9521321", item).Value!.Digits;
            var wrong = digits[..at] + (char)('0' + (digits[at] - '0' + change) % 10) + digits[(at + 1)..];
            return !Gtin.Parse(wrong).IsValue;
        });
}
