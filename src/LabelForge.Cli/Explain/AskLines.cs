using LabelForge.Composition;

namespace LabelForge.Cli.Explain;

/// <summary>What to ask of which supplier, what settles most first.</summary>
internal static class AskLines
{
    public static IEnumerable<string> Of(Explanation e, int width)
    {
        yield return "WHAT TO ASK";
        if (e.Proof.IsProved)
        {
            yield return "  Nothing: the order does not depend on any figure that is missing.";
            yield break;
        }
        foreach (var ask in e.Proof.Unproven.Select(u => u.Ask).Where(a => a.OtherFigure is not null)
            .DistinctBy(a => (a.Material, a.OtherFigure)))
        {
            foreach (var line in Page.Wrap($"The suppliers of {ask.Material}, for {ask.OtherFigure}.", width, 2, 4))
                yield return line;
        }
        foreach (var supplier in e.Proof.Unproven.Where(u => u.Ask.OtherFigure is null).GroupBy(u => u.Ask.Material)
            .OrderByDescending(g => g.Count()))
        {
            foreach (var line in Page.Wrap($"The supplier of {supplier.Key}, for the share in it of:", width, 2))
                yield return line;
            foreach (var figure in supplier.GroupBy(u => u.Ask.Constituent).OrderByDescending(g => g.Count()))
            {
                var (low, high) = Range(e.Accounts[figure.Key], supplier.Key);
                foreach (var line in Page.Wrap($"{figure.Key}, which can be {Page.Percents(low * 100, high * 100)} of it", width, 4, 6))
                    yield return line;
                foreach (var line in figure.OrderByDescending(u => u.Ask.TurnsAt ?? -1)
                    .SelectMany(u => Page.Wrap(Turn(e, u), width, 6, 8)))
                    yield return line;
            }
        }
    }

    private static string Turn(Explanation e, UnprovenPair pair)
    {
        var other = pair.First == pair.Ask.Constituent ? pair.Second : pair.First;
        if (pair.Ask.TurnsAt is not { } turns)
            return $"alone it may not settle whether it stands before {other}: that figure is loose too";
        // The turning share is exact where nothing else in the comparison is loose.
        var asked = e.Accounts[pair.Ask.Constituent];
        var exact = IsExact(e.Accounts[other]) && asked.Sources.Length + asked.Besides.Length == 1;
        return $"above {(exact ? "" : "about ")}{Page.Percent(turns * 100)} %: before {other}; below: after it{(exact ? "" : " (if the rest is as estimated)")}";
    }

    private static bool IsExact(IngredientAccount account) =>
        account.Sources.All(s => s.Low == s.High) && account.Besides.All(b => b.Low == b.High);

    private static (decimal Low, decimal High) Range(IngredientAccount account, string material) => account.Sources
        .Where(s => s.Material == material).Select(s => (s.Low, s.High))
        .Concat(account.Besides.Where(b => b.Material == material).Select(b => (b.Low, b.High)))
        .First();
}
