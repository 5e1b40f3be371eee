using LabelForge.Checks;
using LabelForge.Composition;

namespace LabelForge.Declarations;

/// <summary>Says of a list as a whole that places in it rest on guesses, so that nobody prints it taking it for proved.</summary>
internal static class GuessCheck
{
    private const int MostNamed = 6;

    /// <summary>Names each material whose shares the law's limits bound, with these.</summary>
    public static IEnumerable<Finding> Trusted(FinishedProduct product) =>
        from used in product.Materials
        where !used.Material.LegalBounds.IsEmpty
        let bounds = used.Material.LegalBounds
        select product.Workshop.Markets.Every.Rules["ingredients.legal-limits"].Find("ingredients", used.Material.Name,
            string.Join("; ",
                bounds.Select(b => string.Create(CultureInfo.InvariantCulture, $"{b.Constituent} at most {b.Most.Percent:0.####} %"))),
            string.Join("; ", bounds.Select(b => b.Source).Distinct()));

    /// <summary>Nothing where every place is proved or rests on published levels.</summary>
    public static IEnumerable<Finding> Find(IReadOnlyList<DeclaredIngredient> ordered, EveryMarket every)
    {
        var guessed = ordered.Where(o => o.Placed == Placed.Guess).Select(o => o.Name).ToArray();
        if (guessed.Length == 0)
            yield break;
        var usual = ordered.Count(o => o.Placed == Placed.Usual);
        yield return every.Rules["ingredients.guessed"].Find("ingredients",
            guessed.Length, ordered.Count,
            string.Join(", ", guessed.Take(MostNamed)) + (guessed.Length > MostNamed ? $" and {guessed.Length - MostNamed} more" : ""),
            usual == 0 ? "" : $" {usual} more rest{(usual == 1 ? "s" : "")} on published usual levels.");
    }
}
