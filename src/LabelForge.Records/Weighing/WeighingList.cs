using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using LabelForge.Measures;
using LabelForge.Records.Spreadsheets;

namespace LabelForge.Records.Weighing;

/// <summary>Reads a list of weighed pieces.</summary>
/// <remarks>
/// With a heading or without; one column of masses, or a name and a mass, or a name, a mass and the empty package's (tare).
/// Grams unless the heading or the cell says ounces. A comma is never a decimal sign: it is refused with its line, since a
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

    /// <summary>Reads a list's rows.</summary>
    public static WeighedSample Of(IReadOnlyList<TextRow> rows, string file, Mass? tare = null)
    {
        if (rows.Count == 0)
            throw new InputException(new Problem(file, 0, "The list is empty.", "Write one weight a line, in grams, for example: 113.2"));
        RefuseCommaPairs(rows, file);
        var columns = Columns.Of(rows[0], file);
        if (tare is not null && columns.Tare is not null)
            throw new InputException(new Problem(file, rows[0].Line, "The list has a column of tares, and a tare was given besides.", "Leave the tare out that was given, or take the column away."));
        var pieces = ImmutableArray.CreateBuilder<WeighedPiece>();
        foreach (var row in columns.IsHeading ? rows.Skip(1) : rows)
        {
            var gross = Cell(row, columns.Mass, columns, file);
            var off = columns.Tare is { } t ? Cell(row, t, columns, file) : tare ?? default;
            if (off >= gross)
                throw new InputException(new Problem(file, row.Line, $"The empty package ({off}) weighs as much as the full one ({gross}).", "Check both weights; the mass column holds the full package."));
            var name = columns.Name is { } n && n < row.Cells.Count && row.Cells[n].Length > 0 ? row.Cells[n] : $"piece {pieces.Count + 1}";
            pieces.Add(new WeighedPiece(name, Mass.FromGrams(gross.Grams - off.Grams), row.Line));
        }
        return pieces.Count > 0
            ? new WeighedSample(pieces.ToImmutable())
            : throw new InputException(new Problem(file, rows[0].Line, "There is a heading and nothing under it.", "Write one weight a line, in grams, for example: 113.2"));
    }

    /// <summary>Reads one mass as a list has it.</summary>
    internal static Parsed<Mass> ReadMass(string cell, bool ounces)
    {
        var match = Shape().Match(cell);
        if (cell.Contains(','))
            return Parsed<Mass>.Refused($"\"{cell}\" has a comma.", $"Write a decimal point: {cell.Replace(',', '.')}");
        if (!match.Success || !decimal.TryParse(match.Groups["figure"].Value, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var figure))
            return Parsed<Mass>.Refused(cell.Length == 0 ? "There is no weight on this line." : $"\"{cell}\" is not a weight.", "Write a figure above zero, in grams, for example: 113.2; or with its unit: 4.1 oz");
        if (figure == 0 || figure > HeaviestGrams)
            return Parsed<Mass>.Refused($"\"{cell}\" is not the weight of a package.", "Write the weight in grams, above zero and below 50 000.");
        var unit = match.Groups["unit"].Value.ToLowerInvariant();
        return Parsed<Mass>.Of(unit is "oz" || (unit.Length == 0 && ounces) ? Mass.FromOunces(figure) : unit == "kg" ? Mass.FromGrams(figure * 1000m) : unit is "lb" ? Mass.FromPounds(figure) : Mass.FromGrams(figure));
    }

    private static Mass Cell(TextRow row, int column, Columns columns, string file)
    {
        if (row.Cells.Count > columns.Count)
            throw new InputException(new Problem(file, row.Line, $"This line has {row.Cells.Count} cells, the first has {columns.Count}.", "A comma is no decimal sign here: write 113.2, and the same cells on every line."));
        return ReadMass(column < row.Cells.Count ? row.Cells[column] : "", columns.Ounces).OrRefuse(file, row.Line);
    }

    // "113,2" saved with commas between cells is read as two cells. Two figures on a line are taken for a number and a weight
    // only where the first counts the lines.
    private static void RefuseCommaPairs(IReadOnlyList<TextRow> rows, string file)
    {
        if (rows[0].Cells.Count != 2 || rows.Any(r => r.Cells.Count != 2 || !r.Cells.All(c => Digits().IsMatch(c))))
            return;
        var counts = rows.Select(r => r.Cells[0]).Distinct().Count() == rows.Count && rows.Zip(rows.Skip(1)).All(p => Number(p.Second) == Number(p.First) + 1);
        if (!counts || rows.Count == 1)
        {
            throw new InputException(new Problem(file, rows[0].Line, $"\"{string.Join(',', rows[0].Cells)}\" may be one weight with a decimal comma or two figures.",
                $"Write a decimal point ({string.Join('.', rows[0].Cells)}), or a heading: name,mass"));
        }
    }

    private static decimal Number(TextRow row) => decimal.Parse(row.Cells[0], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);

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
                    ? new Columns(false, first.Cells.Count, first.Cells.Count > 1 ? 0 : null, first.Cells.Count > 1 ? 1 : 0, first.Cells.Count > 2 ? 2 : null, false)
                    : throw new InputException(new Problem(file, first.Line, $"This line has {first.Cells.Count} cells.", "Write a heading (name, mass, tare), or at most a name, a mass and a tare."));
            }
            var mass = Find(first, MassWords());
            var tare = Find(first, TareWords());
            if (mass is null)
                throw new InputException(new Problem(file, first.Line, $"No column of \"{string.Join(", ", first.Cells)}\" is a mass.", "Head the column of weights \"mass\" (or \"mass oz\"), or write figures only."));
            return new Columns(true, first.Cells.Count, first.Cells.Count > 1 ? Enumerable.Range(0, first.Cells.Count).Cast<int?>().FirstOrDefault(i => i != mass && i != tare) : null, mass.Value, tare, OunceWord().IsMatch(first.Cells[mass.Value]));
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
