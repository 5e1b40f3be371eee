namespace LabelForge.Composition;

/// <summary>Proves what suppliers' lists prove about the order of a product's ingredients.</summary>
public static class Prover
{
    /// <summary>Merges the materials' lists in descending order of weight and says what of that order is proved.</summary>
    /// <param name="parts">The materials; their shares of the charged batch sum to 1.</param>
    /// <param name="lines">Where the order by weight ends.</param>
    /// <param name="losses">What left the batch, such as water boiled off; none if null.</param>
    /// <param name="besides">What is named besides the material that holds it; none if null.</param>
    /// <exception cref="InputException">No composition meets the data; the message names the material and the constituents.</exception>
    /// <exception cref="ArgumentException">The shares of the materials do not sum to 1.</exception>
    public static CompositionProof Prove(
        IReadOnlyList<MaterialPart> parts, OnePercentLines lines, IReadOnlyList<Adjustment>? losses = null,
        IReadOnlyList<NamedBesides>? besides = null)
    {
        var product = new ProductModel(parts, lines, losses ?? [], besides ?? []);
        var order = new SafeOrder(product);
        int[] present = [.. Enumerable.Range(0, product.Ingredients.Length)
            .Where(i => product.High(product.Ingredients[i]) > CompositionLimits.Tolerance)];
        var ingredients = present.Select(i => product.Ingredients[i]).ToArray();
        var shares = ingredients.Select(i => Share(product, i)).ToArray();
        var count = shares.Length;
        var safe = new bool[count, count];
        for (var i = 0; i < count; i++)
        {
            for (var j = 0; j < count; j++)
                safe[i, j] = i == j || order.MayPrecede(present[i], present[j]);
        }
        int[] label =
        [
            .. Mains(shares, safe),
            .. Rest(shares, Part.Minor).Where(i => !ingredients[i].Sources.IsEmpty),
            // What is only named besides stands together, in the order it was given.
            .. Enumerable.Range(0, count).Where(i => shares[i].Part == Part.Minor && ingredients[i].Sources.IsEmpty),
            .. Rest(shares, Part.Colour),
        ];
        var unproven = ImmutableArray.CreateBuilder<UnprovenPair>();
        var inOrder = new bool[count, count];
        for (var a = 0; a < count; a++)
        {
            for (var b = 0; b < count; b++)
            {
                inOrder[a, b] = safe[label[a], label[b]];
                if (a < b && !inOrder[a, b])
                {
                    var (first, second) = (ingredients[label[a]], ingredients[label[b]]);
                    unproven.Add(new UnprovenPair(first.Name, second.Name, Question.About(product, first, second))
                    {
                        Rests = product.IsUsual(first) && product.IsUsual(second) ? Placed.Usual : Placed.Guess,
                    });
                }
            }
        }
        return new CompositionProof([.. label.Select(i => shares[i])], inOrder, unproven.ToImmutable())
        {
            Model = product,
            Absent = [.. product.Ingredients.Except(ingredients).Select(i => new AbsentIngredient(i.Name, i.Lost > 0))],
        };
    }

    private static IngredientShare Share(ProductModel product, ProductIngredient ingredient)
    {
        var high = product.High(ingredient);
        var part = ingredient.IsColour ? Part.Colour : OnePercentLine.IsExceeded(product, ingredient) ? Part.Main : Part.Minor;
        return new IngredientShare(ingredient.Name, product.Low(ingredient), high, product.Estimate(ingredient), part)
        {
            IsTight = product.IsTight(ingredient),
        };
    }

    private static IEnumerable<int> Rest(IngredientShare[] shares, Part part) =>
        Enumerable.Range(0, shares.Length).Where(i => shares[i].Part == part).OrderByDescending(i => shares[i].Estimate);

    // Forced pairs never run in a circle: if i must precede j, some composition has i over 1 % and over j, and there every
    // ingredient that may precede i weighs at least as much, so j, which weighs less, cannot be forced before it in turn.
    private static IEnumerable<int> Mains(IngredientShare[] shares, bool[,] safe)
    {
        var waiting = Rest(shares, Part.Main).ToList();
        while (waiting.Count > 0)
        {
            // Rounding could in principle close a circle; then the greatest estimate goes first and the pair is reported.
            var at = Math.Max(0, waiting.FindIndex(i => !waiting.Exists(other => other != i && safe[other, i] && !safe[i, other])));
            yield return waiting[at];
            waiting.RemoveAt(at);
        }
    }
}
