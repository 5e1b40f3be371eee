using LabelForge.Checks;
using LabelForge.Checks.Reading;
using LabelForge.Checks.Subjects;
using LabelForge.Ingredients;
using LabelForge.Markets;
using LabelForge.Recipes;

namespace LabelForge.Tests.Checks;

/// <summary>What is found of a label's words alone.</summary>
internal static class ClaimFindings
{
    public static IEnumerable<Finding> Of(string words, IEnumerable<(string Name, Ingredient? Known)> names, SoldAs? soldAs, Market market)
    {
        var statement = LabelStatement.Read(LabelText.Of(words, "x"), IngredientDictionary.Shipped) with
        {
            Rest = words,
            Ingredients = new(new TextSpan(0, 0), null, [.. names.Select(n => new IngredientRead(n.Name, n.Known, false))]),
        };
        var label = new CheckCase(statement, market.On(new DateOnly(2026, 11, 25))) { SoldAs = soldAs, MeantAs = soldAs };
        ClaimChecks.Check(label);
        return label.Found;
    }
}
