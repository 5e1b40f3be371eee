using LabelForge.Composition;
using LabelForge.Recipes;

namespace LabelForge.Declarations;

/// <summary>
/// How far what is in a batch may be off because of the scale it is weighed on: each line lies anywhere between the marks
/// beside the one shown, so that a share of the product is an interval. Errors of several weighings add up, at their worst.
/// </summary>
public sealed class ScaleError
{
    private readonly decimal finished;
    private readonly ImmutableDictionary<string, (decimal Off, decimal There)> materials;

    private ScaleError(Mass step, decimal finished, ImmutableDictionary<string, (decimal Off, decimal There)> materials) =>
        (Step, this.finished, this.materials) = (step, finished, materials);

    /// <summary>What the scale's marks are apart.</summary>
    public Mass Step { get; }

    /// <summary>The error of a batch; null where the workshop does not say what its scale shows.</summary>
    /// <exception cref="InputException">A material is made from itself.</exception>
    public static ScaleError? Of(FinishedProduct product)
    {
        if (product.Workshop.Business.Scale is not { } step)
            return null;
        var found = ImmutableDictionary.CreateBuilder<string, (decimal Off, decimal There)>(StringComparer.Ordinal);
        foreach (var reading in ScaleReading.Of(product.Batch, step))
        {
            var mass = reading.Line.Mass.Grams;
            foreach (var part in ExplodedFormula.Of(product.Workshop, reading.Line.Material))
            {
                var (off, there) = found.GetValueOrDefault(part.Material.Name);
                found[part.Material.Name] = (off + reading.AsMuchAs * mass * part.Share.Fraction, there + mass * part.Share.Fraction);
            }
        }
        return new(step, product.Mass.Grams, found.ToImmutable());
    }

    /// <summary>How far a material's share of the finished product may be off, a fraction of the product.</summary>
    public decimal OfProduct(string material) => materials.GetValueOrDefault(material).Off / finished;

    /// <summary>How far what these materials bring may be off, as a fraction of it: that of the worst of them.</summary>
    public decimal OfItself(IEnumerable<string> sources) => sources
        .Select(m => materials.GetValueOrDefault(m)).Where(m => m.There > 0).Select(m => m.Off / m.There).DefaultIfEmpty(0).Max();

    /// <summary>
    /// Whether an order that figures alone prove may turn within the error. What one material brings of both turns with
    /// its list, not with its weight, so that two of a single material never turn.
    /// </summary>
    /// <param name="slack">By how much the first is at least more than the second, a fraction of the product; at least 0.</param>
    /// <param name="first">Where the first comes from.</param>
    /// <param name="second">Where the second comes from.</param>
    public bool Turns(decimal slack, IngredientAccount first, IngredientAccount second)
    {
        var names = first.Sources.Concat(second.Sources).Select(s => s.Material).Distinct(StringComparer.Ordinal).ToArray();
        return names.Length > 1 && slack < names.Sum(m => OfProduct(m) * Swing(m));

        decimal Swing(string material)
        {
            var (a, b) = (Of(first, material), Of(second, material));
            return Math.Max(Math.Abs(a.Low - b.High), Math.Abs(a.High - b.Low));
        }
    }

    private static (decimal Low, decimal High) Of(IngredientAccount account, string material) =>
        account.Sources.FirstOrDefault(s => s.Material == material) is { } source ? (source.Low, source.High) : (0, 0);
}
