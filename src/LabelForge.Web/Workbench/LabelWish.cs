using LabelForge.Lots;

namespace LabelForge.Web.Workbench;

/// <summary>How a recipe's label is wanted.</summary>
/// <param name="Market">The market; null for the workshop's.</param>
/// <param name="Design">The design with its style and tone; null for the usual one.</param>
/// <param name="Lot">The lot; null where none is known yet.</param>
/// <param name="IsBegun">Whether a batch of the lot may have been begun, so that the books are asked what was weighed into it.</param>
/// <param name="Variant">The variant; null for the recipe as it stands.</param>
public sealed record LabelWish(Market? Market = null, string? Design = null, LotCode? Lot = null, bool IsBegun = false,
    string? Variant = null);
