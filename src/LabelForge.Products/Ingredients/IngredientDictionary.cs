using System.Collections.Immutable;
using LabelForge.Measures;
using LabelForge.Recipes.Files;

namespace LabelForge.Ingredients;

/// <summary>
/// The ingredients known, found by any of their names. No name means two ingredients, save that colourants may share
/// a label name (Iron Oxides are red, yellow and black; CI 15850 is Red 6 and Red 7): there the first row answers.
/// </summary>
public sealed class IngredientDictionary
{
    private static readonly Lazy<IngredientDictionary> LazyShipped = new(() => Read(DataTable.Shipped("ingredients/dictionary/")));
    private readonly Dictionary<string, Ingredient> byName = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Ingredient> byBareName = new(StringComparer.Ordinal);

    private IngredientDictionary(ImmutableArray<Ingredient> all) => Entries = all;

    /// <summary>The dictionary that ships with LabelForge; read when first asked for.</summary>
    public static IngredientDictionary Shipped => LazyShipped.Value;

    /// <summary>Every ingredient, by file and row.</summary>
    public ImmutableArray<Ingredient> Entries { get; }

    /// <summary>Reads a dictionary from its files.</summary>
    /// <exception cref="InputException">A row cannot be used, or a name means two ingredients.</exception>
    public static IngredientDictionary Read(IEnumerable<DataTable> files)
    {
        var rows = new List<(Ingredient Ingredient, DataRow Row)>();
        foreach (var table in files)
            rows.AddRange(IngredientFile.Read(table));
        var dictionary = new IngredientDictionary([.. rows.Select(r => r.Ingredient)]);
        foreach (var (ingredient, row) in rows)
            dictionary.Add(ingredient, row);
        return dictionary;
    }

    /// <summary>
    /// The ingredient of this name, or null. Letter case aside it may be any of its names, the Latin name with or without
    /// the common name in parentheses, or two names of the same thing: <c>Water (Aqua)</c>, <c>Aqua/Water/Eau</c>.
    /// Where the parts of such a pair mean different things it is null: that is for a person to settle.
    /// </summary>
    public Ingredient? Find(string name)
    {
        if (byName.TryGetValue(NameText.Plain(name), out var exact))
            return exact;
        var parts = NameText.Parts(name).ToArray();
        // In a pair parted by a stroke each side is a whole name: Citrus Tangerina Peel Oil / Citrus Reticulata (Tangerine) Peel Oil.
        var pair = name.Contains('/', StringComparison.Ordinal);
        var known = parts.Select(p => byName.GetValueOrDefault(p) ?? (pair ? byBareName.GetValueOrDefault(p) : null)).OfType<Ingredient>().ToArray();
        if (known.Length > 1)
            return Agreed(known, parts);
        // Of one known part the others must be a common name inside a botanical one, not a second substance beside it.
        return name.AsSpan().IndexOfAny('(', '[') > 0 ? BareOrNull(name) : byBareName.GetValueOrDefault(NameText.Plain(name));
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
                .Select(n => (n.Value, Distance: Spelling.DistanceWithin(farthest, plain, n.Key)))
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
        return byName.GetValueOrDefault(bare) ?? byBareName.GetValueOrDefault(bare);
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

    private void Add(Ingredient ingredient, DataRow row)
    {
        foreach (var name in ingredient.Names)
            Enter(byName, NameText.Plain(name), ingredient, row);
        var bare = NameText.WithoutParentheses(ingredient.Us);
        if (!byName.ContainsKey(bare))
            Enter(byBareName, bare, ingredient, row);
    }

    private static void Enter(Dictionary<string, Ingredient> index, string name, Ingredient ingredient, DataRow row)
    {
        if (index.TryAdd(name, ingredient))
            return;
        var other = index[name];
        if (ReferenceEquals(other, ingredient) || (other.IsColourant && ingredient.IsColourant))
            return;
        throw row.Refuse($"the name \"{name}\" already means {other.Us} in {other.Group}.", "Give it to one of the two.");
    }
}
