using LabelForge.Markets;

namespace LabelForge.Checks;

/// <summary>Checks what a recipe's label would say against the rules of the market it was declared for.</summary>
public static class RecipeCheck
{
    /// <summary>Checks a recipe's label; findings stand in order of gravity.</summary>
    public static CheckReport Run(RecipeFacts facts) => MarketText.Parse(facts.Declaration.Market).Value switch
    {
        Market.Us => UsRecipeCheck.Run(facts),
        Market.Eu => EuRecipeCheck.Run(facts, Market.Eu),
        Market.Uk => EuRecipeCheck.Run(facts, Market.Uk),
        _ => new CheckReport(facts.Declaration.Market, [.. CaRecipeCheck.Find(facts).OrderBy(f => f.Severity)], Found(facts)),
    };

    /// <summary>What would stand on the label.</summary>
    internal static LabelFound Found(RecipeFacts facts)
    {
        var business = facts.Workshop.Business;
        return new LabelFound(facts.Content.Identity, facts.Content.NetQuantity, facts.Content.Ingredients,
            business.NameLine, business.Place.Line, business.ContactLine, facts.Content.Lot);
    }
}
