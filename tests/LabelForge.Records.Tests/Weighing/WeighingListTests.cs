using LabelForge.Measures;
using LabelForge.Records.Spreadsheets;
using LabelForge.Records.Weighing;

namespace LabelForge.Records.Tests.Weighing;

public class WeighingListTests
{
    [Theory]
    [InlineData("113.2\n112.9\n", 226.1)]
    [InlineData("mass\r\n113.2\r\n112.9\r\n", 226.1)]
    [InlineData("\uFEFFname,mass\nA,113.2\nB,112.9", 226.1)]
    [InlineData("1,113.2\n2,112.9\n", 226.1)]
    [InlineData("A,113.2 g\nB,112.9g\n", 226.1)]
    [InlineData("bar;mass (g)\nA;113.2\n\nB;112.9\n", 226.1)]
    [InlineData("bar\tweight\nA\t113.2\nB\t112.9\n", 226.1)]
    [InlineData("mass oz\n4\n4\n", 226.796185)]
    [InlineData("4 oz\n4 oz\n", 226.796185)]
    [InlineData("name,mass,tare\nA,116.2,3\nB,115.9,3\n", 226.1)]
    [InlineData("tare,name,gross\n3,A,116.2\n3,B,115.9\n", 226.1)]
    [InlineData("\"bar, first\",113.2\n\"bar, second\",112.9\n", 226.1)]
    [InlineData("# my scale\n113.2\n112.9\n", 226.1)]
    public void Lists_as_people_write_them(string text, decimal together) =>
        Assert.Equal(together, Read(text).Pieces.Sum(p => p.Net.Grams));

    [Theory]
    [InlineData("113,2\n112,9\n", 1, "decimal comma")]
    [InlineData("bar;mass\nA;113,2\n", 2, "113.2")]
    [InlineData("mass\n113.2\n112,9\n", 3, "decimal sign")]
    [InlineData("A,113,2\nB,112.9,1\n", 0, "")]
    [InlineData("113.2\nabc\n", 2, "abc")]
    [InlineData("113.2\n-5\n", 2, "-5")]
    [InlineData("113.2\n0\n", 2, "package")]
    [InlineData("113.2\n1e3\n", 2, "1e3")]
    [InlineData("name,mass\nA,\n", 2, "no weight")]
    [InlineData("name,colour\nA,red\n", 1, "mass")]
    [InlineData("mass\n", 1, "nothing under")]
    [InlineData("", 0, "empty")]
    [InlineData("name,mass,tare\nA,3,3\n", 2, "empty package")]
    [InlineData("\"113.2\n112", 1, "quotation")]
    public void What_cannot_be_read_is_refused_with_its_line(string text, int line, string says)
    {
        if (says == "")
        {
            // Name, mass and a tare of 2 g: three cells throughout are read as such.
            Assert.Equal(2, Read(text).Count);
            return;
        }
        var problem = Assert.Throws<InputException>(() => Read(text)).Problem;
        Assert.Contains(says, problem.ToString());
        if (line > 0)
            Assert.Equal(line, problem.Line);
    }

    [Fact]
    public void The_empty_package_is_taken_off_each() =>
        Assert.Equal(110m, WeighingList.Of(TextTable.Read("113\n113\n", "w.csv"), "w.csv", Mass.FromGrams(3)).Mean);

    private static WeighedSample Read(string text) => WeighingList.Of(TextTable.Read(text, "w.csv"), "w.csv");
}
