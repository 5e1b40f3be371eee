using LabelForge.Records.Spreadsheets;

namespace LabelForge.Records.Books;

/// <summary>A row of a list that is read back: its cells by the heading's names.</summary>
internal sealed class ListRow(string file, IReadOnlyList<string> heading, TextRow row)
{
    /// <summary>Where it stands in its file.</summary>
    public int Line => row.Line;

    public InputException Refuse(string code, params ReadOnlySpan<(string Name, object? Value)> arguments) =>
        new(file, row.Line, code, arguments);

    /// <summary>A problem found in this row.</summary>
    public InputException Refuse(Problem problem) => new(problem.At(file, row.Line));

    public string? Text(string column)
    {
        for (var i = 0; i < heading.Count && i < row.Cells.Count; i++)
        {
            if (heading[i] == column && row.Cells[i].Length > 0)
                return SafeCsv.Plain(row.Cells[i]);
        }
        return null;
    }

    public string Needed(string column) => Text(column) ?? throw Refuse("import.empty", ("column", column));

    public int? Whole(string column) => Text(column) is not { } text ? null
        : PlainFigure.Whole(text) is { } whole ? whole
        : throw Refuse("import.not-a-whole-number", ("text", text), ("column", column));

    public decimal? Figure(string column) => Text(column) is not { } text ? null
        : PlainFigure.Read(text) is { } figure ? figure
        : throw Refuse("import.not-a-figure", ("text", text), ("column", column));

    /// <summary>A mass in grams: a plain figure, or any unit of mass.</summary>
    public decimal? Grams(string column) => Text(column) is not { } text ? null
        : PlainFigure.Read(text) is { } figure ? figure
        : Measures.Amount.Parse(text) is { IsValue: true, Value: { IsMass: true } amount } ? amount.AsMass().Grams
        : throw Refuse("import.not-a-mass", ("text", text), ("column", column));

    /// <summary>An amount of a material: a plain figure of grams or pieces, or any unit that the material can be counted in.</summary>
    public decimal Amount(string column, Material? material, Workshop? workshop)
    {
        var text = Needed(column);
        if (material is null || workshop is null
            || PlainFigure.Read(text) is not null)
            return Need(Grams(column), column);
        var read = MaterialAmount.Read(material, text, workshop.Dictionary);
        return read.IsValue ? read.Value : throw Refuse(read.Problem!);
    }

    /// <summary>A material of the workshop.</summary>
    public Material Known(Workshop workshop, string id) => workshop.Material(id, file, row.Line);

    public decimal? Signed(string column) => Text(column) is not { } text ? null
        : decimal.TryParse(text, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture,
            out var figure) ? figure
        : throw Refuse("import.not-a-figure-2", ("text", text), ("column", column));

    public DateOnly? Day(string column) => Text(column) is not { } text ? null
        : IsoDay.Read(text) is { } day ? day
        : throw Refuse("import.not-a-date", ("text", text));

    public DateTime? Time(string column) => Text(column) is not { } text ? null
        : DateTime.TryParseExact(text, BookTables.WrittenAt, CultureInfo.InvariantCulture,
            DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal, out var time) ? time
        : throw Refuse("import.not-a-time", ("text", text));

    public T Need<T>(T? value, string column) where T : struct => value ?? throw Refuse("import.empty", ("column", column));
}
