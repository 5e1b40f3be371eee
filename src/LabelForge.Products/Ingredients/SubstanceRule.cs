namespace LabelForge.Ingredients;

/// <summary>What a list of substances says of one. Written in the data in lower case with hyphens: <c>at-most</c>.</summary>
public enum SubstanceVerdict
{
    /// <summary>It must not be in these products.</summary>
    Prohibited,

    /// <summary>It must not be in these products if what the words say is so; a recipe cannot tell.</summary>
    ProhibitedIf,

    /// <summary>At most this share of these products. Of several such rows of one entry the first that covers the product holds.</summary>
    AtMost,

    /// <summary>At most this share if it is there for the purpose that the words say, and no other entry covers the product.</summary>
    AtMostIf,

    /// <summary>In these products only.</summary>
    Only,

    /// <summary>Not in these products.</summary>
    Not,

    /// <summary>A condition that a recipe cannot tell, in words.</summary>
    Condition,

    /// <summary>The label of these products must carry the words; above the share, where one is given.</summary>
    Warning,

    /// <summary>The label must bear words where the product is for the people that the groups name, or may be.</summary>
    WarningIf,

    /// <summary>Listed and permitted, where no other row of the entry says otherwise.</summary>
    Permitted,

    /// <summary>A colour that the list of permitted colours does not have.</summary>
    Unlisted,
}

/// <summary>One row of a list of prohibited, restricted or permitted substances.</summary>
/// <param name="List">The annex of Regulation (EC) No 1223/2009, such as <c>III</c>; or the market, <c>US</c> or <c>CA</c>.</param>
/// <param name="Reference">The entry's number in it, or the paragraph; <c>-</c> where it is no numbered entry.</param>
/// <param name="Substance">What the entry is about, in short.</param>
/// <param name="Ingredients">Keys of ingredients of the dictionary that it touches; may be empty.</param>
/// <param name="Names">Names that it touches and the dictionary does not know, <c>*mercur*</c> for all that hold those letters; may be
/// empty.</param>
/// <param name="Cas">CAS numbers of those names.</param>
/// <param name="Verdict">What it says.</param>
/// <param name="Groups">The products it says it of, as <see cref="Markets.ProductGroup"/> reads them.</param>
/// <param name="Most">The greatest share of the product ready for use, by mass; null where none is set.</param>
/// <param name="CountedAs">The substance that the share is counted as, such as <c>sorbic acid</c>; null where as itself.</param>
/// <param name="Together">Whether the share is of all the row's ingredients together.</param>
/// <param name="Words">The condition, the purpose or the warning, in words; may be empty.</param>
/// <param name="From">The first day on which products must comply; null where it has long been so.</param>
/// <param name="Instrument">The instrument that set it, as the export names it.</param>
/// <param name="Export">The month of the official export it was taken from, or <c>from memory</c>.</param>
/// <param name="Basis">Whether the entry was read; the weakest of what the row says.</param>
/// <param name="Read">The id of the text that was read (<see cref="LawTexts"/>); null where none was.</param>
/// <param name="Markets">The ids of the markets in which the row holds; empty where in each that uses the table.</param>
public sealed record SubstanceRule(
    string List,
    string Reference,
    string Substance,
    ImmutableArray<string> Ingredients,
    ImmutableArray<string> Names,
    ImmutableArray<CasNumber> Cas,
    SubstanceVerdict Verdict,
    ImmutableArray<string> Groups,
    Share? Most,
    string? CountedAs,
    bool Together,
    string Words,
    DateOnly? From,
    string Instrument,
    string Export,
    Basis Basis,
    string? Read,
    ImmutableArray<string> Markets)
{
    /// <summary>Whether the export is older than a year before the dictionary was made (December
    /// 2025), so that changes since are not in it.</summary>
    public bool IsStale => Export.StartsWith("2024", StringComparison.Ordinal);

    /// <summary>How the market cites it, with places to fill; null as the Union's annexes are cited.</summary>
    public string? Form { get; init; }

    /// <summary>Where it is written, and how far the copy here can be trusted.</summary>
    public string Citation => List switch
    {
        _ when Form is { } form =>
            form.Replace(Reference == "-" ? ", {reference}" : "{reference}", Reference == "-" ? "" : Reference, StringComparison.Ordinal)
            .Replace("{list}", List, StringComparison.Ordinal).Replace("{instrument}", Instrument, StringComparison.Ordinal)
            .Replace("{export}", Export, StringComparison.Ordinal),
        "REACH" => $"Regulation (EC) No 1907/2006, Annex XVII, {Reference}, {Instrument} ({Export})",
        _ => $"Regulation (EC) No 1223/2009, Annex {List}{(Reference == "-" ? "" : $", {Reference}")} ({Copy})",
    };

    private string Copy =>
        !char.IsDigit(Export[0])
            ? $"{Instrument}, {Export}"
            : $"CosIng export of {Export}{(IsStale ? ", not checked for later changes" : "")}";
}
