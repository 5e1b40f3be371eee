using LabelForge.Ingredients;

namespace LabelForge.Recipes;

/// <summary>A bound that the law where a material is sold sets to one of its constituents, taken because the maker trusts it.</summary>
/// <param name="Constituent">The constituent as the list names it.</param>
/// <param name="Most">The most it may hold, as a share of the material.</param>
/// <param name="Source">The entry and the instrument.</param>
public sealed record LegalBound(string Constituent, Share Most, string Source);

/// <summary>
/// <c>trust: legal limits</c>: a base that may be sold as a finished product holds no more of a substance than the law allows
/// at most in any product. It is a bound only where the maker says so, since nothing else shows that the supplier keeps it.
/// </summary>
public static class LegalLimits
{
    /// <summary>The material with its constituents bounded; itself where nothing is trusted or nothing is limited.</summary>
    /// <param name="usual">The market whose limits are meant where its file names none.</param>
    /// <param name="dictionary">The names known.</param>
    public static Material Bound(Material material, Market usual, IngredientDictionary dictionary)
    {
        if (material.Trusted is not { } trusted)
            return material;
        var market = trusted.Market is { } named ? usual.Book.Find(named).OrRefuse() : usual;
        if (dictionary.SubstancesIn(market) is not { } table)
            return material;
        var bounds = ImmutableArray.CreateBuilder<LegalBound>();
        ImmutableArray<DeclaredConstituent> contains =
        [
            .. material.Contains.Select(c =>
            {
                // A paper that says more is not made to say less: the checks judge it.
                if (Of(c, table, dictionary) is not { } bound || bound.Most.CompareTo(c.Share.Low) < 0
                    || bound.Most.CompareTo(c.Share.High) >= 0)
                    return c;
                bounds.Add(bound);
                return c with { Share = new(c.Share.Low, bound.Most) };
            }),
        ];
        return material with { Contains = contains, LegalBounds = bounds.ToImmutable() };
    }

    // The greatest that any entry allows in any product, salts by their acids; none where some product is not limited.
    private static LegalBound? Of(DeclaredConstituent constituent, SubstanceTable table, IngredientDictionary dictionary)
    {
        var entry = dictionary.Find(NanoName.Bare(constituent.Name));
        var name = entry?.Us ?? constituent.Name;
        var limits = table.Of(constituent.Name, entry).Where(r => r.Verdict is SubstanceVerdict.AtMost or SubstanceVerdict.AtMostIf)
            .ToArray();
        if (!limits.Any(r => r.Verdict == SubstanceVerdict.AtMost && r.Words.Length == 0 && r.Groups is ["all"]))
            return null;
        // Where it is not held how much of the salt the acid is, nothing is bounded.
        if (limits.Any(r => CountedAs.Least(name, r.CountedAs) == 0))
            return null;
        var (rule, most) = limits.Select(r => (Rule: r, Most: r.Most!.Value.Percent / CountedAs.Least(name, r.CountedAs)))
            .MaxBy(r => r.Most);
        return new(constituent.Name, Share.FromPercent(Math.Min(100, most)), rule.Citation);
    }
}
