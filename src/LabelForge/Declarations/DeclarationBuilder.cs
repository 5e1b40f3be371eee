using System.Collections.Immutable;
using LabelForge.Checks;
using LabelForge.Composition;
using LabelForge.Ingredients;
using LabelForge.Markets;
using LabelForge.Measures;
using LabelForge.Recipes;

namespace LabelForge.Declarations;

/// <summary>Makes a market's ingredient declaration of a batch: suppliers' lists merged, ordered by weight, named as the market names them.</summary>
public static class DeclarationBuilder
{
    /// <summary>Makes the declaration for the United States (21 CFR 701.3) or the European Union (Regulation (EC) No 1223/2009, Art. 19(1)(g)).</summary>
    /// <param name="workshop">Where the materials are described.</param>
    /// <param name="batch">What went in.</param>
    /// <param name="kind">The product's kind, which decides the allergens' threshold.</param>
    /// <param name="market">us or eu.</param>
    /// <param name="on">The date to judge by.</param>
    /// <exception cref="InputException">The suppliers' data contradict themselves, or the market is not us or eu.</exception>
    public static Declaration Build(Workshop workshop, BatchFormula batch, ProductKind kind, Market market, DateOnly on)
    {
        if (market is not (Market.Us or Market.Eu))
        {
            throw new InputException(new Problem(null, 0, "A declaration is made for us and eu only, so far.",
                "Write --market us or --market eu; for uk the eu names usually serve, but nothing here has checked that."));
        }
        var dictionary = IngredientDictionary.Shipped;
        var formula = FlatFormula.OfFinished(workshop, batch);
        var proof = BatchComposition.Prove(workshop, batch, dictionary);
        string Name(string key) => NameFor(dictionary.Find(key), key, market);

        var ordered = proof.Ingredients
            .Select(i => new DeclaredIngredient(Name(i.Name), i.Low * 100, i.High * 100, i.Estimate * 100, i.Part))
            .GroupBy(i => i.Name, StringComparer.Ordinal)
            .Select(Together)
            .ToList();
        if (market == Market.Eu)
            AddAllergens(ordered, formula, kind, on, Name);
        return new Declaration(
            MarketText.Of(market),
            "Ingredients:",
            [.. ordered],
            [.. proof.Unproven.Select(u => new UnsettledPair(Name(u.First), Name(u.Second), u.Ask.Sentence))],
            [.. proof.Ingredients.Where(i => dictionary.Find(i.Name) is null).Select(i => RuleBook.Us["ingredients.name-unknown"].Find("ingredients", i.Name))]);
    }

    // Several pigments may share one name, as the iron oxides do in the US: they stand once, with their shares together.
    private static DeclaredIngredient Together(IGrouping<string, DeclaredIngredient> same) => same.First() with
    {
        Low = Math.Min(100, same.Sum(i => i.Low)),
        High = Math.Min(100, same.Sum(i => i.High)),
        Estimate = Math.Min(100, same.Sum(i => i.Estimate)),
    };

    private static string NameFor(Ingredient? entry, string key, Market market) =>
        entry is null ? key : market == Market.Us ? entry.Us : entry.Eu;

    // Allergens above the threshold are named besides the perfume that brings them; they are parts of it, so they add no
    // weight of their own, and below one percent they may stand in any order: after the minor ones, before the colours.
    private static void AddAllergens(List<DeclaredIngredient> ordered, ImmutableArray<FlatShare> formula, ProductKind kind, DateOnly on, Func<string, string> name)
    {
        var threshold = AllergenThreshold.For(kind, on);
        var named = AllergenSum.Of(formula)
            .Where(a => a.High > threshold)
            .Select(a => new DeclaredIngredient(name(a.Name), a.Low, a.High, (a.Low + a.High) / 2, Part.Minor))
            .Where(a => ordered.All(o => o.Name != a.Name))
            .ToArray();
        var firstColour = ordered.FindIndex(o => o.Part == Part.Colour);
        ordered.InsertRange(firstColour < 0 ? ordered.Count : firstColour, named);
    }
}
