using LabelForge.Papers;
using LabelForge.Records.Spreadsheets;

namespace LabelForge.Records.Weighing;

/// <summary>Reads a list of weighed pieces.</summary>
/// <remarks>
/// With a heading or without; one column of masses, or a name and a mass, or a name, a mass and the empty package's (tare).
/// Grams unless the heading or the cell says ounces. A comma is never a decimal separator: it is refused with its line, since a
/// guess would turn 113,2 into 1132 or into two cells.
/// </remarks>
public static partial class WeighingList
{
    private const decimal HeaviestGrams = 50_000m;

    /// <summary>Reads a list.</summary>
    /// <param name="path">The CSV file.</param>
    /// <param name="tare">The empty package's mass, taken off each; null where the list has its own column or the weights are net.</param>
    /// <exception cref="InputException">Something in it cannot be read, with its line.</exception>
    public static WeighedSample ReadFile(string path, Mass? tare = null) => Of(TextTable.ReadFile(path), path, tare);

    /// <summary>Reads a list's rows; a piece without a name is called by its number, in the language of the words.</summary>
    public static WeighedSample Of(IReadOnlyList<TextRow> rows, string file, Mass? tare = null, PaperWords? words = null)
    {
        if (rows.Count == 0)
            throw new InputException(file, 0, "weighing.empty");
        RefuseCommaPairs(rows, file);
        var columns = Columns.Of(rows[0], file);
        if (tare is not null && columns.Tare is not null)
            throw new InputException(file, rows[0].Line, "weighing.two-tares");
        var pieces = ImmutableArray.CreateBuilder<WeighedPiece>();
        foreach (var row in columns.IsHeading ? rows.Skip(1) : rows)
        {
            var gross = Cell(row, columns.Mass, columns, file);
            var off = columns.Tare is { } t ? Cell(row, t, columns, file) : tare ?? default;
            if (off >= gross)
                throw new InputException(file, row.Line, "weighing.empty-as-full", ("off", off), ("gross", gross));
            var name = columns.Name is { } n && n < row.Cells.Count && row.Cells[n].Length > 0
                ? row.Cells[n]
                : (words ?? PaperWords.English)["weigh-piece", pieces.Count + 1];
            pieces.Add(new WeighedPiece(name, Mass.FromGrams(gross.Grams - off.Grams), row.Line));
        }
        return pieces.Count > 0
            ? new WeighedSample(pieces.ToImmutable())
            : throw new InputException(file, rows[0].Line, "weighing.only-heading");
    }

    /// <summary>Reads one mass as a list has it.</summary>
    internal static Parsed<Mass> ReadMass(string cell, bool ounces)
    {
        var match = Shape().Match(cell);
        if (cell.Contains(','))
            return Parsed<Mass>.Refused("weighing.comma", ("cell", cell), ("cell-2", cell.Replace(',', '.')));
        if (!match.Success
            || PlainFigure.Read(match.Groups["figure"].Value) is not { } figure)
            return (cell.Length == 0
                ? Parsed<Mass>.Refused("weighing.no-weight")
                : Parsed<Mass>.Refused("weighing.not-a-weight", ("cell", cell)));
        if (figure == 0 || figure > HeaviestGrams)
            return Parsed<Mass>.Refused("weighing.not-a-package-weight", ("cell", cell));
        var unit = match.Groups["unit"].Value.ToLowerInvariant();
        return Parsed<Mass>.Of(unit is "oz" || (unit.Length == 0 && ounces)
            ? Mass.FromOunces(figure)
            : unit == "kg"
            ? Mass.FromGrams(figure * 1000m)
            : unit is "lb"
            ? Mass.FromPounds(figure)
            : Mass.FromGrams(figure));
    }

    private static Mass Cell(TextRow row, int column, Columns columns, string file)
    {
        if (row.Cells.Count > columns.Count)
            throw new InputException(file, row.Line, "weighing.cells-differ", ("count", row.Cells.Count), ("count-2", columns.Count));
        return ReadMass(column < row.Cells.Count ? row.Cells[column] : "", columns.Ounces).OrRefuse(file, row.Line);
    }

    // "113,2" saved with commas between cells is read as two cells. Two figures on a line are taken for a number and a weight
    // only where the first counts the lines.
    private static void RefuseCommaPairs(IReadOnlyList<TextRow> rows, string file)
    {
        if (rows[0].Cells.Count != 2 || rows.Any(r => r.Cells.Count != 2 || !r.Cells.All(c => Digits().IsMatch(c))))
            return;
        var counts = rows.Select(r => r.Cells[0]).Distinct().Count() == rows.Count
            && rows.Zip(rows.Skip(1)).All(p => Number(p.Second) == Number(p.First) + 1);
        if (!counts || rows.Count == 1)
        {
            throw new InputException(file, rows[0].Line, "weighing.comma-or-two", ("list", string.Join(',', rows[0].Cells)),
                ("list-2", string.Join('.', rows[0].Cells)));
        }
    }

    private static decimal Number(TextRow row) =>
        decimal.Parse(row.Cells[0], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"^[0-9]{1,9}(\.[0-9]{1,9})?$")]
    private static partial Regex Digits();

    [GeneratedRegex(@"^(?<figure>[0-9]{1,9}(\.[0-9]{0,9})?|\.[0-9]{1,9})\s*(?<unit>g|kg|oz|lb)?$", RegexOptions.IgnoreCase)]
    private static partial Regex Shape();

    /// <summary>Which cell holds what.</summary>
    private sealed partial record Columns(bool IsHeading, int Count, int? Name, int Mass, int? Tare, bool Ounces)
    {
        public static Columns Of(TextRow first, string file)
        {
            if (first.Cells.Any(c => ReadMass(c, false).IsValue || c.Contains(',')))
            {
                return first.Cells.Count <= 3
                    ? new Columns(false, first.Cells.Count, first.Cells.Count > 1 ? 0 : null, first.Cells.Count > 1 ? 1 : 0,
                        first.Cells.Count > 2 ? 2 : null, false)
                    : throw new InputException(file, first.Line, "weighing.cells", ("count", first.Cells.Count));
            }
            var mass = Find(first, MassWords());
            var tare = Find(first, TareWords());
            if (mass is null)
                throw new InputException(file, first.Line, "weighing.no-mass-column", ("list", string.Join(", ", first.Cells)));
            return new Columns(true, first.Cells.Count,
                first.Cells.Count > 1
                    ? Enumerable.Range(0, first.Cells.Count).Cast<int?>().FirstOrDefault(i => i != mass && i != tare)
                    : null, mass.Value, tare, OunceWord().IsMatch(first.Cells[mass.Value]));
        }

        private static int? Find(TextRow row, Regex words) =>
            Enumerable.Range(0, row.Cells.Count).Where(i => words.IsMatch(row.Cells[i])).Cast<int?>().FirstOrDefault();

        [GeneratedRegex(@"^(net |gross )?(mass|weight|wt|net|gross|grams?|g|oz|ounces?)\b", RegexOptions.IgnoreCase)]
        private static partial Regex MassWords();

        [GeneratedRegex(@"^(tare|empty|package)\b", RegexOptions.IgnoreCase)]
        private static partial Regex TareWords();

        [GeneratedRegex(@"\b(oz|ounces?)\b", RegexOptions.IgnoreCase)]
        private static partial Regex OunceWord();
    }
}
