using LabelForge.Print.Designs;

namespace LabelForge.Print.Sheets;

/// <summary>The outline of a label on its sheet.</summary>
public enum StockShape
{
    /// <summary>A rectangle, its corners perhaps rounded.</summary>
    Rectangle,

    /// <summary>A circle or an ellipse.</summary>
    Round,
}

/// <summary>How labels are supplied.</summary>
public enum StockKind
{
    /// <summary>Sheets of labels.</summary>
    Sheet,

    /// <summary>A roll for a label printer: a page is one label, and the printer finds the gap by itself.</summary>
    Roll,
}

/// <summary>Where a stock's figures come from.</summary>
public enum StockBasis
{
    /// <summary>From the geometry stated in its source: divided evenly, or centred with the gaps named.</summary>
    StatedGeometry,

    /// <summary>Common in the trade.</summary>
    CommonPractice,

    /// <summary>From memory; to be held against a sheet first.</summary>
    FromMemory,

    /// <summary>Measured on a sheet.</summary>
    Measured,
}

/// <summary>A sheet or a roll of labels, named by its geometry. Positions count from 1, left to right, then down.</summary>
public sealed record LabelStock
{
    /// <summary>The id, such as <c>us-letter-10-2x4in</c>.</summary>
    public required string Id { get; init; }

    /// <summary>What it is, in words.</summary>
    public required string Name { get; init; }

    /// <summary>What it is, in French; null where its file does not say.</summary>
    public string? FrenchName { get; init; }

    /// <summary>What it is, in a language, as far as its file says; else as it is named.</summary>
    /// <param name="language">The language's code, as <c>fr</c>.</param>
    public string NameIn(string language) => (language == "fr" ? FrenchName : null) ?? Name;

    /// <summary>Where its figures come from, in words.</summary>
    public required string Source { get; init; }

    /// <summary>Where its figures come from.</summary>
    public StockBasis Basis { get; init; }

    /// <summary>Sheets, or a roll.</summary>
    public StockKind Kind { get; init; }

    /// <summary>Between one label of a roll and the next.</summary>
    public Length Gap { get; init; }

    /// <summary>The sheet's width; of a roll, the label's.</summary>
    public required Length PageWidth { get; init; }

    /// <summary>The sheet's height; of a roll, the label's.</summary>
    public required Length PageHeight { get; init; }

    /// <summary>How many labels stand one above the other.</summary>
    public required int Rows { get; init; }

    /// <summary>How many labels stand side by side.</summary>
    public required int Columns { get; init; }

    /// <summary>From the sheet's left edge to the first label's.</summary>
    public required Length Left { get; init; }

    /// <summary>From the sheet's top edge to the first label's.</summary>
    public required Length Top { get; init; }

    /// <summary>From one label's left edge to the next one's.</summary>
    public required Length PitchX { get; init; }

    /// <summary>From one label's top edge to the next one's.</summary>
    public required Length PitchY { get; init; }

    /// <summary>A label's width.</summary>
    public required Length LabelWidth { get; init; }

    /// <summary>A label's height.</summary>
    public required Length LabelHeight { get; init; }

    /// <summary>The radius of a rectangle's corners.</summary>
    public Length CornerRadius { get; init; }

    /// <summary>The outline.</summary>
    public StockShape Shape { get; init; }

    /// <summary>Labels on a sheet.</summary>
    public int PerSheet => Rows * Columns;

    /// <summary>The ids of the stock that ships with the tool.</summary>
    public static IReadOnlyList<string> Known => Templates.Ids("stock");

    /// <summary>Every stock that ships with the tool.</summary>
    public static IEnumerable<LabelStock> All => Known.Select(Load);

    /// <summary>Stock that ships with the tool.</summary>
    /// <exception cref="InputException">There is none of that id.</exception>
    public static LabelStock Load(string id) => Known.Contains(id)
        ? StockFile.Read(Templates.Tree($"stock/{id}.yaml"), id)
        : throw Templates.Unknown("label stock", id, Known);

    /// <summary>Stock from a file of the maker's own.</summary>
    /// <exception cref="InputException">The file cannot be read, or its labels overlap or reach beyond the sheet.</exception>
    public static LabelStock LoadFile(string path, string shownAs) => StockFile.ReadFile(path, shownAs);

    /// <summary>The top left corner of a position, from the sheet's.</summary>
    /// <param name="position">From 1 to <see cref="PerSheet"/>.</param>
    public (Length X, Length Y) CornerOf(int position)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(position, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(position, PerSheet);
        var (row, column) = Math.DivRem(position - 1, Columns);
        return (Length.FromMillimetres(Left.Millimetres + column * PitchX.Millimetres),
            Length.FromMillimetres(Top.Millimetres + row * PitchY.Millimetres));
    }
}
