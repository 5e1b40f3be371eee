using LabelForge.Web.Workbench;

namespace LabelForge.Web.Tests.Editing;

/// <summary>A scanner types into the weight, where the cursor stands after a weighing: a number with an M before it is a
/// bottle's.</summary>
public class ScannedIntoFieldTests
{
    [Theory]
    [InlineData("M1042", "", 1042)]
    [InlineData("m3", "", 3)]
    [InlineData("M 1042", "", 1042)]
    [InlineData(" M7 ", "", 7)]
    [InlineData("12M1042", "12", 1042)]
    [InlineData("12.5 g M1042", "12.5 g", 1042)]
    [InlineData("1 lb M2", "1 lb", 2)]
    public void A_bottles_number_is_heard_and_what_stood_before_it_stays(string field, string before, int bottle) =>
        Assert.Equal(new ScannedIntoField(before, bottle), ScannedIntoField.Read(field));

    [Theory]
    [InlineData("")]
    [InlineData("12")]
    [InlineData("12.5 g")]
    [InlineData("5 ml")]
    [InlineData("5 gm")]
    [InlineData("M")]
    [InlineData("M12x")]
    [InlineData("M1.5")]
    [InlineData("M-3")]
    public void A_weight_is_none(string field) => Assert.Null(ScannedIntoField.Read(field));
}
