using LabelForge.Print.Sheets;

namespace LabelForge.Print.Tests;

public class SerialNumberTests
{
    [Theory]
    [InlineData("1..500", 500, "001", "500")]
    [InlineData("0001..0020", 20, "0001", "0020")]
    [InlineData("7..7", 1, "7", "7")]
    public void Serial_numbers_are_written_with_as_many_digits_as_the_longest(string text, int count, string first, string last)
    {
        var numbers = SerialNumbers.Parse(text).Value!;
        Assert.Equal((count, first, last), (numbers.Count, numbers[0], numbers[numbers.Count - 1]));
    }

    [Theory]
    [InlineData("500")]
    [InlineData("5..1")]
    [InlineData("a..b")]
    [InlineData("1...5")]
    [InlineData("-1..5")]
    [InlineData("1..1000000")]
    public void What_are_no_serial_numbers_is_refused(string text) => Assert.False(SerialNumbers.Parse(text).IsValue);
}
