using LabelForge.Lots;
using LabelForge.Print.Drawing;
using LabelForge.Print.Jobs;
using LabelForge.Print.Sheets;

namespace LabelForge.UseCases;

/// <summary>Labels of one design that a lot needs.</summary>
/// <param name="Job">The product's label and those that go on the same package.</param>
/// <param name="Lot">The lot.</param>
/// <param name="Layout">The label that is printed: the product's own, or one that goes on the same package.</param>
/// <param name="Stock">The stock.</param>
/// <param name="Count">How many.</param>
/// <param name="IsOwn">Whether it is the product's own label, by which pieces are counted.</param>
public sealed record RunLabels(LabelJob Job, LotCode Lot, LabelLayout Layout, LabelStock Stock, int Count, bool IsOwn);

/// <summary>A sheet of a print run.</summary>
/// <param name="Stock">The stock.</param>
/// <param name="Name">The letter on a part-used sheet, or the one to write on a new one that
/// keeps a free place; null for a new one that is full.</param>
/// <param name="IsNew">Whether it comes out of the packet.</param>
/// <param name="UsedBefore">The places that were used before.</param>
/// <param name="Labels">Which label stands at which place.</param>
public sealed record RunSheet(LabelStock Stock, string? Name, bool IsNew, ImmutableSortedSet<int> UsedBefore,
    ImmutableArray<(int Place, RunLabels Label)> Labels)
{
    /// <summary>How many places are free afterwards.</summary>
    public int FreeAfter => Stock.PerSheet - UsedBefore.Count - Labels.Length;

    /// <summary>What the sheet is called in the books.</summary>
    public string Called => Name ?? "new";
}

/// <summary>What a print run would print, and on which sheets.</summary>
/// <param name="Labels">The labels, in the order of the batches.</param>
/// <param name="Sheets">The sheets, in the order of the tray.</param>
/// <param name="Notes">What to know before it is printed, in sentences.</param>
public sealed record RunPlan(ImmutableArray<RunLabels> Labels, ImmutableArray<RunSheet> Sheets, ImmutableArray<string> Notes);
