using System.Collections.Immutable;
using LabelForge.Checks;
using LabelForge.Measures;
using LabelForge.Print.Jobs;

namespace LabelForge.Web.Workbench;

/// <summary>A label's picture.</summary>
/// <param name="Address">Where it is served.</param>
/// <param name="Design">The design's id.</param>
/// <param name="WidthMm">How wide the label is.</param>
/// <param name="HeightMm">How high.</param>
public sealed record LabelPicture(string Address, string Design, decimal WidthMm, decimal HeightMm);

/// <summary>What a recipe comes to as its text stands: all that the page shows of it.</summary>
public sealed record LabelView
{
    /// <summary>Nothing yet.</summary>
    public static LabelView None { get; } = new();

    /// <summary>The way from the recipe to the label; null where something in it cannot be used.</summary>
    public LabelJob? Job { get; init; }

    /// <summary>What the checks found; null where no rules are held for the market.</summary>
    public CheckReport? Report { get; init; }

    /// <summary>Why there is no label, or no check.</summary>
    public Problem? Problem { get; init; }

    /// <summary>The label as it will print, and the labels that go with it; none where it does not fit.</summary>
    public ImmutableArray<LabelPicture> Pictures { get; init; } = [];

    /// <summary>What the lot's own weighing changes on the label, beside the recipe.</summary>
    public ImmutableArray<string> LotChanges { get; init; } = [];

    /// <summary>Whether this is of an earlier text: something in the one that stands now cannot be used.</summary>
    public bool IsOld { get; init; }

    /// <summary>When it was made, on this machine's clock.</summary>
    public DateTime MadeAt { get; init; } = DateTime.Now;
}
