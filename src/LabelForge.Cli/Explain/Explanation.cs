using System.Collections.Immutable;
using LabelForge.Composition;
using LabelForge.Declarations;
using LabelForge.Ingredients;
using LabelForge.Markets;
using LabelForge.Recipes;

namespace LabelForge.Cli.Explain;

/// <summary>A declaration with all that its order rests on.</summary>
/// <param name="Declaration">What stands on the label.</param>
/// <param name="Proof">What is proved of the order.</param>
/// <param name="Accounts">Where each ingredient comes from, by its name.</param>
/// <param name="Market">The market.</param>
internal sealed record Explanation(Declaration Declaration, CompositionProof Proof, ImmutableDictionary<string, IngredientAccount> Accounts, Market Market)
{
    public static Explanation Of(Workshop workshop, BatchFormula batch, Declaration declaration, Market market)
    {
        var dictionary = IngredientDictionary.Shipped;
        return new Explanation(
            declaration,
            BatchComposition.Prove(workshop, batch, dictionary),
            BatchComposition.Accounts(workshop, batch, dictionary).ToImmutableDictionary(a => a.Ingredient),
            market);
    }

    /// <summary>Writes it for a person, as wide as the page.</summary>
    public void Write(TextWriter to, int width)
    {
        foreach (var line in Lines(width))
            to.WriteLine(line);
    }

    private IEnumerable<string> Lines(int width) =>
    [
        .. Page.Wrap(Declaration.Statement, width),
        "",
        .. ChartLines.Of(this, width),
        "",
        .. OrderLines.Of(this, width),
        "",
        .. AskLines.Of(this, width),
        "",
        .. SourceLines.Of(this, width),
    ];

    /// <summary>The ingredient's name on this market's label.</summary>
    public string LabelName(string key) => IngredientDictionary.Shipped.Find(key)?.NameIn(Market) ?? key;
}
