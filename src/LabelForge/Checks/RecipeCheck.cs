using LabelForge.Markets;
using LabelForge.Measures;

namespace LabelForge.Checks;

/// <summary>Checks what a recipe's label would say against the rules of the market it was declared for.</summary>
public static class RecipeCheck
{
    /// <summary>Checks a recipe's label; findings stand in order of gravity.</summary>
    /// <exception cref="InputException">No rules are held for the market.</exception>
    public static CheckReport Run(RecipeFacts facts) => MarketText.Parse(facts.Declaration.Market).Value switch
    {
        Market.Us => UsRecipeCheck.Run(facts),
        Market.Eu => EuRecipeCheck.Run(facts, Market.Eu),
        Market.Uk => EuRecipeCheck.Run(facts, Market.Uk),
        _ => throw new InputException(new Problem(null, 0, "Checks are made for us, eu and uk only, so far.",
            "Write --market us, eu or uk, and have the label looked at by someone who knows the other market.")),
    };

    /// <summary>What would stand on the label.</summary>
    internal static LabelFound Found(RecipeFacts facts)
    {
        var business = facts.Workshop.Business;
        return new LabelFound(facts.Content.Identity, facts.Content.NetQuantity, facts.Content.Ingredients,
            business.NameLine, business.Place.Line, business.ContactLine, facts.Content.Lot);
    }
}
