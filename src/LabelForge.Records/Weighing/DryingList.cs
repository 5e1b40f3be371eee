using LabelForge.Records.Spreadsheets;

namespace LabelForge.Records.Weighing;

/// <summary>Reads weighings of one piece over days: a day or a date, and a mass.</summary>
public static class DryingList
{
    /// <summary>Reads a list of <c>day,mass</c> or <c>date,mass</c>; dates are counted from the first.</summary>
    /// <exception cref="InputException">Something in it cannot be read, with its line.</exception>
    public static IReadOnlyList<DriedWeight> ReadFile(string path)
    {
        var rows = TextTable.ReadFile(path).ToList();
        if (rows.Count > 0 && rows[0].Cells.Count == 2 && !char.IsAsciiDigit(rows[0].Cells[0].FirstOrDefault()))
            rows.RemoveAt(0);
        DateOnly? start = null;
        return [.. rows.Select(row =>
        {
            if (row.Cells.Count != 2)
                throw new InputException(path, row.Line, "weighing.drying-cells", ("count", row.Cells.Count));
            var mass = WeighingList.ReadMass(row.Cells[1], false);
            if (!mass.IsValue)
                throw new InputException(mass.Problem.At(path, row.Line));
            if (IsoDay.Read(row.Cells[0]) is { } date)
                return new DriedWeight(date.DayNumber - (start ??= date).DayNumber, mass.Value.Grams);
            return PlainFigure.Read(row.Cells[0]) is <= 10_000 and var day && start is null
                ? new DriedWeight(day, mass.Value.Grams)
                : throw new InputException(path, row.Line, "weighing.not-a-day", ("cell", row.Cells[0]));
        })];
    }
}
