using LabelForge.Checks;
using LabelForge.Ingredients;

namespace LabelForge.Declarations;

/// <summary>
/// Active drug ingredients of a US cosmetic that is also a drug: declared apart and first, with their strength
/// (21 CFR 701.3(d); 21 CFR 201.66(c)(2) and (c)(8)).
/// </summary>
internal static class ActiveIngredients
{
    /// <summary>The dictionary keys of the actives that a recipe names, each of which must be in the batch.</summary>
    /// <exception cref="InputException">One is not in the batch.</exception>
    public static ImmutableArray<string> Keys(Recipe recipe, IEnumerable<string> inBatch, IngredientDictionary dictionary)
    {
        var keys = inBatch.ToHashSet(NameIdentity.Same);
        return [.. recipe.Actives.Select(a =>
        {
            var key = dictionary.Find(a.Name)?.Key ?? a.Name;
            return keys.TryGetValue(key, out var own)
                ? own
                : throw new InputException(recipe.File, a.Line, "declaration.active-not-in-batch", ("a", a.Name));
        })];
    }

    /// <summary>Moves the actives to the front of a US declaration, and marks them.</summary>
    public static void PutFirst(List<DeclaredIngredient> ordered, ImmutableHashSet<string> names)
    {
        var actives = ordered.Where(o => names.Contains(o.Name)).Select(o => o with { IsActive = true }).ToArray();
        ordered.RemoveAll(o => names.Contains(o.Name));
        ordered.InsertRange(0, actives);
    }

    /// <summary>The heading: <c>Active ingredient: Zinc Oxide 10 %. Inactive ingredients:</c>, or
    /// the plain one where nothing is active.</summary>
    public static string Heading(IReadOnlyList<DeclaredIngredient> ordered, string plain)
    {
        var actives = ordered.Where(o => o.IsActive).ToArray();
        return actives.Length == 0
            ? plain + ":"
            : $"Active ingredient{(actives.Length == 1 ? "" : "s")}: {string.Join(", ", actives.Select(Strength))}. Inactive ingredients:";
    }

    /// <summary>What to tell the maker.</summary>
    public static IEnumerable<Finding> Findings(Recipe recipe, RulesOf rules, IEnumerable<DeclaredIngredient> ordered)
    {
        if (recipe.Actives.IsEmpty)
            yield break;
        var every = rules.Market.Book.Every.Rules;
        if (rules.FigureIfAny("ingredients.active-first") is null)
        {
            yield return every["active.other-market"]
                .Find(recipe.File, string.Join(", ", recipe.Actives.Select(a => a.Name)), rules.Market.Id);
            yield break;
        }
        yield return every["active.drug-facts"].Find(recipe.File);
        foreach (var active in ordered.Where(o => o.IsActive && o.Low != o.High))
            yield return every["active.strength-unknown"].Find(recipe.File, active.Name);
    }

    private static string Strength(DeclaredIngredient active) => active.Low == active.High
        ? $"{active.Name} {Math.Round(active.High, 2).ToString("0.##", CultureInfo.InvariantCulture)} %"
        : active.Name;
}
