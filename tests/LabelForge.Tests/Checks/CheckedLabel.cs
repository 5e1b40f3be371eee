using LabelForge.Checks;
using LabelForge.Checks.Reading;
using LabelForge.Ingredients;
using LabelForge.Markets;
using LabelForge.Measures;
using LabelForge.Quantities;
using LabelForge.Recipes;

namespace LabelForge.Tests.Checks;

/// <summary>A label as somebody may have written it, read and checked for a market with the shipped dictionary.</summary>
internal static class CheckedLabel
{
    private static readonly DateOnly Day = new(2026, 11, 26);

    /// <summary>What is found on words.</summary>
    public static Finding[] Found(string text, Market market, string? kind = null, SoldAs? soldAs = null, DateOnly? on = null,
        ProductFacts? facts = null) => Found(LabelText.Of(text, "label.txt"), market, null, kind, soldAs, on, facts);

    /// <summary>What is found on a label that was read, on a front panel where one is given.</summary>
    public static Finding[] Found(LabelText text, Market market, Panel? panel, string? kind = null, SoldAs? soldAs = null,
        DateOnly? on = null, ProductFacts? facts = null) =>
        [.. LabelCheck.Run(LabelJudgement.Of(LabelStatement.Read(text, IngredientDictionary.Shipped),
            kind is null ? null : ProductKinds.Find(kind).OrRefuse(), soldAs, panel, on ?? Day, facts), market).Findings];
}
