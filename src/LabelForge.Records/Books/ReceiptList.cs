using System.Globalization;
using LabelForge.Measures;
using LabelForge.Recipes;
using LabelForge.Records.Spreadsheets;

namespace LabelForge.Records.Books;

/// <summary>Reads receipts from CSV, as <c>labelforge books receipt</c> writes them or as a maker types them.</summary>
public static class ReceiptList
{
    private static readonly string[] Known = ["number", "on", "by", "material", "supplier", "supplier lot", "amount", "price", "best before", "certificate", "left", "note", "struck by", "material lot"];

    /// <summary>Reads a list; the whole list is read before anything is written, struck lines are left out.</summary>
    /// <exception cref="InputException">Something in it cannot be read, with its line.</exception>
    public static IReadOnlyList<Receipt> ReadFile(string path, Workshop workshop, DateOnly on, string by)
    {
        var rows = TextTable.ReadFile(path);
        if (rows.Count == 0 || !rows[0].Cells.Contains("material") || rows[0].Cells.FirstOrDefault(c => !Known.Contains(c)) is { })
            throw new InputException(path, rows.Count == 0 ? 0 : rows[0].Line, "import.heading-not-receipts", ("list", string.Join(',', Known)));
        var heading = rows[0].Cells.ToList();
        return [.. rows.Skip(1).Where(r => Cell(heading, r, "struck by") is null).Select(row =>
        {
            InputException Refuse(Problem problem) => new(problem.At(path, row.Line));
            string Needed(string column) => Cell(heading, row, column) ?? throw Refuse(new(null, 0, "import.empty", ("column", column)));
            DateOnly? Day(string column) => Cell(heading, row, column) is not { } text ? null
                : DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) ? day
                : throw Refuse(new(null, 0, "import.not-a-date", ("text", text)));
            var material = workshop.Material(Needed("material"), path, row.Line);
            var written = Needed("amount");
            var amount = decimal.TryParse(written, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var plain) ? Parsed<decimal>.Of(plain) : MaterialAmount.Read(material, written);
            return new Receipt
            {
                On = Day("on") ?? on,
                By = Cell(heading, row, "by") ?? by,
                Note = Cell(heading, row, "note"),
                Material = material.Id,
                Supplier = Cell(heading, row, "supplier"),
                SupplierLot = Cell(heading, row, "supplier lot"),
                Amount = amount.IsValue && amount.Value > 0 ? amount.Value : throw Refuse(amount.Problem ?? new(null, 0, "import.nothing-came-in")),
                Price = decimal.TryParse(Needed("price"), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var price) ? price : throw Refuse(new(null, 0, "import.not-a-price", ("needed", Needed("price")))),
                BestBefore = Day("best before"),
                Certificate = Cell(heading, row, "certificate"),
            };
        })];
    }

    private static string? Cell(List<string> heading, TextRow row, string column) =>
        heading.IndexOf(column) is var at and >= 0 && at < row.Cells.Count && row.Cells[at].Length > 0 ? SafeCsv.Plain(row.Cells[at]) : null;
}
