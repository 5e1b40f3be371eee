using System.Collections.Frozen;

namespace LabelForge.Ingredients;

/// <summary>How much of a substance stands for another by which a limit counts: a salt for its acid. By mass, from molar masses.</summary>
public static class CountedAs
{
    private static readonly string[] Heading = ["ingredient", "as", "share", "formula", "as formula", "parts", "source", "basis", "read",
        "bound"];

    private static readonly Lazy<FrozenDictionary<(string,
        string), (decimal Share, bool IsBound)>> Held = new(() => Read(DataTable.Embedded("ingredients/tables/counted-as.csv").Single()));

    /// <summary>
    /// Grams of the one in a gram of the other; 1 where they are the same. Null where no figure is held: the salt then
    /// weighs more than what it is counted as, by an unknown part.
    /// </summary>
    /// <param name="ingredient">The ingredient's US name.</param>
    /// <param name="counted">What the limit counts, such as <c>benzoic acid</c>; null for the ingredient itself.</param>
    public static decimal? Share(string ingredient, string? counted) =>
        counted is null || string.Equals(ingredient, counted, StringComparison.OrdinalIgnoreCase)
            ? 1
            : Held.Value.TryGetValue((NameText.Plain(ingredient), NameText.Plain(counted)), out var row) ? row.Share : null;

    /// <summary>The share that is surely there: as <see cref="Share"/>, but 0 where no figure is
    /// held or the figure is an upper bound, as for clays.</summary>
    public static decimal Least(string ingredient, string? counted) =>
        counted is not null && Held.Value.TryGetValue((NameText.Plain(ingredient), NameText.Plain(counted)), out var row) && row.IsBound
            ? 0
            : Share(ingredient, counted) ?? 0;

    /// <summary>Reads the table.</summary>
    /// <exception cref="InputException">A row cannot be used.</exception>
    public static FrozenDictionary<(string Ingredient, string As), (decimal Share, bool IsBound)> Read(DataTable table) =>
        table.Rows(Heading)
            .ToArray()
            .ToFrozenDictionary(r => (NameText.Plain(r.Needed("ingredient")), NameText.Plain(r.Needed("as"))), r => (Figure(r), Bound(r)));

    private static bool Bound(DataRow row) => row["bound"] switch
    {
        "upper" => true,
        "" => false,
        var other => throw row.Refuse("substances.not", ("other", other)),
    };

    private static decimal Figure(DataRow row) =>
        PlainFigure.Read(row["share"]) is > 0 and < 1 and var share
            ? share
            : throw row.Refuse("substances.not-a-share", ("share", row["share"]));
}
