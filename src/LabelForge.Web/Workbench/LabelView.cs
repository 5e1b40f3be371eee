using LabelForge.Checks;
using LabelForge.Print.Jobs;

namespace LabelForge.Web.Workbench;

/// <summary>A label's picture.</summary>
/// <param name="Address">Where it is served.</param>
/// <param name="Design">The design's id.</param>
/// <param name="WidthMm">How wide the label is.</param>
/// <param name="HeightMm">How high.</param>
public sealed record LabelPicture(string Address, string Design, decimal WidthMm, decimal HeightMm);

/// <summary>Another product of the same recipe, and what the checks found on it.</summary>
/// <param name="Name">The variant's name.</param>
/// <param name="Findings">What was found, in the declaration and by the checks; empty where it cannot be judged.</param>
/// <param name="Problem">Why it cannot be judged; null where it was.</param>
public sealed record OtherProduct(string Name, ImmutableArray<Finding> Findings, Problem? Problem);

/// <summary>What a recipe comes to as its text stands: all that the page shows of it.</summary>
public sealed record LabelView
{
    /// <summary>Nothing yet.</summary>
    public static LabelView None { get; } = new();

    /// <summary>The way from the recipe to the label; null where something in it cannot be used.</summary>
    public LabelJob? Job { get; init; }

    /// <summary>What the checks found; null where no rules are held for the market.</summary>
    public CheckReport? Report { get; init; }

    /// <summary>What the checks found on the recipe's other products, where no one product is wanted.</summary>
    public ImmutableArray<OtherProduct> Others { get; init; } = [];

    /// <summary>Why there is no label, or no check.</summary>
    public Problem? Problem { get; init; }

    /// <summary>The label as it will print, and the labels that go with it; none where it does not fit.</summary>
    public ImmutableArray<LabelPicture> Pictures { get; init; } = [];

    /// <summary>What the lot's own weighing changes on the label, beside the recipe.</summary>
    public ImmutableArray<string> LotChanges { get; init; } = [];

    /// <summary>Whether the other products of the recipe were judged too; until then nothing is said of the recipe as a whole.</summary>
    public bool IsWhole { get; init; } = true;

    /// <summary>Whether this is of an earlier text: something in the one that stands now cannot be used.</summary>
    public bool IsOld { get; init; }

    /// <summary>When it was made, on this machine's clock.</summary>
    public DateTime MadeAt { get; init; } = DateTime.Now;
}
