using LabelForge.Declarations;

namespace LabelForge.Records.Books;

/// <summary>The declaration that is frozen with a batch.</summary>
public static class BatchStatement
{
    /// <summary>The declaration in the workshop's market; null where it cannot be settled yet.
    /// The batch can be made and recorded all the same.</summary>
    public static string? Of(Workshop workshop, BatchFormula batch, DateOnly on)
    {
        try
        {
            return DeclarationBuilder.Build(workshop, batch, ProductKindOf.Recipe(batch.Recipe), workshop.Market, on).Statement;
        }
        catch (InputException)
        {
            return null;
        }
    }
}
