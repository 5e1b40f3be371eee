using LabelForge.Checks.Reading;
using LabelForge.Checks.Words;
using LabelForge.Quantities;

namespace LabelForge.Checks;

/// <summary>Settles what kind of product a label is for and how it is sold, from what the maker says or else from its words.</summary>
public static partial class LabelJudgement
{
    /// <summary>The facts that the checks read.</summary>
    /// <param name="reading">What was read.</param>
    /// <param name="kind">The kind as given, or null.</param>
    /// <param name="soldAs">How it is sold as given, or null.</param>
    /// <param name="panel">The principal display panel as given, or null.</param>
    /// <param name="on">The date to judge by.</param>
    /// <param name="facts">What the maker has settled of the product.</param>
    public static LabelFacts Of(LabelStatement reading, ProductKind? kind, SoldAs? soldAs, Panel? panel, DateOnly on,
        ProductFacts? facts = null)
    {
        var settled = facts ?? ProductFacts.None;
        var known = (kind ?? reading.Identity?.Kind) is { } any ? settled.Of(any, reading.Text.Text) : null;
        var page = reading.Text.Page is { } size ? Panel.Rectangle(size.Width, size.Height) : null;
        return new(reading, known, soldAs ?? Judged(reading, known), soldAs is not null, panel ?? page, panel is not null, on)
        {
            Facts = settled,
            KindGiven = kind is not null,
        };
    }

    // Only a soap can be sold as soap. A soap without an ingredient list is left open: it may be exempt (21 CFR 701.20),
    // unless its own words promise more than to clean.
    private static SoldAs? Judged(LabelStatement reading, ProductKind? kind) =>
        kind is not null && ProductGroup.Covers(kind, ["soap"]) == Applies.Yes && SaysSo().IsMatch(reading.Text.Text)
            ? SoldAs.Soap
            : LabelFacts.MayBeExempt(reading, kind)
            && !WordCheck.Claims(reading.Rest, Makes.Cosmetic)
            && !WordCheck.Claims(reading.Rest, Makes.Drug)
            ? null
            : SoldAs.Cosmetic;

    // A label that says itself that it is sold as soap is held to that word.
    [GeneratedRegex(@"\b(?:sold|(?:sell|selling|sells)\s+(?:it|this|them|these)|offered)\s+(?:only\s+|simply\s+|just\s+)?as\s*:?\s+soap\b|\btrue soap\b", RegexOptions.IgnoreCase)]
    private static partial Regex SaysSo();
}
