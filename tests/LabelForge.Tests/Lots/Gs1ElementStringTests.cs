using LabelForge.Lots;

namespace LabelForge.Tests.Lots;

public class Gs1ElementStringTests
{
    private static readonly Gtin Item = Gtin.FromPrefix("9521321", 1).Value!;

    private static readonly Gs1ElementString Whole = Gs1ElementString.ForItem(
        Item, lot: "26R25-072", made: new DateOnly(2026, 11, 25), useBy: new DateOnly(2028, 11, 30), serial: "A1").Value!;

    [Fact]
    public void A_lot_is_printed_with_its_identifiers_in_brackets() =>
        Assert.Equal("(01)09521321000018(11)261125(17)281130(10)26R25-072(21)A1", Whole.HumanReadable);

    [Fact]
    public void A_separator_ends_a_value_of_varying_length_unless_it_is_last() =>
        Assert.Equal("01095213210000181126112517281130" + "1026R25-072\u001D21A1", Whole.Message);

    [Fact]
    public void A_value_of_fixed_length_needs_no_separator() =>
        Assert.DoesNotContain(Gs1ElementString.Separator, Gs1ElementString.ForItem(Item, lot: "X").Value!.Message);

    // GS1 Digital Link Standard, URI Syntax: key, qualifiers 22, 10, 21, then attributes in the query. The first two are the
    // shapes of the standard's examples on an example GTIN as published with an open barcode library's documentation.
    [Theory]
    [InlineData("(01)09521234543213(10)ABC123(21)12345", "https://id.example.com/01/09521234543213/10/ABC123/21/12345")]
    [InlineData("(01)09521234543213(17)261231(10)ABC123", "https://id.example.com/01/09521234543213/10/ABC123?17=261231")]
    [InlineData("(01)09521234543213(21)7(10)A/B%(22)2A(11)261125(17)281130",
        "https://id.example.com/01/09521234543213/22/2A/10/A%2FB%25/21/7?11=261125&17=281130")]
    public void A_digital_link_has_its_parts_in_the_standards_order(string elements, string link) =>
        Assert.Equal(link, Gs1ElementString.Parse(elements).Value!.DigitalLink("https://id.example.com").Value);

    [Theory]
    [InlineData("https://example.com/products/", "https://example.com/products/01/09521321000018")]
    [InlineData("http://example.com:8080", "http://example.com:8080/01/09521321000018")]
    public void A_digital_link_stands_on_the_makers_own_address(string site, string link) =>
        Assert.Equal(link, Gs1ElementString.ForItem(Item).Value!.DigitalLink(site).Value);

    [Theory]
    [InlineData("rooksedge.example")]
    [InlineData("ftp://example.com")]
    [InlineData("https://example.com/?a=b")]
    [InlineData("https://example.com/#x")]
    [InlineData("")]
    public void An_address_that_a_link_cannot_stand_on_is_refused(string site) => Assert.False(Whole.DigitalLink(site).IsValue);

    [Theory]
    [InlineData("]C1")]
    [InlineData("]d2")]
    [InlineData("\u001D")]
    [InlineData("")]
    public void What_a_scanner_sends_is_read_back(string before) =>
        Assert.Equal(Whole, Gs1ElementString.Parse(before + Whole.Message).Value);

    [Fact]
    public void What_is_printed_is_read_back() => Assert.Equal(Whole, Gs1ElementString.Parse(Whole.HumanReadable).Value);

    [Fact]
    public void A_bracket_in_a_lot_is_not_taken_for_an_identifier() =>
        Assert.Equal("A(99)B", Gs1ElementString.Parse("(01)09521321000018(10)A(99)B").Value!.Value("10"));

    [Theory]
    [InlineData("(10)ABC", "no GTIN")]
    [InlineData("(01)09521321000018(10)A(10)B", "stands 2 times")]
    [InlineData("(01)9521321000018", "13 characters, not 14")]
    [InlineData("(01)09521321000017", "check digit")]
    [InlineData("(01)09521321000018(10)", "0 characters")]
    [InlineData("(01)09521321000018(10)123456789012345678901", "21 characters")]
    [InlineData("(01)09521321000018(10)A B", "holds ' '")]
    [InlineData("(01)09521321000018(10)é", "holds 'é'")]
    [InlineData("(01)09521321000018(17)261301", "not a date")]
    [InlineData("(01)09521321000018(17)260229", "not a date")]
    [InlineData("(01)09521321000018(11)26112", "not six digits")]
    [InlineData("(99)X", "not an Application Identifier")]
    [InlineData("0109521321000018991", "does not begin")]
    [InlineData("", "nothing to read")]
    public void A_wrong_element_string_is_refused(string text, string says) =>
        Assert.Contains(says, Gs1ElementString.Parse(text).Wrong);

    [Fact]
    public void Use_by_before_the_day_of_making_is_refused() =>
        Assert.Contains("before the day",
            Gs1ElementString.ForItem(Item, made: new DateOnly(2026, 11, 25), useBy: new DateOnly(2026, 11, 24)).Wrong);

    // GS1 General Specifications, 7.12: 49 years back and 50 ahead; 3.4: day 00 is the last day of the month.
    [Theory]
    [InlineData("261125", 2026, 11, 25)]
    [InlineData("280200", 2028, 2, 29)]
    [InlineData("760101", 2076, 1, 1)]
    [InlineData("770101", 1977, 1, 1)]
    public void A_date_is_read_in_the_nearest_century(string value, int year, int month, int day) =>
        Assert.Equal(new DateOnly(year, month, day), Gs1Element.Of("17", value).Value!.Day(new DateOnly(2026, 11, 25)));
}
