using System.Collections.Frozen;

namespace LabelForge.Ingredients.Levels;

/// <summary>What is usually in a product, for choosing where a supplier's paper says nothing. Never a proof.</summary>
/// <remarks>
/// The usual level of an ingredient is a weighted geometric mean of its published figures (those of the same form of
/// product count twice those of another), of what its family usually is (which counts as one figure), and, where the
/// list runs in order, of what usually stands in its place (which counts half of all the rest). Water is what the others
/// leave. A legal maximum caps it. The weights were chosen on the learning half of the published formulas.
/// </remarks>
public sealed class UsualLevels
{
    private const double OtherForm = 0.5;
    private const int MostOfOneFigure = 4;
    private const double MostOfFigures = 6;
    private const double WeightOfPlace = 0.5;
    private const double LeastLeadingWater = 0.2;

    private readonly IngredientDictionary _dictionary;
    private readonly ILookup<string, UseLevel> _levels;
    private readonly ImmutableArray<LevelFamily> _families;
    private readonly FrozenDictionary<(string Family, ProductForm Form), double> _ofFamily;
    private readonly ImmutableArray<(double WaterFirst, double Other)> _ofPlace;
    private readonly FrozenDictionary<string, ProductForm> _products;

    /// <summary>Takes the tables.</summary>
    /// <param name="dictionary">Where names are found.</param>
    /// <param name="levels">Published figures.</param>
    /// <param name="families">The families, in the order they are tried; the last takes what no other does.</param>
    /// <param name="ofFamily">Mass percent by family and form; <see cref="ProductForm.Any"/> for each family.</param>
    /// <param name="ofPlace">Mass percent by place from the first, for lists that lead with water and for others.</param>
    /// <param name="products">The form of each kind of product, by its id.</param>
    internal UsualLevels(
        IngredientDictionary dictionary, IEnumerable<UseLevel> levels, ImmutableArray<LevelFamily> families,
        IReadOnlyDictionary<(string Family, ProductForm Form), double> ofFamily, ImmutableArray<(double WaterFirst, double Other)> ofPlace,
        IReadOnlyDictionary<string, ProductForm> products)
    {
        (_dictionary, _families, _ofPlace) = (dictionary, families, ofPlace);
        (_levels, _ofFamily,
            _products) = (levels.ToLookup(l => l.Ingredient, StringComparer.Ordinal), ofFamily.ToFrozenDictionary(),
                products.ToFrozenDictionary());
    }

    /// <summary>Reads the levels that ship, for the names of a dictionary.</summary>
    internal static UsualLevels Read(IngredientDictionary dictionary) => new(
        dictionary, UseLevel.Read(Table("use-levels")), LevelFamily.Read(Table("level-families")),
        LearnedLevel.ReadFamilies(Table("family-levels")), LearnedLevel.ReadPlaces(Table("place-levels")),
        Products(Table("product-forms")));

    /// <summary>The form of a kind of product; <see cref="ProductForm.Any"/> where the tables have none.</summary>
    public ProductForm FormOf(string product) => _products.GetValueOrDefault(product, ProductForm.Any);

    /// <summary>The published figures of an ingredient, habits before maxima, the form asked for
    /// first; empty where none is held.</summary>
    public ImmutableArray<UseLevel> Published(string name, ProductForm form) => _dictionary.Find(name) is { } known
        ? [.. _levels[known.Us].OrderBy(l => l.IsMaximum).ThenByDescending(l => l.Form == form).ThenByDescending(l => l.Count)]
        : [];

    /// <summary>What is usual of each name of a list, as fractions of what is listed; they need not sum to 1.</summary>
    /// <param name="names">The list.</param>
    /// <param name="form">The form of the product that it is made for.</param>
    /// <param name="inOrder">Whether the list runs from the most to the least, at least down to 1 %.</param>
    public ImmutableArray<double> Of(IReadOnlyList<string> names, ProductForm form, bool inOrder)
    {
        var found = names.Select(_dictionary.Find).ToArray();
        var water = Array.FindIndex(found, i => i?.Us == "Water");
        var usual = new double[names.Count];
        for (var at = 0; at < usual.Length; at++)
            usual[at] = Math.Min(1, One(names[at], found[at], form, inOrder ? Place(at, water == 0) : null) / 100);
        if (water >= 0 && inOrder && usual.Length > 1)
            usual[water] = Math.Max(1 - (usual.Sum() - usual[water]), water == 0 ? LeastLeadingWater : usual[water]);
        return [.. usual];
    }

    /// <summary>The families, in the order they are tried.</summary>
    public ImmutableArray<string> FamilyNames => [.. _families.Select(f => f.Name)];

    /// <summary>The family whose usual level stands in where a name has no figure of its own.</summary>
    public string FamilyOf(string name) => LevelFamily.Of(_families, name, _dictionary.Find(name)).Name;

    private double Place(int at, bool waterFirst)
    {
        var place = _ofPlace[Math.Min(at, _ofPlace.Length - 1)];
        return waterFirst ? place.WaterFirst : place.Other;
    }

    private double One(string name, Ingredient? known, ProductForm form, double? place)
    {
        var family = LevelFamily.Of(_families, name, known).Name;
        var (sum, weight) = (Math.Log(_ofFamily.TryGetValue((family, form), out var own) ? own : _ofFamily[(family, ProductForm.Any)]),
            1.0);
        var most = double.PositiveInfinity;
        if (known is not null)
        {
            var (figures, count) = (0.0, 0.0);
            foreach (var level in _levels[known.Us])
            {
                if (level.IsMaximum)
                {
                    most = double.IsPositiveInfinity(most) ? level.Percent : Math.Max(most, level.Percent);
                    continue;
                }
                var counts = (level.Form == form ? 1 : OtherForm) * Math.Min(level.Count, MostOfOneFigure);
                (figures, count) = (figures + counts * Math.Log(level.Percent), count + counts);
            }
            var scale = count > MostOfFigures ? MostOfFigures / count : 1;
            (sum, weight) = (sum + scale * figures, weight + scale * count);
        }
        var log = sum / weight;
        if (place is { } usual)
            log = (log + WeightOfPlace * Math.Log(usual)) / (1 + WeightOfPlace);
        return Math.Min(Math.Exp(log), most);
    }

    private static DataTable Table(string name) => DataTable.Embedded($"ingredients/tables/{name}.csv").Single();

    private static Dictionary<string, ProductForm> Products(DataTable table) =>
        table.Rows(["form", "products"]).ToArray()
            .SelectMany(r => r.Several("products").Select(p => (Product: p, Form: UseLevel.ReadForm(r))))
            .ToDictionary(p => p.Product, p => p.Form);
}
