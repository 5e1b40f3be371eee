namespace LabelForge.Ingredients;

/// <summary>Reads a file of the dictionary: one ingredient a row, several values in a cell parted by semicolons.</summary>
internal static class IngredientFile
{
    private static readonly string[] Heading =
        ["us", "eu", "inci", "ca", "cas", "ec", "ci", "everyday", "roles", "flags", "koh", "source", "basis"];

    /// <summary>Adds the rows of a file.</summary>
    /// <exception cref="InputException">The heading is not the one wanted, or a row has no name;
    /// the message names file, line and the row's text.</exception>
    public static void Read(DataTable table, List<IngredientRow> to)
    {
        foreach (var row in table.Rows(Heading))
            to.Add(new IngredientRow(row));
    }

    /// <summary>The ingredient of a row.</summary>
    /// <exception cref="InputException">The row cannot be used; the message names file, line and the row's text.</exception>
    public static Ingredient Of(DataRow row)
    {
        var ingredient = new Ingredient(
            row.Needed("us"),
            row.Needed("eu"),
            OrNull(row["inci"]),
            OrNull(row["ca"]),
            [.. row.Several("cas").Select(c => row.Value(CasNumber.Parse(c)))],
            [.. row.Several("ec")],
            [.. row.Several("ci").Select(c => row.Value(ColourIndexNumber.Parse(c)))],
            [.. row.Several("everyday")],
            [.. row.Several("roles").Select(r => Word<IngredientRole>(row, r))],
            row.Several("flags").Aggregate(IngredientFlags.None, (all, f) => all | Word<IngredientFlags>(row, f)),
            row["koh"].Length == 0 ? null : row.Value(SaponificationValue.Parse(row["koh"])),
            Path.GetFileNameWithoutExtension(row.File),
            row.Needed("source"),
            row.Value(BasisText.Parse(row["basis"])));
        if (ingredient.Roles.IsEmpty)
            throw row.Refuse("substances.no-role-given");
        if (ingredient.ColourIndex.Length > 0 && !ingredient.IsColourant)
            throw row.Refuse("substances.colourant-not-flagged");
        return ingredient;
    }

    private static string? OrNull(string text) => text.Length == 0 ? null : text;

    private static T Word<T>(DataRow row, string written) where T : struct, Enum =>
        Words<T>.Known.TryGetValue(written, out var value)
            ? value
            : throw row.Refuse("substances.not-2", ("written", written), ("list", string.Join(", ", Words<T>.Known.Keys)));

    // Made once, not for each row. Numbers would pass Enum.TryParse; only words are the data's.
    private static class Words<T>
        where T : struct, Enum
    {
        public static readonly Dictionary<string, T> Known = Enum.GetNames<T>().Where(n => n != "None")
            .ToDictionary(Hyphened, Enum.Parse<T>);

        private static string Hyphened(string name) =>
            string.Concat(name.Select((c, i) => char.IsUpper(c) && i > 0
                ? $"-{char.ToLowerInvariant(c)}"
                : $"{char.ToLowerInvariant(c)}"));
    }
}
