using LabelForge.Lots;

namespace LabelForge.Tests.Lots;

/// <summary>Whatever code is on a piece leads to its lot.</summary>
public sealed class PieceCodeTests
{
    private static readonly LotCode Lot = new(new DateOnly(2026, 11, 25), 1);

    private static string Element =>
        Gs1ElementString.ForItem(Gtin.Parse("09521321000018").Value!, Lot.ToString(), serial: "17").Value!.HumanReadable;

    [Fact]
    public void The_lot_by_itself_an_element_string_and_a_scanned_address_are_the_same_lot()
    {
        var message = Gs1ElementString.Parse(Element).Value!;
        foreach (var code in (string[])[Lot.ToString(), $" lot {Lot} ", Element, "]d2" + message.Message,
            message.DigitalLink("https://id.example.com").Value!])
            Assert.Equal(Lot, PieceCode.LotOf(code).Value);
    }

    [Fact]
    public void A_scanner_that_types_and_leaves_out_the_separator_is_understood_by_the_check_character()
    {
        var typed = Gs1ElementString.Parse(Element).Value!.Message
            .Replace(Gs1ElementString.Separator.ToString(), "", StringComparison.Ordinal);
        Assert.DoesNotContain(Gs1ElementString.Separator, typed);
        Assert.Equal(Lot, PieceCode.LotOf(typed).Value);
        Assert.False(PieceCode.LotOf(typed.Replace("-01", "-02", StringComparison.Ordinal)).IsValue);
    }

    [Theory]
    [InlineData("(01)09521321000018", "holds no lot")]
    [InlineData("(01)09521321000019(10)26R25-01E", "check")]
    [InlineData("https://id.example.com/01/09521321000018", "lot code")]
    [InlineData("26R25-01X", "")]
    [InlineData("", "")]
    public void What_holds_no_lot_is_told(string code, string told)
    {
        var read = PieceCode.LotOf(code);
        Assert.False(read.IsValue);
        Assert.Contains(told, read.Wrong, StringComparison.OrdinalIgnoreCase);
    }
}
