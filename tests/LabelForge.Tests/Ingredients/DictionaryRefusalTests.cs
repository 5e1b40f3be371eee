using LabelForge.Ingredients;
using LabelForge.Measures;

namespace LabelForge.Tests.Ingredients;

public class DictionaryRefusalTests
{
    private const string Heading = "us,eu,inci,ca,cas,ec,ci,everyday,roles,flags,koh,source,basis";

    [Theory]
    [InlineData("Water,Aqua,,,7732-18-4,,,,solvent,,,test,memory", "check digit")]
    [InlineData("Water,Aqua,,,,,,,wizardry,,,test,memory", "wizardry")]
    [InlineData("Water,Aqua,,,,,,,7,,,test,memory", "\"7\" is not known")]
    [InlineData("Water,Aqua,,,,,,,solvent,shiny,,test,memory", "shiny")]
    [InlineData("Water,Aqua,,,,,,,,,,test,memory", "no role")]
    [InlineData("Water,,,,,,,,solvent,,,test,memory", "column eu is empty")]
    [InlineData("Water,Aqua,,,,,,,solvent,,,,memory", "column source is empty")]
    [InlineData("Water,Aqua,,,,,,,solvent,,265-248,test,memory", "saponification")]
    [InlineData("Water,Aqua,,,,,77891,,solvent,,,test,memory", "not flagged as a colourant")]
    [InlineData("Water,Aqua,,,,,7789,,solvent,colourant,,test,memory", "Colour Index")]
    [InlineData("Water,Aqua,,,,,,,solvent,,test,memory", "has 12 cells")]
    [InlineData("Ice,Glacies,,,,,,salt,solvent,,,test,memory", "already means")]
    public void A_bad_row_is_refused_with_its_file_line_and_text(string row, string wrong)
    {
        var refusal = Assert.Throws<InputException>(() => Read($"{Heading}\nSalt,Sal,,,,,,,salt,,,test,memory\n{row}\n"));
        Assert.Contains(wrong, refusal.Message, StringComparison.Ordinal);
        Assert.Contains(row, refusal.Message, StringComparison.Ordinal);
        Assert.Equal(("bench.csv", 3), (refusal.Problem.File, refusal.Problem.Line));
    }

    [Fact]
    public void Another_heading_is_refused()
    {
        var refusal = Assert.Throws<InputException>(() => Read("name,cas\nWater,7732-18-5\n"));
        Assert.Equal(1, refusal.Problem.Line);
    }

    [Fact]
    public void Colourants_may_share_a_label_name_and_the_first_row_answers()
    {
        var dictionary =
            Read(
                $"{Heading}\nIron Oxides,CI 77492,,,,,77492,,colourant,colourant,,test,memory\nIron Oxides,CI "
                    + $"77491,,,,,77491,,colourant,colourant,,test,memory\n");
        Assert.Equal("CI 77492", dictionary.Find("iron oxides")!.Eu);
        Assert.Equal("CI 77491", dictionary.Find("CI 77491")!.Eu);
    }

    private static IngredientDictionary Read(string text) => IngredientDictionary.Read([DataTable.Of("bench.csv", text)]);
}
