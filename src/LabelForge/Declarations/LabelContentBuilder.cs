using LabelForge.Lots;
using LabelForge.Markets;
using LabelForge.Measures;
using LabelForge.Quantities;
using LabelForge.Recipes;

namespace LabelForge.Declarations;

/// <summary>Puts together what stands on a label: words and the least heights of their letters, nothing about where they go.</summary>
public static class LabelContentBuilder
{
    /// <summary>The content of one product's label.</summary>
    /// <param name="workshop">The workshop.</param>
    /// <param name="batch">The batch.</param>
    /// <param name="kind">The product's kind.</param>
    /// <param name="declaration">Its ingredient declaration.</param>
    /// <param name="panel">The principal display panel, which sets the least height of the net quantity.</param>
    /// <param name="lot">The lot, or null where none is known yet.</param>
    /// <param name="on">The date to judge by.</param>
    public static LabelContent Build(Workshop workshop, BatchFormula batch, ProductKind kind, Declaration declaration, Panel panel, LotCode? lot, DateOnly on)
    {
        var recipe = batch.Recipe;
        var business = workshop.Business;
        var market = MarketText.Parse(declaration.Market).Value;
        var amount = PieceQuantity.Of(batch, kind);
        return new LabelContent
        {
            BusinessName = business.Name,
            ProductName = recipe.Name,
            Identity = recipe.Identity ?? "",
            NetQuantity = NetQuantityStatement.For(market, amount, on).Statement,
            IngredientHeading = declaration.Heading,
            Ingredients = declaration.Names,
            Directions = recipe.Directions,
            Warnings = recipe.Warnings,
            Responsible = string.Join(", ", new[] { business.NameLine, business.Place.Line }.Where(t => t.Length > 0)),
            Contact = business.ContactLine,
            Lot = lot?.ToString(),
            LotElementString = lot?.ToString(),
            NetQuantityLetterHeight = Length.FromMillimetres(LetterHeight.Least(market, amount, panel, on)!.Mm),
            // 1/32 in is allowed where the whole package has under 12 sq in for labels (21 CFR 701.3(p)). How much surface
            // a package has is not known here, so the greater floor stands. The EU gives no figure for cosmetics.
            IngredientLetterHeight = LawBook.Shipped.Get("ingredients.letter-height.us", on).Length,
            WarningLetterHeight = LawBook.Shipped.Get("warnings.letter-height.us", on).Length,
        };
    }
}
