using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using LabelForge.Composition;
using LabelForge.Composition.Asking;
using LabelForge.Ingredients.Levels;
using LabelForge.Measures;

namespace LabelForge.Formulas;

/// <summary>
/// How many open pairs at most three questions a supplier settle, where formulas are given back as bare lists and the suppliers
/// answer as the formulas are.
/// </summary>
/// <param name="Open">Pairs that the bare lists leave open, over all products.</param>
/// <param name="Left">Of them, those open after the answers.</param>
/// <param name="Settled">The part settled, by product, the least first.</param>
/// <param name="Asked">How many questions were put.</param>
internal sealed record QuestionMeasure(int Open, int Left, ImmutableArray<double> Settled, int Asked)
{
    /// <summary>The part settled, over all pairs.</summary>
    public double Part => 1 - (double)Left / Open;

    /// <summary>The part settled of the product in the middle.</summary>
    public double Median => Settled[Settled.Length / 2];

    /// <summary>How many products of ten have nine pairs of ten settled.</summary>
    public double Nine => Settled.Average(s => s >= 0.9 ? 1.0 : 0.0);

    /// <summary>What a maker adds to a base, as shares of the batch.</summary>
    public static readonly ImmutableArray<(string Name, decimal[] Shares)> Batches =
        [("an oil and a scent", [0.03m, 0.015m]), ("an oil, a scent and mica", [0.04m, 0.012m, 0.003m]),
            ("four things weighed", [0.05m, 0.02m, 0.015m, 0.008m])];

    /// <summary>Measures on some formulas, each with the same things weighed to it.</summary>
    /// <param name="formulas">The formulas.</param>
    /// <param name="additions">Shares of the batch.</param>
    public static QuestionMeasure Of(ImmutableArray<PublishedFormula> formulas, decimal[] additions) =>
        Of(formulas.Select(f => Product([f], additions)));

    /// <summary>Measures where the base is mixed of two bare lists of two suppliers, seven to two, and a scent.</summary>
    public static QuestionMeasure OfTwo(ImmutableArray<PublishedFormula> formulas) =>
        Of(formulas.Select((f, at) => Product([f, formulas[(at + 7) % formulas.Length]], [0.015m])));

    /// <summary>Every set of formulas in every batch.</summary>
    public static ImmutableArray<(string Formulas, string Batch, QuestionMeasure Measure)> All() =>
        [.. from set in new[] { ("learned from", PublishedFormula.ToLearnFrom), ("kept aside", PublishedFormula.Aside),
            ("unseen", PublishedFormula.Unseen) }
            from batch in Batches.Select(b => (b.Name, Measure: Of(set.Item2, b.Shares)))
                .Append(("two bases and a scent", OfTwo(set.Item2)))
            select ($"{set.Item2.Length} {set.Item1}", batch.Item1, batch.Item2)];

    /// <summary>The table that stands in docs/suppliers.md.</summary>
    /// <param name="all">What was measured.</param>
    public static string Table(ImmutableArray<(string Formulas, string Batch, QuestionMeasure Measure)> all)
    {
        var text =
            new StringBuilder(
                "| formulas | batch | open pairs | settled | of the product in the middle | products with nine of ten settled |\n| --- | "
                    + "--- | ---: | ---: | ---: | ---: |\n");
        foreach (var (formulas, batch, m) in all)
            text.Append(CultureInfo.InvariantCulture,
                $"| {formulas} | {batch} | {m.Open} | {100 * m.Part:0.0} % | {100 * m.Median:0.0} % | {100 * m.Nine:0} % |\n");
        return text.ToString();
    }

    private static QuestionMeasure Of(
        IEnumerable<(ImmutableArray<MaterialPart> Parts, Dictionary<string, PublishedFormula> Truth)> products)
    {
        var (open, left, asked, settled) = (0, 0, 0, new List<double>());
        foreach (var (parts, truth) in products)
        {
            var before = Prover.Prove(parts);
            if (before.Unproven.IsEmpty)
                continue;
            var facts = Facts.Best([before]).Facts;
            ImmutableArray<MaterialPart> answered =
                [
                    .. parts.Select(p => facts.Where(f => f.Material == p.Material)
                        .Aggregate(p, (part, fact) => Answered(part, fact, truth[p.Material])))];
            var after = Prover.Prove(answered).Unproven.Length;
            (open, left, asked) = (open + before.Unproven.Length, left + after, asked + facts.Length);
            settled.Add(1 - (double)after / before.Unproven.Length);
        }
        return new QuestionMeasure(open, left, [.. settled.Order()], asked);
    }

    private static (ImmutableArray<MaterialPart> Parts,
        Dictionary<string, PublishedFormula> Truth) Product(PublishedFormula[] bases, decimal[] additions)
    {
        var rest = 1 - additions.Sum();
        decimal[] of = bases.Length == 1 ? [rest] : [rest * 7 / 9, rest - rest * 7 / 9];
        return (
            [.. bases.Select((b, at) => Bare(b, of[at])),
                .. additions.Select((a,
                    at) => new MaterialPart($"addition {at + 1}", a, ListedOrder.Label,
                        [new Constituent($"Addition {at + 1}", ShareRange.Unknown, false)]))],
            bases.ToDictionary(b => b.Id));
    }

    private static MaterialPart Bare(PublishedFormula formula, decimal share)
    {
        string[] names = [.. formula.Ingredients.Select(i => i.Name)];
        var usual = IngredientDictionary.Shipped.Levels.Of(names, IngredientDictionary.Shipped.Levels.FormOf(formula.Product), true);
        return new MaterialPart(formula.Id, share, ListedOrder.Label,
            [.. names.Select((n, at) => new Constituent(n, ShareRange.Unknown, false) { Usual = new UsualShare(usual[at], []) })]);
    }

    /// <summary>The list with a true answer taken in.</summary>
    private static MaterialPart Answered(MaterialPart part, SupplierFact fact, PublishedFormula formula)
    {
        var sum = formula.Ingredients.Sum(i => i.Percent);
        var truth = formula.Ingredients.ToDictionary(i => i.Name, i => (decimal)(i.Percent / sum));
        return part with
        {
            Constituents = [.. part.Constituents.Select(c => c with
            {
                Share = fact.IsBands ? Band(truth[c.Name])
                    : fact.Constituent is { } name
                    ? c.Name == name ? Range(truth[name] - 1e-6m, truth[name] + 1e-6m) : c.Share
                    : truth[c.Name] <= fact.Line!.Value.AtMost
                    ? Range(c.Share.Low.Fraction, Math.Min(c.Share.High.Fraction, fact.Line.Value.AtMost))
                    : Range(Math.Max(c.Share.Low.Fraction, Math.Min(truth[c.Name], fact.Line.Value.AtLeast)), c.Share.High.Fraction),
            })],
        };
    }

    private static ShareRange Band(decimal share) =>
        Range(ShareBands.Edges.LastOrDefault(e => e < share, 0), ShareBands.Edges.FirstOrDefault(e => e >= share, 1));

    private static ShareRange Range(decimal low, decimal high) =>
        new(Share.FromFraction(Math.Clamp(low, 0, 1)), Share.FromFraction(Math.Clamp(high, 0, 1)));
}
