using LabelForge.Checks.Reading;
using LabelForge.Declarations;

namespace LabelForge.Checks;

/// <summary>The height at which something would print, and the least that a rule allows.</summary>
/// <param name="Rule">The rule's id.</param>
/// <param name="Element">What it is, for the finding's place.</param>
/// <param name="MeasuredMillimetres">The height of the letters that would be drawn.</param>
/// <param name="LeastMillimetres">The rule's least height.</param>
public sealed record PrintedHeight(string Rule, string Element, decimal MeasuredMillimetres, decimal LeastMillimetres);

/// <summary>Everything a check of a recipe reads. Checks read; they change nothing.</summary>
public sealed record RecipeFacts(
    Workshop Workshop, BatchFormula Batch, ProductKind Kind, Declaration Declaration, LabelContent Content,
    ImmutableArray<PrintedHeight> Heights)
{
    /// <summary>The mass balance of the batch: what the finished product holds.</summary>
    public FinishedProduct Finished { get; init; } = FinishedProduct.Of(Workshop, Batch);

    /// <summary>The day to judge by.</summary>
    public required DateOnly On { get; init; }

    /// <summary>Whether it is known what package the label is for, from the recipe or from its
    /// design; else the label's front stands for the package's.</summary>
    public bool IsPackageKnown { get; init; } = true;

    /// <summary>Whether the label is that of a set, in which this product is one of several.</summary>
    public bool IsOfSet { get; init; }

    /// <summary>The parts that the label and those beside it print; null where it is not laid
    /// out, so that all are taken as printed.</summary>
    public ImmutableHashSet<LabelPart>? Printed { get; init; }
}

/// <summary>What would stand on the label, as the check's report shows it.</summary>
public sealed record LabelFound(
    string? Identity, string? NetQuantity, ImmutableArray<string> Ingredients, string? Business, string? Place, string? Contact,
    string? Lot)
{
    /// <summary>Each part by what it is called, empty where nothing was read.</summary>
    public IEnumerable<(string What, string Text)> Parts =>
    [
        ("identity", Identity ?? ""), ("net quantity", NetQuantity ?? ""), ("ingredients", string.Join(", ", Ingredients)),
        ("business", Business ?? ""), ("place", Place ?? ""), ("contact", Contact ?? ""), ("lot", Lot ?? ""),
    ];
}

/// <summary>A check's whole answer.</summary>
public sealed record CheckReport(string Market, ImmutableArray<Finding> Findings, LabelFound Found)
{
    /// <summary>Whether a finding of severity must stands.</summary>
    public bool HasMust => Findings.Any(f => f.Severity == Severity.Must);
}
