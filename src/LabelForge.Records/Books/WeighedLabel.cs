using LabelForge.Declarations;

namespace LabelForge.Records.Books;

/// <summary>What the label of a lot must say by what was really weighed, beside what the recipe says.</summary>
/// <param name="Workshop">The workshop with the materials as their files stood when the batch began.</param>
/// <param name="Formula">What was really weighed; a material not yet weighed counts as planned.</param>
/// <param name="Weighed">The declaration of what was really weighed.</param>
/// <param name="Planned">The declaration of the batch as it was begun.</param>
/// <param name="Changes">What differs, one sentence each; empty where the label holds.</param>
public sealed record WeighedLabel(Workshop Workshop, BatchFormula Formula, Declaration Weighed, Declaration Planned,
    IReadOnlyList<string> Changes)
{
    /// <summary>Binds a label to what was weighed.</summary>
    /// <param name="workshop">The workshop as it stands today.</param>
    /// <param name="recipe">The recipe as it stands today: its words stand on the label.</param>
    /// <param name="market">The market of the label.</param>
    /// <param name="on">The day to judge by.</param>
    public static WeighedLabel Of(Workshop workshop, Recipe recipe, IBooks books, Batch batch, Market market, DateOnly on)
    {
        var frozen = FrozenRecipe.FromJson(batch.Frozen);
        if (recipe.Id != batch.Recipe)
            throw new InputException("lot.of-another", ("lot", batch.Lot), ("product", batch.Product), ("recipe", batch.Recipe),
                ("recipe-2", recipe.Id));
        if (frozen.Variant is { } variant && !recipe.Variants.IsEmpty)
            recipe = recipe.Variant(variant);
        // A new name for the same product is no mistake; the name of another variant is.
        if (recipe.Name != batch.Product && (frozen.Variant is not null || frozen.HasVariant(recipe.Name)))
            throw new InputException("lot.of-another-product", ("lot", batch.Lot), ("product", batch.Product),
                ("recipe", recipe.Name), ("value", (frozen.Variant is { } own ? $"\"{batch.Recipe}/{own}\"" : batch.Recipe)));
        var stood = frozen.AsItStood(workshop);
        var kind = ProductKindOf.Recipe(recipe);
        var lines = Production.Compare(books, batch);
        var closing = books.ClosingOf(batch);
        var pieces = closing is { Made: > 0 } ? closing.Made : batch.PiecesPlanned;
        var plan = BatchSize.Of(stood, recipe, lines.Select(l => (l.Line.Material, l.Line.Grams)), batch.PiecesPlanned);
        var weighedIn = BatchSize.Of(stood, recipe, lines.Select(l => (l.Line.Material, l.Weighed > 0 ? l.Weighed : l.Line.Grams)),
            pieces);
        var real = closing?.YieldGrams is { } grams ? CameOut(stood, weighedIn, Mass.FromGrams(grams)) : weighedIn;
        var planned = DeclarationBuilder.Build(stood, plan, kind, market, on);
        var weighed = DeclarationBuilder.Build(stood, real, kind, market, on);
        return new WeighedLabel(stood, real, weighed, planned,
            [.. Differences(planned, weighed), .. Since(workshop, recipe, planned, kind, market, on), .. Net(recipe, real, closing),
                .. NotSaid(recipe, real)]);
    }

    // Where the recipe says that something leaves the batch, the scale says how much left this one. Where it does not, the
    // rest stayed in the pot, which changes the pieces' weight and not what they are made of.
    private static BatchFormula CameOut(Workshop workshop, BatchFormula weighedIn, Mass cameOut)
    {
        var recipe = weighedIn.Recipe with { CameOut = cameOut };
        var gone = weighedIn.Total.Grams - cameOut.Grams;
        if (gone <= 0)
            return BatchFormula.Of(workshop, recipe with { Yield = null, Losses = [] });
        if (recipe.Yield is { } yield)
            recipe = recipe with { Yield = yield with { Mass = cameOut } };
        else if (weighedIn.Losses.Sum(l => l.Mass.Grams) is > 0 and var planned)
            recipe = recipe with
            {
                Losses = [.. weighedIn.Losses
                    .Select(l => new WrittenLoss(new Amount(l.Mass.Grams / planned * gone, AmountUnit.Gram, null), l.Ingredient, l.Line))],
            };
        return BatchFormula.Of(workshop, recipe);
    }

    private static IEnumerable<string> NotSaid(Recipe recipe, BatchFormula real)
    {
        if (recipe.Yield is null && recipe.Losses.IsEmpty && recipe.Net is null && real.Recipe.CameOut is { } cameOut
            && cameOut < real.Total)
        {
            yield return Invariant($"{real.Total.Grams - cameOut.Grams:0.#} g less came out than was weighed in, and the recipe does not say what left: it is taken to have stayed in the pot. Where it was water, write loss: or yield: in the recipe.");
        }
    }

    private static List<string> Differences(Declaration planned, Declaration weighed)
    {
        var (before, after) = (planned.Ingredients.Select(i => i.Name).ToArray(), weighed.Ingredients.Select(i => i.Name).ToArray());
        var changes = new List<string>();
        changes.AddRange(after.Except(before).Select(n => $"{n} must now be declared: more of it was weighed in than planned."));
        changes.AddRange(before.Except(after).Select(n => $"{n} need no longer be declared."));
        if (changes.Count == 0 && !before.SequenceEqual(after))
        {
            var first = Enumerable.Range(0, before.Length).First(i => before[i] != after[i]);
            changes.Add($"The order changed: {after[first]} now stands before {before[first]}.");
        }
        return changes;
    }

    // The files may have changed since: a lot is labelled by what it was made of then.
    private static IEnumerable<string> Since(Workshop workshop, Recipe recipe, Declaration planned, ProductKind kind, Market market,
        DateOnly on)
    {
        Declaration today;
        try
        {
            today = DeclarationBuilder.Build(workshop, BatchFormula.Of(workshop, recipe), kind, market, on);
        }
        catch (InputException)
        {
            // Today's files may be half changed; the lot does not need them.
            yield break;
        }
        if (today.Statement != planned.Statement)
            yield return "The recipe or a material's file has changed since this lot was begun, and today's declaration would be another; "
                + "the lot keeps its own.";
    }

    private static IEnumerable<string> Net(Recipe recipe, BatchFormula real, Closing? closing)
    {
        if (recipe.Net?.Mass is not { } declared || closing is null || closing.Made == 0)
            yield break;
        var each = closing.YieldGrams is { } yield ? yield / closing.Made : real.PerPiece.Grams;
        if (each < declared.Grams)
            yield return Invariant($"The pieces weigh {each:0.#} g on average, less than the {declared.Grams:0.#} g declared: weigh each piece, or declare less.");
    }
}
