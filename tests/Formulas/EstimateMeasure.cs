using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using LabelForge.Composition;
using LabelForge.Ingredients.Levels;
using LabelForge.Measures;

namespace LabelForge.Formulas;

/// <summary>How an estimate does where formulas are given back as bare lists and mixed with
/// weighed materials, or with each other.</summary>
/// <param name="Guessed">Pairs that the lists leave open and that could stand wrong on a label.</param>
/// <param name="Right">How many of them stand right.</param>
/// <param name="WronglyProved">Pairs called proved that the truth breaks; there must be none.</param>
/// <param name="Ratio">The typical ratio of estimate to truth, the greater over the less: the
/// median over the bare lists' ingredients.</param>
/// <param name="Traces">The same for ingredients below 0.2 %, as the median of estimate over truth.</param>
/// <param name="Water">Estimate over truth of water where it leads, the median.</param>
/// <param name="Tau">Kendall's tau of the whole order against the true one, over pairs of which
/// one is over 1 %; the mean over the products.</param>
internal sealed record EstimateMeasure(int Guessed, int Right, int WronglyProved, double Ratio, double Traces, double Water, double Tau)
{
    private const double Trace = 0.002;

    // Oil, fragrance and what else a maker weighs, as shares of the batch: the rest is the base with the bare list.
    private static readonly decimal[][] Additions = [[0.03m, 0.015m], [0.02m, 0.01m], [0.05m, 0.02m, 0.015m, 0.008m], [0.012m, 0.005m]];

    /// <summary>Measures on some formulas.</summary>
    /// <param name="formulas">The formulas.</param>
    /// <param name="byUsualLevels">Whether usual levels are gone by; else the middle of what is possible.</param>
    public static EstimateMeasure Of(ImmutableArray<PublishedFormula> formulas, bool byUsualLevels)
    {
        var bare = formulas.Select(f => (Formula: f, Shares: Shares(Prover.Prove([Part(f, f.Product, 1, byUsualLevels)])))).ToArray();
        var logs =
            bare.SelectMany(b => b.Formula.Ingredients
                .Select(i => (i.Name, Truth: i.Percent / 100, Log: Math.Log(b.Shares[i.Name] / (i.Percent / 100))))).ToArray();
        var water = bare.Where(b => b.Formula.Ingredients[0].Name == "Water")
            .Select(b => b.Shares["Water"] / (b.Formula.Ingredients[0].Percent / 100)).ToArray();
        var products = Products(formulas, byUsualLevels).Select(p => Judge(p.Parts, p.Truth)).ToArray();
        return new EstimateMeasure(
            products.Sum(p => p.Guessed), products.Sum(p => p.Right), products.Sum(p => p.WronglyProved),
            Math.Exp(Median(logs.Select(l => Math.Abs(l.Log)))), Math.Exp(Median(logs.Where(l => l.Truth < Trace).Select(l => l.Log))),
            Median(water), products.Average(p => p.Tau));
    }

    /// <summary>The table that stands in docs/order.md.</summary>
    public static string Table()
    {
        var text =
            new StringBuilder(
                "| formulas | estimate | open pairs right | typical ratio | traces too high by | water where it leads | Kendall's tau | "
                    + "wrongly proved |\n| --- | --- | ---: | ---: | ---: | ---: | ---: | ---: |\n");
        foreach (var (name, formulas) in new[] { ("learned from", PublishedFormula.ToLearnFrom), ("kept aside", PublishedFormula.Aside),
            ("unseen", PublishedFormula.Unseen) })
        {
            foreach (var by in new[] { false, true })
            {
                var m = Of(formulas, by);
                text.Append(CultureInfo.InvariantCulture,
                    $"| {formulas.Length} {name} | {(by ? "usual levels" : "middle")} | {100.0 * m.Right / m.Guessed:0.0} % of {m.Guessed} | {m.Ratio:0.00} | {m.Traces:0.0} | {m.Water:0.00} | {m.Tau:0.000} | {m.WronglyProved} |\n");
            }
        }
        return text.ToString();
    }

