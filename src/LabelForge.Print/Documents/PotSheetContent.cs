using LabelForge.Papers;

namespace LabelForge.Print.Documents;

/// <summary>What stands on the sheet for a pot whose base is poured into several products:
/// cautions, the pot, then a block for each product.</summary>
public sealed record PotSheetContent
{
    /// <summary>The pot's number.</summary>
    public required string Pot { get; init; }

    /// <summary>A line under the title: business, day, pieces in all.</summary>
    public required string Subtitle { get; init; }

    /// <summary>Cautions, one each; they stand first.</summary>
    public required ImmutableArray<string> Cautions { get; init; }

    /// <summary>What is weighed into the pot and done with it, for all products together.</summary>
    public required ImmutableArray<PotSheetRow> Shared { get; init; }

    /// <summary>The products, in the order of work.</summary>
    public required ImmutableArray<PotSheetBlock> Blocks { get; init; }

    /// <summary>The language of the sheet.</summary>
    public PaperWords Words { get; init; } = PaperWords.English;
}

/// <summary>One product of a pot.</summary>
/// <param name="Title">Its name.</param>
/// <param name="LotCode">Its lot.</param>
/// <param name="Expected">How many pieces are expected, in words.</param>
/// <param name="Rows">What to do, in order.</param>
public sealed record PotSheetBlock(string Title, string LotCode, string Expected, ImmutableArray<PotSheetRow> Rows);

/// <summary>One thing to do for a product: weigh something, or a step without a weight.</summary>
/// <param name="Text">What.</param>
/// <param name="Mass">How much; null for a step without a weight.</param>
/// <param name="Under">A line below it in small letters; or null.</param>
/// <param name="IsWritten">Whether what was weighed is to be written down beside it.</param>
public sealed record PotSheetRow(string Text, Mass? Mass, string? Under, bool IsWritten);
