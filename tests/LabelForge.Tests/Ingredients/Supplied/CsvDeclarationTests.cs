using LabelForge.Ingredients;
using LabelForge.Ingredients.Supplied;
using LabelForge.Measures;

namespace LabelForge.Tests.Ingredients.Supplied;

public class CsvDeclarationTests
{
    private static readonly NameMatcher Matcher = new(IngredientDictionary.Shipped);

    private static SuppliedList Read(string text) => CsvDeclaration.Read("paper.csv", text, Matcher.Knows);

    [Theory]
    [InlineData("name,share\nGlycerin,10-30 %\n\"1,2-Hexanediol\",<1%\nWater,\n")]
    [InlineData("INCI;CAS;%\nGlycerin;56-81-5;10-30\n1,2-Hexanediol;6920-22-5;<1\nWater;7732-18-5;\n")]
    [InlineData("\uFEFFIngredient,Percent\r\nGlycerin,10 to 30\r\n\"1,2-Hexanediol\",max. 1\r\nWater,q.s.\r\n")]
    public void A_table_is_read_row_by_row(string text)
    {
        var names = Read(text).Names;
        Assert.Equal(["Glycerin", "1,2-Hexanediol", "Water"], names.Select(n => n.Text));
        Assert.Equal(["10 % to 30 %", "0 % to 1 %", "0 % to 100 %"], names.Select(n => n.Share.ToString()));
    }

    [Theory]
    [InlineData("", 0)]
    [InlineData("what,share\nGlycerin,5 %", 1)]
    [InlineData("name,share\nGlycerin,0.3", 2)]
    [InlineData("name,share\nGlycerin,5 %\nWater,a lot", 3)]
    [InlineData("name,share\nGlycerin,5 %\n,5 %", 3)]
    [InlineData("name,share\nGlycerin,30-10 %", 2)]
    [InlineData("name,share\n\"Glycerin,5 %", 2)]
    [InlineData("name,share\n", 0)]
    public void A_table_that_cannot_be_used_is_refused_with_its_line(string text, int line)
    {
        var problem = Assert.Throws<InputException>(() => Read(text)).Problem;
        Assert.Equal(("paper.csv", line), (problem.File, problem.Line));
        Assert.NotEmpty(problem.Write);
    }
}
