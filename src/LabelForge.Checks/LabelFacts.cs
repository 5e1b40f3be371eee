using LabelForge.Checks.Reading;
using LabelForge.Ingredients;
using LabelForge.Quantities;

namespace LabelForge.Checks;

/// <summary>Everything a check of a label made elsewhere reads.</summary>
/// <param name="Reading">What was read on the label.</param>
/// <param name="Kind">The kind of product: as given, or as the label's identity says; null where neither tells.</param>
/// <param name="SoldAs">How it is sold, as given or judged from the words; null where a soap's label leaves it open.</param>
/// <param name="SoldAsGiven">Whether the maker said how it is sold.</param>
/// <param name="Panel">The principal display panel: as given, or the page of a drawing of one label.</param>
/// <param name="PanelGiven">Whether the maker gave it.</param>
/// <param name="On">The date to judge by.</param>
public sealed record LabelFacts(LabelStatement Reading, ProductKind? Kind, SoldAs? SoldAs, bool SoldAsGiven, Panel? Panel, bool PanelGiven,
    DateOnly On)
{
    /// <summary>Whether a person said what kind of product it is.</summary>
    public bool KindGiven { get; init; }

    /// <summary>What the maker has settled of the product.</summary>
    public ProductFacts Facts { get; init; } = ProductFacts.None;

    /// <summary>Where findings about the whole label point.</summary>
    public string Where => Reading.Text.Where;

    /// <summary>How it is sold where the words are judged: a soap's label without an ingredient list may have been meant for soap alone,
    /// whatever its words make of it.</summary>
    public SoldAs? MeantAs => !SoldAsGiven && MayBeExempt(Reading, Kind) ? null : SoldAs;

    /// <summary>The ingredients named on the label, each with what the dictionary knows it as.</summary>
    public IReadOnlyList<(string Name, Ingredient? Known)> Names => [.. Reading.Names.Select(n => (n.Name, n.Known))];

    /// <summary>Whether a label may be that of a soap that needs no ingredient list (21 CFR
    /// 701.20): a soap by its kind, without one.</summary>
    internal static bool MayBeExempt(LabelStatement reading, ProductKind? kind) =>
        kind is not null && ProductGroup.Covers(kind, ["soap"]) == Applies.Yes && reading.Ingredients is null;
}
