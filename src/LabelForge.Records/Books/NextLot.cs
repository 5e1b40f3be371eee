using LabelForge.Lots;
using LabelForge.Measures;

namespace LabelForge.Records.Books;

/// <summary>The lot code of a day's next batch.</summary>
public static class NextLot
{
    /// <summary>The first code of a day that no batch in the books has, struck ones too.</summary>
    /// <exception cref="InputException">As many batches were begun that day as a code can count.</exception>
    public static LotCode Of(Ledger ledger, DateOnly on)
    {
        for (var number = 1; number <= LotCode.MostBatches; number++)
            if (ledger.AllBatches.All(b => b.Lot != new LotCode(on, number).ToString()))
                return new LotCode(on, number);
        throw new InputException(new Problem(null, 0, $"{LotCode.MostBatches} batches were begun on {on:yyyy-MM-dd}.", "Give the date with --on."));
    }
}
