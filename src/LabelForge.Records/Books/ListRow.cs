using System.Globalization;
using LabelForge.Measures;
using LabelForge.Records.Spreadsheets;

namespace LabelForge.Records.Books;

/// <summary>A row of a list that is read back: its cells by the heading's names.</summary>
internal sealed class ListRow(string file, IReadOnlyList<string> heading, TextRow row)
{
    private const string Date = "Write year, month and day: 2026-11-25";

    public InputException Refuse(string wrong, string write) => new(new Problem(file, row.Line, wrong, write));

    public string? Text(string column)
    {
        for (var i = 0; i < heading.Count && i < row.Cells.Count; i++)
        {
            if (heading[i] == column && row.Cells[i].Length > 0)
                return SafeCsv.Plain(row.Cells[i]);
        }
        return null;
    }

    public string Needed(string column) => Text(column) ?? throw Refuse($"\"{column}\" is empty.", "Fill it in.");

    public int? Whole(string column) => Text(column) is not { } text ? null
        : int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var whole) ? whole
        : throw Refuse($"\"{text}\" is not a whole number.", $"Write figures only in \"{column}\".");

    public decimal? Figure(string column) => Text(column) is not { } text ? null
        : decimal.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var figure) ? figure
        : throw Refuse($"\"{text}\" is not a figure.", $"Write figures with a decimal point in \"{column}\", without unit: 9.50");

    public decimal? Signed(string column) => Text(column) is not { } text ? null
        : decimal.TryParse(text, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var figure) ? figure
        : throw Refuse($"\"{text}\" is not a figure.", $"Write figures with a decimal point in \"{column}\", with a minus where it is below nothing: -2");

    public DateOnly? Day(string column) => Text(column) is not { } text ? null
        : DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) ? day
        : throw Refuse($"\"{text}\" is not a date.", Date);

    public DateTime? Time(string column) => Text(column) is not { } text ? null
        : DateTime.TryParseExact(text, BookTables.WrittenAt, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal, out var time) ? time
        : throw Refuse($"\"{text}\" is not a time.", "Leave it as the books wrote it, 2026-11-25 14:03:59Z, or empty.");

    public T Need<T>(T? value, string column) where T : struct => value ?? throw Refuse($"\"{column}\" is empty.", "Fill it in.");
}
