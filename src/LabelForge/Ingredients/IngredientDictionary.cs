using System.Collections.Immutable;
using LabelForge.Recipes.Files;

namespace LabelForge.Ingredients;

/// <summary>The ingredients that hand makers commonly meet, under all their names. Shipped as data in the folder ingredients.</summary>
public sealed class IngredientDictionary
{
    private static readonly Lazy<IngredientDictionary> Loaded = new(() => new IngredientDictionary(DictionaryFile.ReadShipped()));
    private readonly Dictionary<string, Ingredient> _byName = new(StringComparer.Ordinal);

    /// <summary>A dictionary of these entries; where two share a name, the first has it.</summary>
    public IngredientDictionary(ImmutableArray<Ingredient> entries)
    {
        Entries = entries;
        foreach (var entry in entries)
        {
            foreach (var name in entry.Names)
            {
                _byName.TryAdd(IngredientName.Fold(name), entry);
                _byName.TryAdd(IngredientName.Fold(IngredientName.WithoutParentheses(name)), entry);
            }
        }
    }

    /// <summary>The dictionary that ships with LabelForge.</summary>
    public static IngredientDictionary Shipped => Loaded.Value;

    /// <summary>Every entry.</summary>
    public ImmutableArray<Ingredient> Entries { get; }

    /// <summary>The entry of a name, letter case aside; null where there is none. Never a guess from spelling.</summary>
    /// <remarks>
    /// A name with parentheses is taken whole first, then without them, and then as what stands in them, but only where
    /// both parts mean the same entry or one of them is unknown: "Water (Aqua)", "Butyrospermum Parkii (Shea) Butter".
    /// </remarks>
    public Ingredient? Find(string name)
    {
        if (_byName.TryGetValue(IngredientName.Fold(name), out var whole))
            return whole;
        if (IngredientName.InParentheses(name) is not { } inside)
            return null;
        var outer = _byName.GetValueOrDefault(IngredientName.Fold(IngredientName.WithoutParentheses(name)));
        return outer ?? _byName.GetValueOrDefault(IngredientName.Fold(inside));
    }

    /// <summary>The entries whose names are spelt most like this one, nearest first.</summary>
    public ImmutableArray<Ingredient> Suggest(string name, int most = 3)
    {
        var folded = IngredientName.Fold(name);
        return [.. _byName
            .Select(p => (p.Value, Distance: Spelling.Distance(folded, p.Key)))
            .Where(p => p.Distance <= Math.Max(2, folded.Length / 2))
            .OrderBy(p => p.Distance)
            .Select(p => p.Value)
            .Distinct()
            .Take(most)];
    }
}
