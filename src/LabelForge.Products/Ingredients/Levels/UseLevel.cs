namespace LabelForge.Ingredients.Levels;

/// <summary>A published figure of how much of an ingredient products of a form hold. Never a proof of what is in a bottle.</summary>
/// <param name="Ingredient">Its US name in the dictionary.</param>
/// <param name="Form">The form of the product.</param>
/// <param name="Percent">Mass percent of the product, above 0 to 100.</param>
/// <param name="Count">How many products the figure stands for.</param>
/// <param name="IsMaximum">Whether it is a legal maximum and no habit.</param>
/// <param name="IsDerived">Whether it was worked out from a figure read, as the source says.</param>
/// <param name="Source">Where it was read.</param>
public sealed record UseLevel(string Ingredient, ProductForm Form, double Percent, int Count, bool IsMaximum, bool IsDerived,
    string Source)
{
    private static readonly string[] Heading = ["ingredient", "form", "percent", "n", "what", "basis", "source"];

    /// <summary>Reads the table.</summary>
    /// <exception cref="InputException">A row cannot be used.</exception>
    internal static IEnumerable<UseLevel> Read(DataTable table)
    {
        foreach (var row in table.Rows(Heading).ToArray())
        {
            yield return new UseLevel(
                row.Needed("ingredient"), ReadForm(row), ReadPercent(row, "percent"),
                PlainFigure.Whole(row["n"]) is > 0 and var n
                    ? n
                    : throw row.Refuse("substances.counts-nothing", ("n", row["n"])),
                One(row, "what", "level", "legal maximum") == "legal maximum", One(row, "basis", "read", "derived") == "derived",
                row.Needed("source"));
        }
    }

    internal static ProductForm ReadForm(DataRow row) =>
        Enum.TryParse<ProductForm>(row.Needed("form"), ignoreCase: true, out var form) && !char.IsDigit(row["form"][0])
            ? form
            : throw row.Refuse("substances.no-form-product", ("form", row["form"]),
                ("list", string.Join(", ", Enum.GetNames<ProductForm>()).ToLowerInvariant()));

    internal static double ReadPercent(DataRow row, string column) =>
        double.TryParse(row[column], NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent, CultureInfo.InvariantCulture,
            out var percent) && percent is > 0 and <= 100
            ? percent
            : throw row.Refuse("substances.no-percentage", ("row", row[column]));

    private static string One(DataRow row, string column, params string[] words) =>
        words.Contains(row[column])
            ? row[column]
            : throw row.Refuse("substances.above-whole", ("row", row[column]), ("column", column), ("list", string.Join(" or ", words)));
}
