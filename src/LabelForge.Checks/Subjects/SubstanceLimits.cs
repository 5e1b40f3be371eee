using LabelForge.Declarations;
using LabelForge.Ingredients;

namespace LabelForge.Checks.Subjects;

/// <summary>Checks shares against limits, salts counted as their acids, and entries that limit several substances together.</summary>
internal static class SubstanceLimits
{
    /// <summary>Judges the rows that set a limit.</summary>
    public static void Check(IReadOnlyCollection<Hit> hits, CheckCase label, RecipeFacts facts, HashSet<(string, string)> told)
    {
        var binding = Binding(hits, SubstanceVerdict.AtMost).ToArray();
        var otherwise = Binding(hits, SubstanceVerdict.AtMostIf).Where(i => binding.All(b => b.Share.Name != i.Share.Name));
        foreach (var row in binding.Concat(otherwise).GroupBy(h => h.Rule))
        {
            foreach (var counted in row.Key.Together ? [row.ToArray()] : row.Select(h => new[] { h }))
            {
                Over(row.Key, counted, label, facts, told);
            }
        }
    }

    // Of the rows of one entry, the first that covers the product binds; one that perhaps covers it leaves the next standing.
    private static IEnumerable<Hit> Binding(IEnumerable<Hit> hits, SubstanceVerdict verdict) => hits
        .Where(h => h.Rule.Verdict == verdict && h.Covers != Applies.No)
        .GroupBy(h => (h.Share.Name, h.Rule.List, h.Rule.Reference, Of: string.Join(';', h.Rule.Ingredients)))
        .SelectMany(g =>
        {
            var sure = g.TakeWhile(h => h.Covers != Applies.Yes).Count();
            return g.Take(sure + 1);
        });

    private static void Over(SubstanceRule rule, Hit[] counted, CheckCase label, RecipeFacts facts, HashSet<(string, string)> told)
    {
        var limit = rule.Most!.Value.Percent;
        var low = counted.Sum(h => h.Share.Low.Percent * CountedAs.Least(h.Share.Name, rule.CountedAs));
        var high = counted.Sum(h => h.Share.High.Percent * (CountedAs.Share(h.Share.Name, rule.CountedAs) ?? 1));
        if (high <= limit)
        {
            Weighed(rule, counted, high, label, facts, told);
            return;
        }
        var names = string.Join(" and ", counted.Select(h => h.Share.Name).Distinct());
        var countedAs = rule.CountedAs is { } substance
            && !counted.All(h => string.Equals(h.Share.Name, substance, StringComparison.OrdinalIgnoreCase))
            ? $", counted as {substance}"
            : "";
        var scope = Scope(rule);
        var from = string.Join(", ", counted.SelectMany(h => h.Share.Sources).Select(s => s.Material).Distinct());
        var certain = low > limit && rule.Verdict == SubstanceVerdict.AtMost && counted[0].Covers == Applies.Yes;
        if (!told.Add(($"limit {names} {certain}", rule.Citation + limit)))
            return;
        if (certain)
            label.TellBy(rule.Basis, "substance.over-limit", facts.Batch.Recipe.File, names, Shown(low), countedAs,
                SubstanceChecks.Percent(limit), scope, from, rule.Citation);
        else
            label.TellBy(rule.Basis, "substance.over-limit/unproven", facts.Batch.Recipe.File, names, Shown(high), countedAs,
                SubstanceChecks.Percent(limit), scope, Ask(rule, counted, low, facts.Kind), rule.Citation);
    }

    // Below the limit by the recipe, and not as far as the workshop's scale can tell.
    private static void Weighed(SubstanceRule rule, Hit[] counted, decimal high, CheckCase label, RecipeFacts facts,
        HashSet<(string, string)> told)
    {
        if (rule.Verdict != SubstanceVerdict.AtMost || high == 0 || ScaleError.Of(facts.Finished) is not { } error)
            return;
        var limit = rule.Most!.Value.Percent;
        var most = high * (1 + error.OfItself(counted.SelectMany(h => h.Share.Sources).Select(s => s.Material)));
        var names = string.Join(" and ", counted.Select(h => h.Share.Name).Distinct());
        if (most > limit && told.Add(($"scale {names}", rule.Citation + limit)))
        {
            label.TellBy(rule.Basis, "scale.limit-open/substance", facts.Batch.Recipe.File,
                names, Shown(high), Shown(most), SubstanceChecks.Percent(limit) + Scope(rule),
                $"{error.Step.Grams.ToString("0.####", CultureInfo.InvariantCulture)} g", rule.Citation);
        }
    }

    private static string Scope(SubstanceRule rule)
    {
        var where = rule.Groups is ["all"] ? "" : $" in {string.Join(", ", rule.Groups.Select(ProductGroup.Phrase))}";
        var when = rule.Words.Length == 0 ? "" : rule.Verdict == SubstanceVerdict.AtMostIf ? $" if {rule.Words}" : $" ({rule.Words})";
        return where + when;
    }

    private static string Ask(SubstanceRule rule, Hit[] counted, decimal low, ProductKind kind)
    {
        var limit = rule.Most!.Value.Percent;
        var open = counted.SelectMany(h => h.Share.Sources.Where(s => !s.IsKnown).Select(s => (h.Share.Name, Source: s))).ToArray();
        if (open.Length == 0 || low > limit)
            return rule.Verdict == SubstanceVerdict.AtMostIf
                ? $"Settle whether {rule.Words}; if so, use less."
                : $"Settle whether this product is one of those{SubstanceChecks.Settles(kind, rule)}, and what the limit counts; if "
                    + $"so, use less.";
        if (open is [var only]
            && counted is [var hit]
            && hit.Share.Sources.Length == 1
            && CountedAs.Share(only.Name, rule.CountedAs) is { } factor && only.Source.Share.Fraction > 0)
        {
            var most = limit / factor / only.Source.Share.Fraction;
            return $"Ask the supplier of {only.Source.Material} how much {only.Name} it holds: up to {SubstanceChecks.Percent(Math.Floor(most * 1000) / 1000)} of the material keeps the limit.";
        }
        return $"Ask for figures: {string.Join("; ", open.Select(o => $"{o.Name} in {o.Source.Material}").Distinct())}.";
    }

    // Four decimals say enough, and are not rounded across the limit: a low bound downwards would hide nothing either.
    private static string Shown(decimal percent) => SubstanceChecks.Rounded(percent, percent < 0.01m ? 6 : 4);
}
