using CsCheck;
using LabelForge.Records.Spreadsheets;

namespace LabelForge.Records.Tests.Spreadsheets;

public class SafeCsvTests
{
    [Theory]
    [InlineData("=HYPERLINK(\"http://x\")")]
    [InlineData("+1")]
    [InlineData("-2+3")]
    [InlineData("@SUM(A1)")]
    [InlineData("\t=1")]
    [InlineData("\uFF1D1")]
    public void No_cell_of_text_is_a_formula(string text)
    {
        var cell = SafeCsv.Write(["a"], [[text]]).Split("\r\n", 2)[1];
        Assert.StartsWith("'", cell.TrimStart('"'));
    }

    [Fact]
    public void Figures_stay_figures() =>
        Assert.Equal("a,b\r\n-1.5,2026-11-25\r\n", SafeCsv.Write(["a", "b"], [[-1.50m, new DateOnly(2026, 11, 25)]]));

    [Fact]
    public void What_is_written_is_read_back() =>
        Gen.String[Gen.Char["=+-@'\",;ab 1%|\t"], 1, 8].Where(t => t.Trim() == t && t.Trim('\'').Length > 0).Sample(text =>
        {
            var rows = TextTable.Read(SafeCsv.Write(["a", "b"], [["x", text]]), "t.csv");
            Assert.Equal(text, SafeCsv.Plain(rows[1].Cells[1]));
        });
}
