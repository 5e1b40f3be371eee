using LabelForge.Lots;
using LabelForge.Quantities;

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
    public static LabelContent Build(Workshop workshop, BatchFormula batch, ProductKind kind, Declaration declaration, Panel panel,
        LotCode? lot, DateOnly on)
    {
        var recipe = batch.Recipe;
        var business = workshop.Business;
        var market = declaration.Market;
        var words = LocalWords.For(market, business.Language, recipe);
        var amount = PieceQuantity.Of(batch, kind);
        return new LabelContent
        {
            BusinessName = business.Name,
            ProductName = recipe.Name,
            Languages = words.Languages,
            Identity = words.Identity,
            NetQuantity = NetQuantityStatement.For(market, amount, on).Statement,
            IngredientHeading = declaration.Heading,
            Ingredients = declaration.Names,
            Directions = words.Directions,
            Warnings = words.Warnings,
            PeriodAfterOpening = recipe.Words.PeriodAfterOpening,
            CartonCount = recipe.Pieces == 1 ? "1 piece" : $"{recipe.Pieces} pieces",
            BestBefore = words.BestBefore,
            Origin = words.Origin,
            Responsible = Importer(business, market)
                ?? string.Join(", ", new[] { business.NameLine, business.Place.Line }.Where(t => t.Length > 0)),
            Contact = business.ContactLine,
            Lot = lot?.ToString(),
            LotElementString = lot?.ToString(),
            Market = market,
            On = on,
            PrincipalPanel = panel,
            Floors = LetterFloors.For(market, amount, panel, recipe.Package, on),
        };
    }

    // Where the market sets words for who answers for what was made elsewhere, they stand before the name, once.
    private static string? Importer(Business business, Market market)
    {
        if (business.ResponsibleIn(market) is not { } responsible || market.Ways.ImportedBy is not { } words)
            return business.ResponsibleIn(market);
        // "Imported for" is as good as "Imported by": the first word of each language tells.
        return words.Split('/', StringSplitOptions.TrimEntries)
            .Any(w => responsible.Contains(w.Split(' ')[0] + " ", StringComparison.OrdinalIgnoreCase))
            ? responsible
            : $"{words} {responsible}";
    }
}
