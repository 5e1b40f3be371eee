using LabelForge.Markets;

namespace LabelForge.Checks;

/// <summary>Checks what a recipe's label would say against the rules of the market it was declared for.</summary>
public static class RecipeCheck
{
    /// <summary>Checks a recipe's label; findings stand in order of gravity.</summary>
    public static CheckReport Run(RecipeFacts facts)
    {
        var market = facts.Declaration.Market;
        var findings = market switch
        {
            var m when m == RuleBook.MarketUs => UsRecipeCheck.Find(facts),
            var m when m == RuleBook.MarketCa => CaRecipeCheck.Find(facts),
            _ => EuRecipeCheck.Find(facts, market),
        };
        return new CheckReport(MarketText.Of(market), [.. findings.Concat(RecipeBasics.Package(facts)).OrderBy(f => f.Severity)], Found(facts));
    }

    /// <summary>What would stand on the label.</summary>
    private static LabelFound Found(RecipeFacts facts)
    {
        var business = facts.Workshop.Business;
        return new LabelFound(facts.Content.Identity, facts.Content.NetQuantity, facts.Content.Ingredients,
            business.NameLine, business.Place.Line, business.ContactLine, facts.Content.Lot);
    }
}
