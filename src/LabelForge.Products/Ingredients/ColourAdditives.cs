namespace LabelForge.Ingredients;

/// <summary>The colour additives listed for cosmetics in the United States, found by name or Colour Index number.</summary>
public sealed class ColourAdditives
{
    private static readonly string[] Heading =
        ["name", "other", "ci", "citation", "batch", "eye", "lips", "external", "only", "max", "limits", "limit", "label", "source",
            "basis", "read"];

    private readonly Dictionary<string, ColourAdditive> byName = new(StringComparer.Ordinal);

    private ColourAdditives(ImmutableArray<ColourAdditive> all) => All = all;

    /// <summary>Every colour additive, in the order of the table.</summary>
    public ImmutableArray<ColourAdditive> All { get; }

    /// <summary>Reads the table.</summary>
    /// <exception cref="InputException">A row cannot be used, or a name stands twice.</exception>
    public static ColourAdditives Read(DataTable table)
    {
        var rows = table.Rows(Heading).Select(r => (Additive: Of(r), Row: r)).ToArray();
        var additives = new ColourAdditives([.. rows.Select(r => r.Additive)]);
        foreach (var (additive, row) in rows)
        {
            foreach (var name in additive.OtherNames.Prepend(additive.Name))
            {
                if (!additives.byName.TryAdd(NameText.Plain(name), additive))
                    throw row.Refuse("substances.colour-name-twice", ("name", name));
            }
        }
        return additives;
    }

    /// <summary>The colour additive of this name, or null where it is not listed. A lake is found
    /// under its own name only if the table lists it.</summary>
    public ColourAdditive? Find(string name) =>
        ColourIndexNumber.Parse(name) is { IsValue: true } number
            ? All.FirstOrDefault(a => a.ColourIndex.Contains(number.Value))
            : byName.GetValueOrDefault(NameText.Plain(name));

    /// <summary>The colour additive an ingredient is: by its US name, and a lake by the colour it
    /// is made of; null where it is not listed.</summary>
    public ColourAdditive? Find(Ingredient ingredient)
    {
        const string Lake = " Lake";
        var name = ingredient.Us;
        return Find(name) ?? (name.EndsWith(Lake, StringComparison.Ordinal) ? Find(name[..^Lake.Length]) : null);
    }

    private static ColourAdditive Of(DataRow row) => new(
        row.Needed("name"),
        [.. row.Several("other")],
        [.. row.Several("ci").Select(c => row.Value(ColourIndexNumber.Parse(c)))],
        row.Needed("citation"),
        Either(row, "batch", "certified", "exempt"),
        Either(row, "eye", "yes", "no"),
        Either(row, "lips", "yes", "no"),
        Either(row, "external", "yes", "no"),
        Groups(row, "only"),
        Most(row),
        row["limit"],
        row["label"],
        row.Needed("source"),
        row.Basis().Basis);

    private static ColourLimit? Most(DataRow row) => row["max"].Length == 0
        ? null
        : PlainFigure.Read(row["max"]) is > 0 and <= 100 and var percent
            ? new ColourLimit(Share.FromPercent(percent), Groups(row, "limits"))
            : throw row.Refuse("substances.not-a-percent", ("max", row["max"]));

    private static ImmutableArray<string> Groups(DataRow row, string column) =>
        [.. row.Several(column).Select(g => ProductGroup.IsKnown(g) ? g : throw row.Refuse("substances.no-group", ("g", g)))];

    private static bool Either(DataRow row, string column, string positive, string negative) => row[column] switch
    {
        var text when text == positive => true,
        var text when text == negative => false,
        var text =>
            throw row.Refuse("substances.column", ("text", text), ("column", column), ("positive", positive), ("negative", negative)),
    };
}
