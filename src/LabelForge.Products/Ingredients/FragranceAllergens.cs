namespace LabelForge.Ingredients;

/// <summary>The fragrance allergens of Annex III to Regulation (EC) No 1223/2009, found by any name that certificates give them.</summary>
public sealed class FragranceAllergens
{
    private static readonly string[] Heading = ["name", "members", "cas", "list", "reference", "source", "basis", "read"];

    private readonly Dictionary<string, FragranceAllergen> byName = new(StringComparer.Ordinal);
    private readonly IngredientDictionary dictionary;

    private FragranceAllergens(ImmutableArray<FragranceAllergen> all, IngredientDictionary dictionary) =>
        (All, this.dictionary) = (all, dictionary);

    /// <summary>Every entry, in the order of Annex III.</summary>
    public ImmutableArray<FragranceAllergen> All { get; }

    /// <summary>Reads the table.</summary>
    /// <param name="dictionary">The dictionary whose everyday names count as names of the entries.</param>
    /// <exception cref="InputException">A row cannot be used, or a name counts towards two entries.</exception>
    public static FragranceAllergens Read(DataTable table, IngredientDictionary dictionary)
    {
        var rows = table.Rows(Heading).Select(r => (Allergen: Of(r), Row: r)).ToArray();
        var allergens = new FragranceAllergens([.. rows.Select(r => r.Allergen)], dictionary);
        foreach (var (allergen, row) in rows)
        {
            foreach (var name in allergen.Names)
            {
                if (!allergens.byName.TryAdd(NameText.Plain(name), allergen))
                    throw row.Refuse("substances.name-twice", ("name", name));
            }
        }
        return allergens;
    }

    /// <summary>
    /// The entry that a name counts towards, or null. The name may be the entry's own, a member's, or any name that the
    /// dictionary knows for one of them: <c>d-limonene</c>, <c>lavender oil</c>.
    /// </summary>
    public FragranceAllergen? Find(string name) =>
        byName.GetValueOrDefault(NameText.Plain(name)) is { } own ? own : dictionary.Find(name) is { } entry ? Find(entry) : null;

    /// <summary>The entry that an ingredient counts towards, or null.</summary>
    public FragranceAllergen? Find(Ingredient ingredient) => ingredient.Names
        .Append(NameText.WithoutParentheses(ingredient.Us))
        .Select(n => byName.GetValueOrDefault(NameText.Plain(n)))
        .FirstOrDefault(a => a is not null);

    private static FragranceAllergen Of(DataRow row) => new(
        row.Needed("name"),
        [.. row.Several("members")],
        [.. row.Several("cas").Select(c => row.Value(CasNumber.Parse(c)))],
        row["list"] switch
        {
            "short" => AllergenList.Short,
            "extended" => AllergenList.Extended,
            var other => throw row.Refuse("substances.not-a-list", ("other", other)),
        },
        row.Needed("reference"),
        row.Needed("source"),
        row.Basis().Basis);
}
