namespace LabelForge.Recipes;

/// <summary>A bought material's share of what was weighed in, materials made in the shop opened up.</summary>
/// <param name="Material">The material.</param>
/// <param name="Share">Its share, rounded where it is no finite decimal.</param>
/// <param name="Exact">The same without rounding.</param>
public sealed record ExplodedShare(Material Material, ChargeShare Share, Fraction Exact);

/// <summary>The exploded formula of a batch: shares of bought materials only, what the shop mixed
/// itself opened up level by level.</summary>
public static class ExplodedFormula
{
    /// <summary>Opens up a batch; the shares are of all that was weighed in, and sum to 1.</summary>
    /// <exception cref="InputException">A material is made from itself, directly or through others.</exception>
    public static ImmutableArray<ExplodedShare> Of(Workshop workshop, BatchFormula batch) =>
        Sum(batch.Lines.Select(l => (l.Material, l.Mass.Grams / batch.Total.Grams, Fraction.Of(l.Mass.Grams, batch.Total.Grams))),
            new Opening(workshop));

    /// <summary>Opens up one material: shares of it, which sum to 1.</summary>
    /// <exception cref="InputException">It is made from itself, directly or through others.</exception>
    public static ImmutableArray<ExplodedShare> Of(Workshop workshop, Material material) => new Opening(workshop).Of(material, []);

    private static ImmutableArray<ExplodedShare> Sum(IEnumerable<(Material Material, decimal Share, Fraction Exact)> lines,
        Opening opening, ImmutableList<string>? inside = null)
    {
        var shares = new Dictionary<string, ChargeShare>(StringComparer.Ordinal);
        var exact = new Dictionary<string, Fraction>(StringComparer.Ordinal);
        var order = new List<Material>();
        foreach (var (material, share, exactly) in lines)
        {
            foreach (var part in opening.Of(material, inside ?? []))
            {
                if (shares.TryAdd(part.Material.Id, part.Share * share))
                    order.Add(part.Material);
                else
                    shares[part.Material.Id] += part.Share * share;
                exact[part.Material.Id] = exact.GetValueOrDefault(part.Material.Id) + part.Exact * exactly;
            }
        }
        return [.. order.Select(m => new ExplodedShare(m, shares[m.Id], exact[m.Id]))];
    }

    // What each material comes to, opened once however many others use it.
    private sealed class Opening(Workshop workshop)
    {
        private readonly Dictionary<string, ImmutableArray<ExplodedShare>> _opened = new(StringComparer.Ordinal);

        public ImmutableArray<ExplodedShare> Of(Material material, ImmutableList<string> inside)
        {
            if (_opened.TryGetValue(material.Id, out var known))
                return known;
            if (inside.Contains(material.Id))
            {
                throw new InputException(material.File, material.MadeFrom[0].Line, "recipe.made-from-itself", ("material", material.Id),
                    ("list", string.Join(" from ", inside.Add(material.Id).SkipWhile(i => i != material.Id))));
            }
            return _opened[material.Id] = material.MadeFrom.IsEmpty
                ? [new ExplodedShare(material, ChargeShare.Whole, Fraction.Of(1))]
                : Made(material, inside.Add(material.Id));
        }

        private ImmutableArray<ExplodedShare> Made(Material material, ImmutableList<string> inside)
        {
            var (lines, total) = AmountResolution.Resolve(workshop, material.MadeFrom, material.File);
            return Sum(lines.Select(l => (l.Material, l.Mass.Grams / total.Grams, Fraction.Of(l.Mass.Grams, total.Grams))), this, inside);
        }
    }
}
