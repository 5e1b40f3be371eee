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
    /// <summary>
    /// Makes the declaration for the United States (21 CFR 701.3), the European Union (Regulation (EC) No 1223/2009,
    /// Art. 19(1)(g)), the United Kingdom (the same as retained) or Canada (Cosmetic Regulations, s. 21.2 to 21.4).
    /// </summary>
    /// <param name="workshop">Where the materials are described.</param>
    /// <param name="batch">What went in.</param>
    /// <param name="kind">The product's kind, which decides the allergens' threshold.</param>
    /// <param name="market">The market.</param>
    /// <param name="on">The date to judge by.</param>
    /// <param name="style">The market's own names, or names for one label sold in all four markets.</param>
    /// <exception cref="InputException">The suppliers' data contradict themselves, or the recipe names a colour or an active that cannot be.</exception>
    public static Declaration Build(
        Workshop workshop, BatchFormula batch, ProductKind kind, Market market, DateOnly on, NameStyle style = NameStyle.Market)
    {
        var dictionary = IngredientDictionary.Shipped;
        var formula = FlatFormula.OfFinished(workshop, batch);
        var proof = BatchComposition.Prove(workshop, batch, dictionary);
        var recipe = batch.Recipe;

        var rule = Rule(market, style, kind, on, recipe.OnMarketSince);
        var allergens = AllergenSum.Of(formula);
        var named = AllergenNaming.Named(allergens, rule);
        var names = new LabelNames(market, style, [.. named.Select(a => a.Entry!)]);

        var ordered = proof.Ingredients
            .Select(i => new DeclaredIngredient(names.Of(i.Name), i.Low * 100, i.High * 100, i.Estimate * 100, i.Part))
            .GroupBy(i => i.Name, StringComparer.Ordinal)
            .Select(Together)
            .ToList();
        if (market == Market.Us)
            ActiveIngredients.PutFirst(ordered, [.. ActiveIngredients.Keys(recipe, proof.Ingredients.Select(i => i.Name)).Select(names.Of)]);
        var actives = ordered.Where(o => o.IsActive).Select(o => o.Name).ToHashSet();
        var unsettled = proof.Unproven
            .Select(u => new UnsettledPair(names.Of(u.First), names.Of(u.Second), u.Ask.SentenceWith(names.Of)))
            .Where(u => u.First != u.Second && !actives.Contains(u.First) && !actives.Contains(u.Second))
            .Concat(AllergenNaming.Place(ordered, named))
            .ToImmutableArray();
        var heading = LawBook.Shipped.Get($"ingredients.heading.{MarketText.Of(market)}", on).Word;
        return new Declaration(
            MarketText.Of(market),
            ActiveIngredients.Heading(ordered, heading),
            [.. ordered],
            unsettled,
            [
                .. MayContainColours.Findings(recipe, kind, market, style, on),
                .. proof.Ingredients.Where(i => dictionary.Find(NanoName.Bare(i.Name)) is null).Select(i => NameUnknown(i.Name, market)),
                .. ActiveIngredients.Findings(recipe, market, ordered),
                .. AllergenNaming.Findings(allergens, named, rule),
                .. SoapCheck.Find(workshop, batch),
            ])
        {
            MayContain = [.. MayContainColours.Keys(recipe).Select(names.Of).Where(c => ordered.TrueForAll(o => o.Name != c)).Distinct()],
            MayContainWords = MayContainColours.Words(market, style),
        };
    }

    // One label for several markets names whatever any of them wants named.
    private static AllergenRule? Rule(Market market, NameStyle style, ProductKind kind, DateOnly on, DateOnly? since) => style == NameStyle.Dual
        ? Enum.GetValues<Market>().Select(m => AllergenRule.For(m, kind, on, since)).OfType<AllergenRule>().Aggregate((a, b) => a.Stricter(b))
        : AllergenRule.For(market, kind, on, since);

    // Several pigments may share one name, as the iron oxides do in the US: they stand once, with their shares together.
    private static DeclaredIngredient Together(IGrouping<string, DeclaredIngredient> same) => same.First() with
    {
        Low = Math.Min(100, same.Sum(i => i.Low)),
        High = Math.Min(100, same.Sum(i => i.High)),
        Estimate = Math.Min(100, same.Sum(i => i.Estimate)),
    };

    private static Finding NameUnknown(string name, Market market) => RuleBook.Declaration["ingredients.name-unknown"].Find("ingredients", name, market switch
    {
        Market.Us => "21 CFR 701.3(c)",
        Market.Eu => "Regulation (EC) No 1223/2009, Articles 19(6) and 33",
        Market.Uk => "Regulation (EC) No 1223/2009 as retained, Articles 19(6) and 33",
        _ => "Cosmetic Regulations, C.R.C., c. 869, s. 21.2(1)",
    });
}
