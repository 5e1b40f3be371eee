using LabelForge.Checks;
using LabelForge.Checks.Reading;
using LabelForge.Checks.Subjects;
using LabelForge.Checks.Words;
using LabelForge.Ingredients;
using LabelForge.Markets;
using LabelForge.Recipes;

namespace LabelForge.Tests.Checks;

/// <summary>A label's words alone, read once and judged wherever it is asked.</summary>
internal sealed class ClaimFindings
{
    private readonly LabelStatement _statement;
    private readonly ClaimText _text;

    public ClaimFindings(string words, IEnumerable<(string Name, Ingredient? Known)> names)
    {
        _statement = LabelStatement.Read(LabelText.Of(words, "x"), IngredientDictionary.Shipped) with
        {
            Rest = words,
            Ingredients = new(new TextSpan(0, 0), null, [.. names.Select(n => new IngredientRead(n.Name, n.Known, false))]),
        };
        _text = new(words);
    }

    /// <summary>What is found in a market.</summary>
    public IEnumerable<Finding> In(Market market, SoldAs? soldAs)
    {
        var label = new CheckCase(_statement, market.On(new DateOnly(2026, 11, 25))) { SoldAs = soldAs, MeantAs = soldAs };
        ClaimChecks.Check(label, _text);
        return label.Found;
    }

    /// <summary>What is found of words in one market.</summary>
    public static IEnumerable<Finding> Of(string words, IEnumerable<(string Name, Ingredient? Known)> names, SoldAs? soldAs,
        Market market) => new ClaimFindings(words, names).In(market, soldAs);
}
