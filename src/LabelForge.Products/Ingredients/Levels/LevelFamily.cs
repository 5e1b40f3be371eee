namespace LabelForge.Ingredients.Levels;

/// <summary>Ingredients that are usually present in like amounts: chelators, preservatives, gums.</summary>
/// <param name="Name">What it is called in the tables.</param>
/// <param name="Ingredients">US names that belong to it whatever their role.</param>
/// <param name="Words">Parts of a name that tell it; looked for before the role.</param>
/// <param name="Roles">First roles in the dictionary that tell it, as the data writes them.</param>
/// <param name="OtherWords">Parts of a name that tell it where the dictionary does not know the name.</param>
public sealed record LevelFamily(
    string Name, ImmutableArray<string> Ingredients, ImmutableArray<string> Words, ImmutableArray<IngredientRole> Roles,
    ImmutableArray<string> OtherWords)
{
    private static readonly string[] Heading = ["family", "ingredients", "words", "roles", "other words"];

    /// <summary>Reads the table.</summary>
    /// <exception cref="InputException">A row cannot be used.</exception>
    internal static ImmutableArray<LevelFamily> Read(DataTable table) =>
        [.. table.Rows(Heading).ToArray().Select(r => new LevelFamily(
            r.Needed("family"), [.. r.Several("ingredients")], ReadWords(r, "words"),
            [.. r.Several("roles").Select(role => Role(r, role))], ReadWords(r, "other words")))];

    /// <summary>The family of a name: by the name itself, then by its role, then by the words of
    /// an unknown name; the last family takes the rest.</summary>
    internal static LevelFamily Of(ImmutableArray<LevelFamily> families, string name, Ingredient? known)
    {
        var plain = NameText.Plain(name);
        return families.FirstOrDefault(f => (known is not null && f.Ingredients.Contains(known.Us))
            || f.Words.Any(w => plain.Contains(w, StringComparison.Ordinal)))
            ?? (known is not null
                ? families.FirstOrDefault(f => f.Roles.Contains(known.Roles[0]))
                : families.FirstOrDefault(f => f.OtherWords.Any(w => plain.Contains(w, StringComparison.Ordinal))))
            ?? families[^1];
    }

    // A space at the front of a word belongs to it: " gum" is none of "gumby".
    private static ImmutableArray<string> ReadWords(DataRow row, string column) =>
        [.. row[column].Split(';', StringSplitOptions.RemoveEmptyEntries).Select(w => w.TrimEnd())];

    private static IngredientRole Role(DataRow row, string role) =>
        Enum.TryParse<IngredientRole>(role.Replace("-", "", StringComparison.Ordinal), ignoreCase: true, out var known)
            && !char.IsDigit(role[0])
            ? known
            : throw row.Refuse("substances.no-role", ("role", role));
}
