namespace LabelForge.Composition;

/// <summary>The plainest reason why one ingredient may stand before another.</summary>
public enum PairReason
{
    /// <summary>The second cannot exceed 1 %, so it may follow in any order.</summary>
    OnePercent,

    /// <summary>The least that there can be of the first is no less than the most of the second.</summary>
    Bounds,

    /// <summary>Every list that holds the second puts the first before it, and the order of those lists is trusted.</summary>
    SameLists,

    /// <summary>None of these alone: of all compositions that the lists allow, the worst still
    /// does not put the second over the first and over 1 %.</summary>
    WorstCase,
}

/// <summary>Finds the plainest reason for a proved order.</summary>
public static class PairReasons
{
    /// <summary>Why the first may stand before the second, for two that are no colours and whose order is safe.</summary>
    /// <param name="first">The ingredient that stands first.</param>
    /// <param name="second">The other.</param>
    /// <param name="firstFrom">Where the first comes from.</param>
    /// <param name="secondFrom">Where the second comes from.</param>
    public static PairReason Of(IngredientShare first, IngredientShare second, IngredientAccount firstFrom, IngredientAccount secondFrom)
    {
        if (second.Part == Part.Minor)
            return PairReason.OnePercent;
        if (first.Low >= second.High)
            return PairReason.Bounds;
        // Of two label lists one may hold them equal above 1 % and the other out of order below it: together that breaks
        // the order, so only one label list is reason enough, or strict ones.
        var trusted = secondFrom.Sources.All(s => s.Listed == ListedOrder.Strict) || secondFrom.Sources is [{ Listed: ListedOrder.Label }];
        // One that stands before is enough of the first; of the second there may be no other that goes by its name.
        var listedBefore = trusted && secondFrom.Besides.IsEmpty
            && secondFrom.Sources
                .All(s => s.Substances.Length == 1 && firstFrom.Sources.Any(f => f.Material == s.Material && f.Place < s.Place));
        return listedBefore && firstFrom.Lost == 0 ? PairReason.SameLists : PairReason.WorstCase;
    }
}
