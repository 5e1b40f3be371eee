using LabelForge.Checks.Reading;

namespace LabelForge.Checks;

/// <summary>Checks what a recipe's label would say against the rules of the market it was declared for.</summary>
public static class RecipeCheck
{
    /// <summary>Checks a recipe's label; findings stand in order of gravity.</summary>
    public static CheckReport Run(RecipeFacts facts)
    {
        var recipe = facts.Batch.Recipe;
        var label = new CheckCase(
            LabelStatement.Printed(facts.Content, facts.Declaration, recipe, facts.Kind, facts.Workshop, facts.Printed),
            facts.Declaration.Market.On(facts.On))
        {
            Product = facts,
            Kind = facts.Kind,
            Facts = recipe.Facts,
            SoldAs = recipe.SoldAs,
            MeantAs = recipe.SoldAs,
            Panel = facts.Content.PrincipalPanel,
            PanelGiven = true,
        };
        label.Take(FragranceCheck.Find(facts));
        return LabelCheck.Run(label);
    }
}
