using LabelForge.Checks;
using LabelForge.Checks.Reading;
using LabelForge.Ingredients;
using LabelForge.Markets;
using LabelForge.Measures;

namespace LabelForge.Tests.Checks;

/// <summary>Text that is no label is read or refused and never breaks the reader.</summary>
public sealed class HostileTextTests
{
    [Theory]
    [InlineData("a ")]
    [InlineData("A ")]
    [InlineData("1 ")]
    [InlineData("1/")]
    [InlineData("(")]
    [InlineData(",")]
    [InlineData("\n")]
    [InlineData("x,\n")]
    [InlineData("Ingredients: ")]
    [InlineData("4 oz ")]
    [InlineData("no a, ")]
    [InlineData("Made by A ")]
    [InlineData("12 Mill Road ")]
    [InlineData("Soap Co. ")]
    [InlineData("ingredients\n\n")]
    public void The_longest_text_of_one_kind_is_read_to_its_end(string part) =>
        Check(string.Concat(Enumerable.Repeat(part, (LabelText.MostCharacters - 8) / part.Length)) + "soap 1");

    [Theory]
    [InlineData("Handmade in small batches in our garden workshop")]
    [InlineData("Made with love and patience in a shed behind the house where we were born")]
    public async Task How_it_is_made_is_read_to_its_end(string text) =>
        Assert.NotNull(await Task.Run(() => LabelStatement.Read(LabelText.Of(text, "x"), IngredientDictionary.Shipped),
            TestContext.Current.CancellationToken)
            .WaitAsync(TimeSpan.FromSeconds(60), TestContext.Current.CancellationToken));

    [Fact]
    public void Random_characters_are_read_or_refused()
    {
        var random = new Random(20261125);
        const string Signs = "abcXYZ019 .,;:()[]/%&#-\n\n\"'½•℮©éß漢";
        for (var i = 0; i < 300; i++)
            Check(string.Concat(Enumerable.Range(0, random.Next(1, 400)).Select(_ => Signs[random.Next(Signs.Length)])));
    }

    [Fact]
    public void A_list_of_names_and_signs_in_any_order_is_read_or_refused()
    {
        var random = new Random(20261127);
        string[] parts = ["Aqua", "Glycerin", "Heli-", "anthus", "Soap", "1.", "2)", "*", "●", "◦", "∙", "|", "·", "•", "//", " - ", ":", ",", ";",
            ".", "(", ")", "+/-", "CI 77891", "Lot 12", "100 g", "Made by", "\n", "\n\n", "  ", "...."];
        for (var i = 0; i < 300; i++)
            Check("Ingredients: " + string.Concat(Enumerable.Range(0, random.Next(1, 40))
                .Select(_ => parts[random.Next(parts.Length)] + (random.Next(2) == 0 ? " " : ""))));
    }

    [Fact]
    public void More_text_than_a_label_holds_is_refused() =>
        Assert.Contains("more than any label",
            Assert.Throws<InputException>(() => LabelText.Of(new string('a', LabelText.MostCharacters + 1), "x")).Message);

    private static void Check(string text)
    {
        try
        {
            Assert.NotNull(LabelCheck.Run(LabelJudgement.Of(LabelStatement.Read(LabelText.Of(text, "x"), IngredientDictionary.Shipped),
                null, null, null, new DateOnly(2026, 11, 25)), Market.Us));
        }
        catch (InputException refused)
        {
            Assert.NotEqual("", refused.Problem.Write);
        }
    }
}
