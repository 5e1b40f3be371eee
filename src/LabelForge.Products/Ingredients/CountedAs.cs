using System.Collections.Frozen;
using System.Globalization;
using LabelForge.Measures;

namespace LabelForge.Ingredients;

/// <summary>How much of a substance stands for another by which a limit counts: a salt for its acid. By mass, from molar masses.</summary>
public static class CountedAs
{
    private static readonly string[] Heading = ["ingredient", "as", "share", "formula", "as formula", "parts", "source", "basis", "read"];

    private static readonly Lazy<FrozenDictionary<(string, string), decimal>> Shipped = new(() => Read(DataTable.Shipped("ingredients/tables/counted-as.csv").Single()));

    /// <summary>
    /// Grams of the one in a gram of the other; 1 where they are the same. Null where no figure is held: the salt then
    /// weighs more than what it is counted as, by an unknown part.
    /// </summary>
    /// <param name="ingredient">The ingredient's US name.</param>
    /// <param name="counted">What the limit counts, such as <c>benzoic acid</c>; null for the ingredient itself.</param>
    public static decimal? Share(string ingredient, string? counted) =>
        counted is null || string.Equals(ingredient, counted, StringComparison.OrdinalIgnoreCase)
            ? 1
            : Shipped.Value.TryGetValue((NameText.Plain(ingredient), NameText.Plain(counted)), out var share) ? share : null;

    /// <summary>Reads the table.</summary>
    /// <exception cref="InputException">A row cannot be used.</exception>
    public static FrozenDictionary<(string Ingredient, string As), decimal> Read(DataTable table)
    {
        return table.Rows(Heading)
            .ToArray()
            .ToFrozenDictionary(r => (NameText.Plain(r.Needed("ingredient")), NameText.Plain(r.Needed("as"))), Figure);
    }

    private static decimal Figure(DataRow row) =>
        decimal.TryParse(row["share"], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var share) && share is > 0 and < 1
            ? share
            : throw row.Refuse($"\"{row["share"]}\" is not a share.", "Write a figure between 0 and 1.");
}
