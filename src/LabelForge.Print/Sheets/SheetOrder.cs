using LabelForge.Print.Drawing;
using LabelForge.Print.Output;

namespace LabelForge.Print.Sheets;

/// <summary>So many copies of one label.</summary>
/// <param name="Label">The label.</param>
/// <param name="Count">How many, at least 1.</param>
public sealed record LabelRun(LabelLayout Label, int Count);

/// <summary>What is to stand on the sheets: runs of labels one after the other, from a first position on.</summary>
public sealed record SheetOrder
{
    /// <summary>The stock.</summary>
    public required LabelStock Stock { get; init; }

    /// <summary>The runs, in order.</summary>
    public required ImmutableArray<LabelRun> Runs { get; init; }

    /// <summary>The first position used on the first sheet, from 1.</summary>
    public int First { get; init; } = 1;

    /// <summary>How the print is moved and stretched.</summary>
    public Registration Registration { get; init; }

    /// <summary>Whether marks to cut by are drawn, for plain paper.</summary>
    public bool CutMarks { get; init; }

    /// <summary>What each sheet's margin says, and no label; null where it says nothing.</summary>
    public string? Note { get; init; }

    /// <summary>How many labels in all.</summary>
    public int Count => Runs.Sum(r => r.Count);

    /// <summary>Which positions are filled.</summary>
    /// <exception cref="InputException">A number is out of range, or a label does not fit the stock.</exception>
    public SheetPlan Plan()
    {
        var plan = SheetWriter.Plan(Stock, First, Count);
        foreach (var run in Runs)
            StockFit.RefuseWrongSize(run.Label, Stock);
        return plan;
    }
}
