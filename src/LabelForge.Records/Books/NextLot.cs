using LabelForge.Lots;

namespace LabelForge.Records.Books;

/// <summary>The lot code of a day's next batch.</summary>
public static class NextLot
{
    /// <summary>The first code of a day that no batch and no pot in the books has, struck ones
    /// too, and no label was printed with.</summary>
    /// <param name="recipe">What the batch is of: labels printed for it that day wait for their
    /// batch, which has their lot. Null for any.</param>
    /// <param name="given">Codes that others got in the same moment; null for none.</param>
    /// <exception cref="InputException">As many batches were begun that day as a code can count.</exception>
    public static LotCode Of(IBooks books, DateOnly on, Recipe? recipe = null, IReadOnlySet<string>? given = null)
    {
        for (var number = 1; number <= LotCode.MostBatches; number++)
        {
            var code = new LotCode(on, number);
            if (given?.Contains(code.ToString()) == true || books.IsNumberTaken(code.ToString()))
                continue;
            if (PrintedLots.Waiting(books, code.ToString()) is not { } printed
                || (recipe is not null && PrintedLots.IsSame(printed, recipe)))
                return code;
        }
        throw new InputException("lots.day-full", ("most-batches", LotCode.MostBatches), ("on", $"{on:yyyy-MM-dd}"));
    }
}
