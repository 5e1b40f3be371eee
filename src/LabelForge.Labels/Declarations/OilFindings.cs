using LabelForge.Checks;
using LabelForge.Ingredients;

namespace LabelForge.Declarations;

/// <summary>
/// What is said of essential oils: those without an analysis, by what such oils are known to hold; those with one, where it
/// is far from what is known.
/// </summary>
internal static class OilFindings
{
    // Genuine oils fall outside of standards; half as far again is another oil, another dilution or another paper. Common practice.
    private const decimal FarBelow = 0.5m;
    private const decimal FarAbove = 1.5m;

    /// <summary>The findings; none where the market names no allergens.</summary>
    /// <param name="product">The product.</param>
    /// <param name="rule">Which allergens the market wants named, and above which share.</param>
    public static IEnumerable<Finding> Find(FinishedProduct product, AllergenRule? rule) =>
        rule is null or { List: AllergenList.None }
            ? []
            : [.. Unanalysed(product, rule),
                .. product.Materials.Select(f => f.Material).Distinct().SelectMany(m => Analysed(m, product.Workshop))];

    private static IEnumerable<Finding> Unanalysed(FinishedProduct product, AllergenRule rule)
    {
        var oils = PossibleAllergens.Of(product.Materials, product.Workshop);
        var told = product.Allergens.Where(t => t.Entry is not null).ToDictionary(t => t.Entry!, t => t.High);
        var may = oils.SelectMany(o => o.Holds.Select(h => (h.Allergen, Most: o.Most(h)))).GroupBy(h => h.Allergen)
            .Where(g => rule.Lists(g.Key)
                && told.GetValueOrDefault(g.Key) is var known
                && known <= rule.Threshold.Percent
                && known + g.Sum(h => h.Most) > rule.Threshold.Percent)
            .ToDictionary(g => g.Key, g => Math.Min(100, told.GetValueOrDefault(g.Key) + g.Sum(h => h.Most)));
        // The same material may lie in two pots: it is asked about once, with all that there is of it.
        foreach (var material in oils.GroupBy(o => o.Material.Name).Select(g => g.ToArray()))
        {
            var open = material.SelectMany(o => o.Holds.Where(h => may.ContainsKey(h.Allergen)).Select(h => (Holds: h, Most: o.Most(h))))
                .GroupBy(o => o.Holds.Allergen).Select(g => (g.First().Holds, Most: g.Sum(o => o.Most))).ToArray();
            if (open.Length == 0)
                continue;
            var names = string.Join(", ",
                open.Select(
                    o =>
                        $"{o.Holds.Allergen.Name} ({o.Holds.Amount}; here up to {Percent(o.Most)}{Together(may[o.Holds.Allergen], o.Most)})"));
            yield return product.Workshop.Markets.Every.Rules["allergen.undeclared/possible"].Find(
                material[0].Material.File, material[0].Material.Name, names, Percent(rule.Threshold.Percent), material[0].Material.Id,
                rule.Source).By(open.Max(o => o.Holds.Basis));
        }
    }

    private static IEnumerable<Finding> Analysed(Material material, Workshop workshop)
    {
        var dictionary = workshop.Dictionary;
        if (material.Allergens.IsEmpty || material.Contains is not [var only] || dictionary.Find(only.Name) is not { } oil)
            yield break;
        foreach (var known in dictionary.OilAllergens.Of(oil).Where(a => a.Figure == OilFigure.Range && a.Low > 0))
        {
            var written = material.Allergens.Where(a => dictionary.Allergens.Find(a.Name) == known.Allergen).ToArray();
            var (low, high) = (written.Sum(a => a.Share.Low.Percent), written.Sum(a => a.Share.High.Percent));
            if (high >= known.Low * FarBelow && low <= Math.Min(100, known.High!.Value * FarAbove))
                continue;
            var says = written.Length == 0
                ? $"does not name {known.Allergen.Name}"
                : $"says {known.Allergen.Name} {(low == high ? Percent(high) : $"{Percent(low)} to {Percent(high)}")}";
            yield return workshop.Markets.Every.Rules["allergen.outside-range"]
                .Find(material.File, material.Name, says, known.Amount, known.Source).By(known.Basis);
        }
    }

    private static string Together(decimal sum, decimal alone) => sum > alone ? $", with what else brings it {Percent(sum)}" : "";

    private static string Percent(decimal percent) =>
        Math.Round(percent, percent >= 1 ? 2 : 4).ToString("0.####", CultureInfo.InvariantCulture) + " %";
}
