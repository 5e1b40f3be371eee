using LabelForge.Checks;
using LabelForge.Print.Jobs;
using LabelForge.Records.Books;

namespace LabelForge.Days;

/// <summary>A limit that is another than when the last batch of a product was begun.</summary>
/// <param name="Product">The product, as it is named where a recipe is asked for.</param>
/// <param name="Material">The material whose certificate says it; null where a rule does.</param>
/// <param name="Lot">The last lot.</param>
/// <param name="Told">What changed, in a sentence.</param>
public sealed record ChangedLimit(string Product, string? Material, string Lot, string Told);

/// <summary>What has changed of limits since the last batch of a product: by the certificates in
/// the materials' files, and by the law of the day.</summary>
public static class ChangedLimits
{
    /// <summary>Limits and allergens of the materials' files, as the last batch froze them and as they are now.</summary>
    /// <param name="product">The product as its recipe stands.</param>
    /// <param name="last">Its last batch, with what it froze.</param>
    public static ImmutableArray<ChangedLimit> OfCertificates(Product product, Batch last)
    {
        var stood = FrozenRecipe.FromJson(last.Frozen).AsItStood(product.Workshop);
        var category = product.Kind.IfraCategory;
        return [.. product.Batch.Lines.Select(l => l.Material).DistinctBy(m => m.Id).Where(m => stood.Materials.ContainsKey(m.Id))
            .SelectMany(now => Changes(stood.Materials[now.Id], now, category, last)
                .Select(told => new ChangedLimit(product.Name, now.Id, last.Lot, told)))];
    }

    /// <summary>Rules that the product breaks on a day and did not break on the day of its last batch, by the law of each.</summary>
    /// <param name="product">The product as its recipe stands.</param>
    /// <param name="last">Its last batch.</param>
    /// <returns>None where the product cannot be judged, which other verbs say.</returns>
    public static ImmutableArray<ChangedLimit> OfLaw(Product product, Batch last, Market market, DateOnly on)
    {
        if (last.On >= on)
            return [];
        try
        {
            var before = Musts(product, market, last.On).Select(f => (f.Rule, f.Where, f.Source)).ToHashSet();
            return [.. Musts(product, market, on).Where(f => !before.Contains((f.Rule, f.Where, f.Source)))
                .Select(f => new ChangedLimit(product.Name, null, last.Lot,
                    Invariant($"The law has changed since lot {last.Lot} of {last.On:yyyy-MM-dd}: {f.Message} [{f.Source}]")))];
        }
        catch (InputException)
        {
            return [];
        }
    }

    private static IEnumerable<Finding> Musts(Product product, Market market, DateOnly on) =>
        RecipeCheck.Run(LabelJob.Prepare(product, market, null, null, on).Facts).Findings.Where(f => f.Severity == Severity.Must);

    private static IEnumerable<string> Changes(Material then, Material now, string category, Batch last)
    {
        decimal? Limit(Material m) => m.Limits.FirstOrDefault(l => l.Category == category)?.Highest.Percent;
        if (Limit(then) != Limit(now))
            yield return Invariant($"{now.Name}: at most {Shown(Limit(then))} in category {category} when lot {last.Lot} was begun on {last.On:yyyy-MM-dd}, and {Shown(Limit(now))} now.");
        string[] more = [.. now.Allergens
            .Where(a => then.Allergens.FirstOrDefault(t => t.Name == a.Name) is not { } t || t.Share.High.Fraction < a.Share.High.Fraction)
            .Select(a => a.Name)];
        if (more.Length > 0 && !then.Allergens.IsEmpty)
            yield return Invariant($"{now.Name}: its certificate names more {string.Join(", ", more)} than when lot {last.Lot} was begun on {last.On:yyyy-MM-dd}.");
    }

    private static string Shown(decimal? percent) => percent is { } figure ? Invariant($"{figure:0.####} %") : "no limit written";
}
