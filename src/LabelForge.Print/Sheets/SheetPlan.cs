namespace LabelForge.Print.Sheets;

/// <summary>Which positions of which sheets are filled.</summary>
/// <param name="First">The first position on the first sheet, from 1.</param>
/// <param name="Count">How many labels, at least 1.</param>
/// <param name="PerSheet">Positions on a sheet.</param>
public sealed record SheetPlan(int First, int Count, int PerSheet)
{
    /// <summary>How many sheets are needed.</summary>
    public int Sheets => (First - 1 + Count + PerSheet - 1) / PerSheet;

    /// <summary>The labels on a sheet: which one, counted from 0, and at which position, counted from 1.</summary>
    /// <param name="sheet">The sheet, counted from 0.</param>
    public IEnumerable<(int Label, int Position)> OnSheet(int sheet)
    {
        var start = sheet * PerSheet;
        for (var position = 1; position <= PerSheet; position++)
        {
            var label = start + position - First;
            if (label >= 0 && label < Count)
                yield return (label, position);
        }
    }
}
