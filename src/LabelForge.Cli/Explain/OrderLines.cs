using LabelForge.Composition;

namespace LabelForge.Cli.Explain;

/// <summary>What is proved of the order, with the reason for each step.</summary>
internal static class OrderLines
{
    public static IEnumerable<string> Of(Explanation e, int width)
    {
        var shares = e.Proof.Ingredients;
        var mains = shares.Count(i => i.Part == Part.Main);
        yield return "WHAT IS PROVED OF THE ORDER";
        foreach (var line in Page.Wrap(Summary(e, mains), width))
            yield return line;
        for (var at = 0; at + 1 < mains; at++)
        {
            foreach (var line in Page.Wrap($"{at + 1} before {at + 2}: {Step(e, at)}", width, 2, 6))
                yield return line;
        }
        foreach (var pair in e.Proof.Unproven.Where(u => Place(e, u.Second) != Place(e, u.First) + 1))
        {
            foreach (var line in Page.Wrap(
                $"{Place(e, pair.First) + 1} before {Place(e, pair.Second) + 1}: {NotSettled(e, Place(e, pair.First), Place(e, pair.Second))}", width, 2, 6))
                yield return line;
        }
    }

    private static string Summary(Explanation e, int mains)
    {
        var pairs = Enumerable.Range(0, mains).SelectMany(i => Enumerable.Range(i + 1, mains - i - 1).Select(j => e.Proof.Pair(i, j)))
            .ToArray();
        var (forced, free, open) = (pairs.Count(p => p == PairOrder.FirstForced), pairs.Count(p => p == PairOrder.SafeBothWays),
            pairs.Count(p => p == PairOrder.Unproven));
        var verdict = open == 0
            ? "The whole order is proved from what the suppliers say."
            : "Where the suppliers' figures do not settle a pair, the best estimate decides, until you ask.";
        return mains < 2
            ? $"Fewer than two ingredients can exceed 1 %: there is no order among the main ones to prove. {verdict}"
            : $"Among the {mains} main ingredients there are {pairs.Length} pairs: {forced} forced (the other order would be wrong for "
                + $"some composition), {free} free (either order will do), {open} not settled. {verdict} A pair counts as proved only "
                + $"where no composition that all the lists allow has the later one over the earlier and over 1 %. Neighbours, "
                + $"with the reason:";
    }

    private static string Step(Explanation e, int at) => e.Proof.Pair(at, at + 1) switch
    {
        PairOrder.FirstForced => $"forced. {Reason(e, at, at + 1)}",
        PairOrder.SafeBothWays => $"free, either order will do. {Reason(e, at, at + 1)}",
        // Cannot be, since forced pairs stand in their order; told all the same if it ever were.
        PairOrder.SecondForced => "WRONG WAY ROUND.",
        _ => NotSettled(e, at, at + 1),
    };

    private static string NotSettled(Explanation e, int first, int second)
    {
        var (a, b) = (e.Proof.Ingredients[first], e.Proof.Ingredients[second]);
        return $"NOT SETTLED. {a.Name} can be {Page.Percents(a.Low * 100, a.High * 100)}, {b.Name} {Page.Percents(b.Low * 100, b.High * 100)}; some composition breaks each order. By estimate {Page.Percent(a.Estimate * 100)} and {Page.Percent(b.Estimate * 100)} %.";
    }

    private static string Reason(Explanation e, int first, int second)
    {
        var (a, b) = (e.Proof.Ingredients[first], e.Proof.Ingredients[second]);
        var from = e.Accounts[b.Name].Sources;
        return PairReasons.Of(a, b, e.Accounts[a.Name], e.Accounts[b.Name]) switch
        {
            PairReason.OnePercent => $"{b.Name} cannot exceed 1 %.",
            PairReason.Bounds => $"{a.Name} is at least {Page.Percent(a.Low * 100)} %, {b.Name} at most {Page.Percent(b.High * 100)} %.",
            PairReason.SameLists =>
                $"{string.Join(" and ", from.Select(s => s.Material))} {(from.Length == 1 ? "lists" : "list")} {a.Name} before {b.Name}{(from.Any(s => s.Listed == ListedOrder.Label) ? " (out of order only at 1 % of it and below)" : "")}.",
            _ =>
                $"Their ranges overlap, but what raises {b.Name} raises {a.Name} too: at the worst, material "
                    + $"by material, {b.Name} still does not pass both {a.Name} and 1 %.",
        };
    }

    private static int Place(Explanation e, string name) =>
        e.Proof.Ingredients.Select((i, at) => (i.Name, at)).First(i => i.Name == name).at;
}