    private static IEnumerable<(ImmutableArray<MaterialPart> Parts,
        Dictionary<string, double> Truth)> Products(ImmutableArray<PublishedFormula> formulas, bool byUsualLevels)
    {
        for (var at = 0; at < formulas.Length; at++)
        {
            var formula = formulas[at];
            foreach (var additions in Additions)
            {
                var rest = 1 - additions.Sum();
                var truth = formula.Ingredients.ToDictionary(i => i.Name, i => i.Percent / 100 * (double)rest);
                var parts = new List<MaterialPart> { Part(formula, formula.Product, rest, byUsualLevels) };
                for (var a = 0; a < additions.Length; a++)
                {
                    truth.Add($"Addition {a + 1}", (double)additions[a]);
                    parts.Add(new MaterialPart($"addition {a + 1}", additions[a], ListedOrder.Label,
                        [new Constituent($"Addition {a + 1}", ShareRange.Unknown, false)]));
                }
                yield return ([.. parts], truth);
            }
            // Two bare lists, four to one: what both hold is added up.
            var other = formulas[(at + 7) % formulas.Length];
            var both = formula.Ingredients.Select(i => (i.Name, Share: i.Percent / 100 * 0.8))
                .Concat(other.Ingredients.Select(i => (i.Name, Share: i.Percent / 100 * 0.2)))
                .GroupBy(i => i.Name).ToDictionary(g => g.Key, g => g.Sum(i => i.Share));
            yield return ([Part(formula, formula.Product, 0.8m, byUsualLevels), Part(other, formula.Product, 0.2m, byUsualLevels)], both);
        }
    }

    private static (int Guessed, int Right, int WronglyProved,
        double Tau) Judge(ImmutableArray<MaterialPart> parts, Dictionary<string, double> truth)
    {
        var proof = Prover.Prove(parts);
        var open = proof.Unproven.Select(u => (u.First, u.Second)).ToHashSet();
        var (guessed, right, wronglyProved, agree, pairs) = (0, 0, 0, 0, 0);
        for (var i = 0; i < proof.Ingredients.Length; i++)
        {
            for (var j = i + 1; j < proof.Ingredients.Length; j++)
            {
                var (first, second) = (proof.Ingredients[i].Name, proof.Ingredients[j].Name);
                var (a, b) = (truth[first], truth[second]);
                if (Math.Max(a, b) <= 0.01 || Math.Abs(a - b) < 1e-9)
                    continue;
                pairs++;
                agree += a > b ? 1 : 0;
                if (open.Contains((first, second)))
                    (guessed, right) = (guessed + 1, right + (a > b ? 1 : 0));
                else if (b > a)
                    wronglyProved++;
            }
        }
        return (guessed, right, wronglyProved, pairs == 0 ? 1 : (2.0 * agree - pairs) / pairs);
    }

    private static MaterialPart Part(PublishedFormula formula, string product, decimal share, bool byUsualLevels)
    {
        string[] names = [.. formula.Ingredients.Select(i => i.Name)];
        var levels = IngredientDictionary.Shipped.Levels;
        var usual = byUsualLevels ? levels.Of(names, levels.FormOf(product), true) : default;
        return new MaterialPart(formula.Id, share, ListedOrder.Label,
            [
                .. names.Select((n, at) => new Constituent(n, ShareRange.Unknown, false)
                {
                    Usual = byUsualLevels ? new UsualShare(usual[at], []) : null,
                })]);
    }

    private static Dictionary<string, double> Shares(CompositionProof proof) =>
        proof.Ingredients.ToDictionary(i => i.Name, i => (double)i.Estimate);

    private static double Median(IEnumerable<double> figures)
    {
        double[] sorted = [.. figures.Order()];
        return sorted.Length == 0 ? double.NaN : sorted[sorted.Length / 2];
    }
}
