using LabelForge.Checks;
using LabelForge.Composition;
using LabelForge.Ingredients;

namespace LabelForge.Declarations;

/// <summary>Makes a market's ingredient declaration of a batch: suppliers' lists merged, ordered
/// by weight, named as the market names them.</summary>
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
    /// <exception cref="InputException">The suppliers' data contradict themselves, or the recipe
    /// names a colour or an active that cannot be.</exception>
    public static Declaration Build(
        Workshop workshop, BatchFormula batch, ProductKind kind, Market market, DateOnly on, NameStyle style = NameStyle.Market)
    {
        var dictionary = workshop.Dictionary;
        var product = FinishedProduct.Of(workshop, batch);
        var recipe = batch.Recipe;

        var rules = market.On(on);
        var rule = Rule(market, style, kind, on, recipe.OnMarketSince);
        var allergens = product.Allergens;
        var named = AllergenNaming.Named(allergens, rule);
        var names = new LabelNames(dictionary, market, style, rules.FigureIfAny("ingredients.nano") is not null,
            [.. named.Select(a => a.Entry!)]);
        var composition = product.Composition(dictionary, rules, names.Of, named);

        var ordered = composition.Proof.Ingredients
            .Select(i => Declared(i, composition.Accounts[i.Name]) with { Placed = composition.Proof.PlacedOf(i.Name) }).ToList();
        if (rules.FigureIfAny("ingredients.active-first") is not null)
            ActiveIngredients.PutFirst(ordered, [.. ActiveIngredients.Keys(recipe, composition.KeysPresent, dictionary).Select(names.Of)]);
        var actives = ordered.Where(o => o.IsActive).Select(o => o.Name).ToHashSet();
        var unsettled = composition.Proof.Unproven
            .Where(u => !actives.Contains(u.First) && !actives.Contains(u.Second))
            .Select(u => new UnsettledPair(u.First, u.Second, u.Ask.Sentence) { Rests = u.Rests, Wanted = u.Ask })
            .ToImmutableArray();
        var heading = rules.Figure("ingredients.heading").Word;
        return new Declaration(
            market,
            ActiveIngredients.Heading(ordered, heading),
            [.. ordered],
            unsettled,
            [
                .. MayContainColours.Findings(recipe, kind, market, style, on),
                .. composition.KeysPresent.Where(k => dictionary.Find(NanoName.Bare(k)) is null && !IsListedColour(k, rules, dictionary))
                    .Select(k => NameUnknown(k, product, market)),
                .. ActiveIngredients.Findings(recipe, rules, ordered),
                .. AllergenNaming.Findings(allergens, named, rule, ordered, workshop),
                .. OilFindings.Find(product, rule),
                .. SoapCheck.Find(workshop, batch),
                .. ScaleCheck.Find(product, kind, composition, named, rule),
                .. GuessCheck.Find(ordered, workshop.Markets.Every),
                .. GuessCheck.Trusted(product),
            ])
        {
            Composition = composition,
            MayContain = [.. MayContainColours.Keys(recipe, dictionary).Select(names.Of).Where(c => ordered.TrueForAll(o => o.Name != c))
                .Distinct()],
            MayContainWords = MayContainColours.Words(market, style),
        };
    }

    // One label for several markets names whatever any of them wants named.
    private static AllergenRule? Rule(Market market, NameStyle style, ProductKind kind, DateOnly on, DateOnly? since) =>
        style == NameStyle.Dual
            ? market.Book.All.Select(m => AllergenRule.For(m, kind, on, since)).OfType<AllergenRule>().Aggregate((a, b) => a.Stricter(b))
            : AllergenRule.For(market, kind, on, since);

    private static DeclaredIngredient Declared(IngredientShare share, IngredientAccount account)
    {
        var besides = account.Besides.IsEmpty ? null : new PercentRange(
            account.Besides.Sum(b => b.ShareOfProduct * b.Low) / account.Left * 100,
            account.Besides.Sum(b => b.ShareOfProduct * b.High) / account.Left * 100);
        return new DeclaredIngredient(share.Name, share.Low * 100, share.High * 100, share.Estimate * 100, share.Part)
        {
            IsAllergen = account.Sources.IsEmpty,
            Itself = besides is null
                ? new(share.Low * 100, share.High * 100)
                : new(Math.Max(0, share.Low * 100 - besides.Low), Math.Max(0, share.High * 100 - besides.High)),
            Besides = besides,
        };
    }

    // Where colours are listed one by one, the listing's name is the lawful one.
    private static bool IsListedColour(string name, RulesOf rules, IngredientDictionary dictionary) =>
        rules.Rule("ingredients.colour-name/vague") is not null && dictionary.Colours.Find(name) is not null;

    // A name nobody has settled stops the label; one that the maker has settled is told.
    private static Finding NameUnknown(string name, FinishedProduct product, Market market)
    {
        var own = product.Materials
            .Any(f => f.Material.OwnNames.Any(o => NameIdentity.Same.Equals(NanoName.Bare(o), NanoName.Bare(name))));
        return market.Book.Every.Rules[own ? "ingredients.name-unknown/own" : "ingredients.name-unknown"]
            .Find("ingredients", name, market.Ways.IngredientNamesBy);
    }
}
