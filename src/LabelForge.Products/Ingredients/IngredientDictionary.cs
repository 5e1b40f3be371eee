using System.Collections.Concurrent;
using LabelForge.Ingredients.Levels;
using LabelForge.Recipes.Files;

namespace LabelForge.Ingredients;

/// <summary>
/// The ingredients known, found by any of their names. No name means two ingredients, save that colourants may share
/// a label name (Iron Oxides are red, yellow and black; CI 15850 is Red 6 and Red 7): there the first row answers.
/// </summary>
public sealed class IngredientDictionary
{
    private readonly Dictionary<string, IngredientRow> byName = new(StringComparer.Ordinal);
    private readonly Dictionary<string, IngredientRow> byBareName = new(StringComparer.Ordinal);
    private readonly Lazy<ImmutableArray<Ingredient>> entries;
    private readonly Lazy<HashSet<string>> keys;
    private readonly Lazy<FragranceAllergens> allergens;
    private readonly Lazy<OilAllergens> oils;
    private readonly Lazy<UsualLevels> levels;
    private readonly ConcurrentDictionary<Market, SubstanceTable?> substances = new();
    private readonly Lazy<ColourAdditives> colours =
        new(() => ColourAdditives.Read(DataTable.Embedded("ingredients/tables/us-colour-additives").Single()));

    private readonly Lazy<HashSet<string>> ofLaw = new(() => [.. SubstanceTable.NamesOfAll().Select(NameText.Plain)]);

    private IngredientDictionary(List<IngredientRow> rows)
    {
        entries = new(() => [.. rows.Select(r => r.Ingredient)]);
        keys = new(() => rows.Select(r => r.Key).ToHashSet(StringComparer.Ordinal));
        allergens = new(() => FragranceAllergens.Read(DataTable.Embedded("ingredients/tables/eu-allergens").Single(), this));
        oils = new(() => OilAllergens.Read(DataTable.Embedded("ingredients/tables/oil-allergens").Single(), this, Allergens));
        levels = new(() => UsualLevels.Read(this));
        foreach (var row in rows)
            Add(row);
    }

    /// <summary>The dictionary that ships with LabelForge; each row is read when it is found.</summary>
    public static IngredientDictionary Read() => Names(DataTable.Embedded("ingredients/dictionary/"));

    /// <summary>Every ingredient, by file and row.</summary>
    /// <exception cref="InputException">A row cannot be used.</exception>
    public ImmutableArray<Ingredient> Entries => entries.Value;

    /// <summary>The fragrance allergens that are named one by one, under any of these names.</summary>
    public FragranceAllergens Allergens => allergens.Value;

    /// <summary>What scent oils are known to hold of them.</summary>
    public OilAllergens OilAllergens => oils.Value;

    /// <summary>The colour additives listed in the United States.</summary>
    public ColourAdditives Colours => colours.Value;

    /// <summary>What is usually in a product of each ingredient, for choosing where a supplier's paper says nothing.</summary>
    public UsualLevels Levels => levels.Value;

    /// <summary>A market's lists of prohibited, restricted and permitted substances; null where none is held for it.</summary>
    public SubstanceTable? SubstancesIn(Market market) => substances.GetOrAdd(market, m => SubstanceTable.Of(m, this));

    /// <summary>Whether a name stands in a list of the law and not in the dictionary, as of what nobody may use: it is a name all the
    /// same, and a list does not end with it.</summary>
    public bool IsOfLaw(string name) => ofLaw.Value.Contains(NameText.Plain(name));

    /// <summary>Reads a dictionary from its files.</summary>
    /// <exception cref="InputException">A row cannot be used, or a name means two ingredients.</exception>
    public static IngredientDictionary Read(IEnumerable<DataTable> files)
    {
        var dictionary = Names(files);
        _ = dictionary.Entries;
        return dictionary;
    }

    private static IngredientDictionary Names(IEnumerable<DataTable> files)
    {
        var rows = new List<IngredientRow>();
        foreach (var table in files)
            IngredientFile.Read(table, rows);
        return new IngredientDictionary(rows);
    }

