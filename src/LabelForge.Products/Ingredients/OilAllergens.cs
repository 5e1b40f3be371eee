namespace LabelForge.Ingredients;

/// <summary>How well it is known how much of an allergen an essential oil holds.</summary>
public enum OilFigure
{
    /// <summary>A range that a standard, a pharmacopoeia or the literature gives for such oils.</summary>
    Range,

    /// <summary>What single analyses found; another oil of the kind may hold more or less.</summary>
    Seen,

    /// <summary>It occurs; no figure was read.</summary>
    Occurs,
}

/// <summary>An allergen that oils of a kind are known to hold. What a certificate says of one oil goes before it.</summary>
/// <param name="Allergen">The allergen.</param>
/// <param name="Low">The least that is reported, mass percent of the oil; null where no figure was read.</param>
/// <param name="High">The most that is reported; null where no figure was read.</param>
/// <param name="Figure">How well it is known.</param>
/// <param name="Source">Where it was read.</param>
/// <param name="Basis">Whether the source itself was read, or an account of it.</param>
public sealed record OilAllergen(FragranceAllergen Allergen, decimal? Low, decimal? High, OilFigure Figure, string Source, Basis Basis)
{
    /// <summary>The most that an oil of the kind may hold as far as is known, as a fraction; all of it where no figure was read.</summary>
    public decimal Most => (High ?? 100) / 100;

    /// <summary>How much, for a sentence: <c>20 to 45 %</c>, <c>6.8 % seen</c>, <c>no figure held</c>.</summary>
    public string Amount => (Figure, Low, High) switch
    {
        (OilFigure.Occurs, _, _) => "no figure held",
        (OilFigure.Seen, { } low, { } high) => low == high ? $"{Percent(low)} % seen" : $"{Percent(low)} to {Percent(high)} % seen",
        (_, 0, { } high) => $"up to {Percent(high)} %",
        (_, { } low, { } high) => $"{Percent(low)} to {Percent(high)} %",
        _ => "no figure held",
    };

    private static string Percent(decimal percent) => percent.ToString("0.##", CultureInfo.InvariantCulture);
}

/// <summary>
/// The fragrance allergens that essential oils are known to hold: for asking, and for saying what may be there. An allergen
/// that is not in the table is not shown to be absent from an oil.
/// </summary>
public sealed class OilAllergens
{
    private static readonly string[] Heading = ["oils", "allergen", "low", "high", "kind", "source", "basis", "read"];

    private readonly ILookup<string, OilAllergen> byOil;

    private OilAllergens(IEnumerable<(string Oil, OilAllergen Allergen)> rows) =>
        byOil = rows.ToLookup(r => r.Oil, r => r.Allergen, StringComparer.Ordinal);

    /// <summary>The keys of the oils that it knows.</summary>
    public IEnumerable<string> Oils => byOil.Select(g => g.Key);

    /// <summary>What oils of this kind are known to hold, the most first; empty where nothing is known.</summary>
    /// <param name="oil">The ingredient.</param>
    public ImmutableArray<OilAllergen> Of(Ingredient oil) => [.. byOil[oil.Key].OrderByDescending(a => a.High ?? -1)];

    /// <summary>Whether an ingredient is an oil or an extract taken for its scent, so that it
    /// brings allergens, known here or not.</summary>
    public bool IsScentOil(Ingredient ingredient) =>
        ingredient.Roles.Contains(IngredientRole.EssentialOil) || byOil.Contains(ingredient.Key);

    /// <summary>Reads the table.</summary>
    /// <exception cref="InputException">A row cannot be used: an oil or an allergen that is not known, figures that are none.</exception>
    public static OilAllergens Read(DataTable table, IngredientDictionary dictionary, FragranceAllergens allergens) =>
        new(table.Rows(Heading)
            .SelectMany(row => Of(row, allergens) is var allergen
                ? row.Several("oils").Select(o => (Key(o, row, dictionary), allergen))
                : []));

    private static string Key(string oil, DataRow row, IngredientDictionary dictionary) =>
        dictionary.Find(oil)?.Key ?? throw row.Refuse("substances.not-dictionary", ("oil", oil));

    private static OilAllergen Of(DataRow row, FragranceAllergens allergens)
    {
        var name = row.Needed("allergen");
        var allergen = allergens.Find(name) ?? throw row.Refuse("substances.no-fragrance-allergen", ("name", name));
        var (low, high) = (Percent(row, "low"), Percent(row, "high"));
        var figure = Enum.TryParse<OilFigure>(row["kind"], ignoreCase: true, out var known)
            ? known
            : throw row.Refuse("substances.no-kind-figure", ("kind", row["kind"]));
        if (figure == OilFigure.Occurs != (high is null) || low > high || low is null != high is null)
            throw row.Refuse("substances.figures-of-another-kind");
        return new(allergen, low, high, figure, row.Needed("source"), row.Basis().Basis);
    }

    private static decimal? Percent(DataRow row, string column) => row[column].Length == 0 ? null
        : PlainFigure.Read(row[column]) is <= 100 and var percent
            ? percent
            : throw row.Refuse("substances.not-a-percent-2", ("row", row[column]));
}
