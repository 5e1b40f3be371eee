using LabelForge.Checks;
using LabelForge.Checks.Reading;
using LabelForge.Ingredients;
using LabelForge.Markets;

namespace LabelForge.Tests.Checks;

/// <summary>Where the words of a finding stand in the text.</summary>
public sealed class FindingPlacesTests
{
    private const string Label =
        "Fen & Furrow\nBar Soap\nNet Wt 4 oz (133 g)\nHeals dry hands\nIngredients: Sodium Olivate, Water, CI 77891\nFen & Furrow, 1 "
            + "Example Lane, Fairport, ME 00000\nLot 12\n";

    [Theory]
    [InlineData("net-quantity.systems-disagree", "Net Wt 4 oz (133 g)")]
    [InlineData("claim.drug", "Heals")]
    [InlineData("ingredients.colour-name", "CI 77891")]
    public void A_finding_points_at_its_words(string rule, string words)
    {
        var reading = LabelStatement.Read(LabelText.Of(Label, "label.txt"), IngredientDictionary.Shipped);
        var finding = LabelCheck.Run(LabelJudgement.Of(reading, null, null, null, new(2026, 11, 25)), Market.Us).Findings
            .First(f => f.Rule == rule);
        Assert.Equal([words], FindingPlaces.Of(finding, reading).Select(s => Label.Substring(s.Start, s.Length)));
    }

    [Fact]
    public void What_is_missing_stands_nowhere()
    {
        var reading = LabelStatement.Read(LabelText.Of(Label.Replace("Lot 12\n", ""), "label.txt"), IngredientDictionary.Shipped);
        var finding = LabelCheck.Run(LabelJudgement.Of(reading, null, null, null, new(2026, 11, 25)), Market.Us).Findings
            .Single(f => f.Rule == "lot.missing");
        Assert.Empty(FindingPlaces.Of(finding, reading));
    }
}