    /// <summary>Whether this is the key of an ingredient, in these very letters.</summary>
    internal bool HasKey(string key) => keys.Value.Contains(key);

    /// <summary>
    /// The ingredient of this name, or null. Letter case aside it may be any of its names, the Latin name with or without
    /// the common name in parentheses, or two names of the same thing: <c>Water (Aqua)</c>, <c>Aqua/Water/Eau</c>.
    /// Where the parts of such a pair mean different things it is null: that is for a person to settle.
    /// </summary>
    public Ingredient? Find(string name)
    {
        if (byName.TryGetValue(NameText.Plain(name), out var exact))
            return exact.Ingredient;
        var parts = NameText.Parts(name).ToArray();
        // In a pair parted by a stroke each side is a whole name: Citrus Tangerina Peel Oil / Citrus Reticulata (Tangerine) Peel Oil.
        var pair = name.Contains('/', StringComparison.Ordinal);
        var known = parts.Select(p => byName.GetValueOrDefault(p) ?? (pair ? byBareName.GetValueOrDefault(p) : null))
            .OfType<IngredientRow>().Select(r => r.Ingredient).ToArray();
        if (known.Length > 1)
            return Agreed(known, parts);
        // Of one known part the others must be a common name inside a botanical one, not a second substance beside it.
        return name.AsSpan().IndexOfAny('(', '[') > 0 ? BareOrNull(name) : byBareName.GetValueOrDefault(NameText.Plain(name))?.Ingredient;
    }

    /// <summary>The ingredients whose names are nearest in spelling, nearest first; empty where none is near.</summary>
    /// <param name="name">What was written.</param>
    /// <param name="most">The most to offer; at least 1.</param>
    public ImmutableArray<Ingredient> Suggest(string name, int most = 3)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(most, 1);
        var plain = NameText.Plain(name);
        var farthest = Spelling.Farthest(plain);
        return
        [
            .. byName.Concat(byBareName)
                .Select(n => (Value: n.Value.Ingredient, Distance: Spelling.DistanceWithin(farthest, plain, n.Key)))
                .Where(n => n.Distance is not null)
                .OrderBy(n => n.Distance).ThenBy(n => n.Value.Us, StringComparer.Ordinal)
                .Select(n => n.Value)
                .DistinctBy(i => i.Us)
                .Take(most),
        ];
    }

    private Ingredient? BareOrNull(string name)
    {
        var bare = NameText.WithoutParentheses(name);
        return (byName.GetValueOrDefault(bare) ?? byBareName.GetValueOrDefault(bare))?.Ingredient;
    }

    /// <summary>
    /// One ingredient where all mean the same. Colourants that share a label name or a number: the one whose own name is
    /// written (Yellow 5 Lake (CI 19140)), else the one whose number is (Iron Oxides (CI 77491)).
    /// </summary>
    private static Ingredient? Agreed(Ingredient[] known, string[] parts)
    {
        var first = known[0];
        if (known.All(k => ReferenceEquals(k, first)))
            return first;
        if (!known.All(k => k.IsColourant && (k.Us == first.Us || k.Eu == first.Eu)))
            return null;
        return known.All(k => k.Us == first.Us)
            ? known.FirstOrDefault(k => k.ColourIndex.Length > 0)
            : known.LastOrDefault(k => parts.Contains(NameText.Plain(k.Us)));
    }

    private void Add(IngredientRow row)
    {
        foreach (var name in row.Names)
            Enter(byName, NameText.Plain(name), row);
        var bare = NameText.WithoutParentheses(row.Us);
        if (!byName.ContainsKey(bare))
            Enter(byBareName, bare, row);
    }

    private static void Enter(Dictionary<string, IngredientRow> index, string name, IngredientRow row)
    {
        if (index.TryAdd(name, row))
            return;
        var other = index[name];
        if (ReferenceEquals(other, row) || (other.IsColourant && row.IsColourant))
            return;
        throw row.Row.Refuse("substances.name-taken", ("name", name), ("us", other.Us),
            ("file", Path.GetFileNameWithoutExtension(other.Row.File)));
    }
}
