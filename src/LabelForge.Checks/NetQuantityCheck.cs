using LabelForge.Recipes;

namespace LabelForge.Checks;

/// <summary>Checks that the declared net quantity is there and is not more than a piece can hold.</summary>
public static class NetQuantityCheck
{
    /// <summary>The findings.</summary>
    /// <param name="facts">The recipe's facts.</param>
    /// <param name="rules">The market's rules; those of the United States where null.</param>
    public static IEnumerable<Finding> Find(RecipeFacts facts, RuleBook? rules = null)
    {
        rules ??= RuleBook.Us;
        if (string.IsNullOrWhiteSpace(facts.Content.NetQuantity))
            yield return rules["net-quantity.missing"].Find(facts.Batch.Recipe.File);
        if (facts.Batch.Recipe.Net?.Mass is { } net && net > facts.Batch.PerPiece)
            yield return rules["net-quantity.overstated"].Find(facts.Batch.Recipe.File, net, PerPiece(facts.Batch));
    }

    private static Measures.Mass PerPiece(BatchFormula batch) => Measures.Mass.FromGrams(Math.Floor(batch.PerPiece.Grams * 10) / 10);
}
