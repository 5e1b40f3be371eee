using LabelForge.Declarations;
using LabelForge.Recipes;

namespace LabelForge.Fragrances;

/// <summary>Holds every fragrance oil of a batch against its own certificate, and says how much the batch can take.</summary>
public static class FragranceLimits
{
    /// <summary>The fragrance of a batch.</summary>
    /// <param name="product">The mass balance.</param>
    /// <param name="kind">The product's kind.</param>
    public static FragranceBudget Of(FinishedProduct product, ProductKind kind)
    {
        var (workshop, batch, finished) = (product.Workshop, product.Batch, product.Mass);
        var grams = Grams(product.Charged, batch.Total);
        var oils = grams
            .Select(g => new FragranceOil(g.Material, Mass.FromGrams(g.Grams), product.Of(Mass.FromGrams(g.Grams)),
                LimitOf(g.Material, kind)))
            .ToImmutableArray();
        var lines = batch.Lines
            .Select(l => (Line: l, Oils: Grams(ExplodedFormula.Of(workshop, l.Material), l.Mass)))
            .Where(l => l.Oils.Length > 0)
            .Select(l => Line(l.Line, l.Oils, oils, finished, kind))
            .ToImmutableArray();
        return new FragranceBudget(kind, finished, oils, lines);
    }

    /// <summary>Rounds down to what a small scale shows: 0.01 g.</summary>
    internal static Mass Floor(decimal grams) => Mass.FromGrams(Math.Floor(Math.Max(0, grams) * 100) / 100);

    /// <summary>An essential oil bought as an oil is a fragrance here once its certificate's limits are written down.</summary>
    private static bool IsFragrance(Material material) => material.Kind == MaterialKind.Fragrance || !material.Limits.IsEmpty;

    private static ImmutableArray<(Material Material, decimal Grams)> Grams(ImmutableArray<ExplodedShare> bought, Mass whole) =>
        [.. bought.Where(f => IsFragrance(f.Material)).Select(f => (f.Material, f.Share.Fraction * whole.Grams))];

    private static Share? LimitOf(Material material, ProductKind kind) =>
        material.Limits.FirstOrDefault(l => l.Category == kind.IfraCategory)?.Highest;

    private static FragranceLine Line(
        BatchLine line, ImmutableArray<(Material Material, decimal Grams)> inLine, ImmutableArray<FragranceOil> all, Mass finished,
        ProductKind kind)
    {
        var rest = finished.Grams - line.Mass.Grams;
        (decimal Most, Material Binds)? least = null;
        foreach (var (material, grams) in inLine)
        {
            if (LimitOf(material, kind) is not { } limit)
                return new FragranceLine(line.Material, line.Mass, null, null);
            var within = grams / line.Mass.Grams;
            var elsewhere = all.Single(o => o.Material.Id == material.Id).Mass.Grams - grams;
            // b of the line holds b * within of the oil: b * within + elsewhere = limit * (rest +
            // b). Under its limit in the line itself it never binds.
            if (within <= limit.Fraction)
                continue;
            var most = (limit.Fraction * rest - elsewhere) / (within - limit.Fraction);
            if (least is null || most < least.Value.Most)
                least = (most, material);
        }
        return new FragranceLine(line.Material, line.Mass, least is { } found ? Floor(found.Most) : null, least?.Binds);
    }
}
