using LabelForge.Composition;

namespace LabelForge.Cli.Explain;

/// <summary>Where each ingredient's range comes from: material by material, to be followed with a pocket calculator.</summary>
internal static class SourceLines
{
    private const string NotTight =
        "Not tight: what was lost came from several materials, and each is read as if the others had given all they could. "
        + "The truth is inside this range and may be held to less of it.";

    public static IEnumerable<string> Of(Explanation e, int width)
    {
        yield return "WHERE EACH RANGE COMES FROM";
        foreach (var line in Page.Wrap(
            "A material's share of the batch, times the least and the most that its whole list allows of the ingredient; the products "
                + "are added up.", width))
            yield return line;
        for (var at = 0; at < e.Proof.Ingredients.Length; at++)
        {
            var i = e.Proof.Ingredients[at];
            var account = e.Accounts[i.Name];
            foreach (var line in Page.Wrap(
                $"{at + 1}. {i.Name}{Else(account)}: {Page.Percents(i.Low * 100, i.High * 100)}{(i.IsTight ? "" : ", not tight")}", width,
                2, 5))
                yield return line;
            foreach (var line in account.Sources.Select(Line).Concat(account.Besides.Select(Besides))
                .SelectMany(l => Page.Wrap(l, width, 5, 7)))
                yield return line;
            if (e.Proof.PlacedOf(i.Name) != Placed.Proved)
            {
                foreach (var line in account.Sources.Where(s => s.Low < s.High && s.Usual is not null)
                    .SelectMany(s => Page.Wrap(Usual(s), width, 5, 7)))
                    yield return line;
            }
            if (!i.IsTight)
            {
                foreach (var line in Page.Wrap(NotTight, width, 5, 7))
                    yield return line;
            }
            if (account.Left != 1)
            {
                foreach (var line in Page.Wrap(
                    $"less {Page.Percent(account.Lost * 100)} % that left the "
                        + $"batch, over the {Page.Percent(account.Left * 100)} % that is left of it", width, 5, 7))
                    yield return line;
            }
        }
        foreach (var absent in e.Proof.Absent)
        {
            foreach (var line in Page.Wrap(
                $"{absent.Name} is left out: {(absent.IsLost ? "all of it left the batch." : "what the suppliers give leaves room for none of it.")}", width, 2, 5))
                yield return line;
            foreach (var line in e.Accounts[absent.Name].Sources.SelectMany(s => Page.Wrap(Line(s), width, 5, 7)))
                yield return line;
        }
    }

    // The substances behind a name, where they are called otherwise.
    private static string Else(IngredientAccount account)
    {
        string[] names = [.. account.Sources.SelectMany(s => s.Substances).Distinct()];
        return names.Length == 0 || names is [var one] && one == account.Ingredient ? "" : $" ({string.Join(" and ", names)})";
    }

    private static string Besides(NamedBesides b) =>
        $"{b.Material}: {Page.Percent(b.ShareOfProduct * 100)} % of the batch x {Page.Percents(b.Low * 100, b.High * 100)} of it = {Page.Percents(b.ShareOfProduct * b.Low * 100, b.ShareOfProduct * b.High * 100)}  (a part of it; counts for the place, adds no weight)";

    private static string Line(IngredientSource s)
    {
        var (low, high) = (s.ShareOfBatch * s.Low * 100, s.ShareOfBatch * s.High * 100);
        var said = s.Said == ShareRange.Unknown ? "no figure given" : $"given as {MaterialDraft.Share(s.Said)}";
        var place = s.Length == 1 ? "all of it"
            : s.Substances.Length > 1 ? $"{string.Join(" and ", s.Substances)} together, of {s.Length} listed{Order(s.Listed)}"
            : $"{said}, place {s.Place} of {s.Length}{Order(s.Listed)}";
        return $"{s.Material}: {Page.Percent(s.ShareOfBatch * 100)} % of the batch x {Page.Percents(s.Low * 100, s.High * 100)} of it = {Page.Percents(low, high)}  ({place})";
    }

    // A figure by which only the estimate goes; nothing is proved by it.
    private static string Usual(IngredientSource s) => s.Usual is { IsPublished: true } usual
        ? $"estimated by usual levels: {Page.Percent((decimal)usual.Fraction * 100)} % of {s.Material}. Published: {string.Join("; ", usual.Sources)}"
        : $"a guess, since no level of it is published here: by its like and its place in "
            + $"the list about {Page.Percent((decimal)s.Usual!.Fraction * 100)} % of {s.Material}";

    private static string Order(ListedOrder listed) => listed switch
    {
        ListedOrder.Strict => " in descending order",
        ListedOrder.Label => " in label order",
        _ => " in no order",
    };
}
