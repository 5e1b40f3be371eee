namespace LabelForge.Markets;

/// <summary>The facts of one product that a maker has settled.</summary>
/// <param name="Settled">Whether it is so, by the name of the fact; what is not in it is open.</param>
public sealed record ProductFacts(ImmutableSortedDictionary<string, bool> Settled)
{
    /// <summary>Nothing is settled.</summary>
    public static ProductFacts None { get; } = new(ImmutableSortedDictionary.Create<string, bool>(StringComparer.Ordinal));

    /// <summary>Whether it is so; null while nobody has said.</summary>
    /// <param name="fact">The fact's name.</param>
    public bool? State(string fact) => Settled.TryGetValue(fact, out var so) ? so : null;

    /// <summary>The same facts and one more.</summary>
    public ProductFacts With(string fact, bool so) => new(Settled.SetItem(fact, so));

    /// <summary>As they are written in one line: <c>adults-only=yes spray=no</c>.</summary>
    public string Written => string.Join(' ', Settled.Select(f => $"{f.Key}={(f.Value ? "yes" : "no")}"));

    /// <summary>Reads <c>spray=no</c>, or <c>spray</c> for yes.</summary>
    public static Parsed<(string Fact, bool So)> Parse(string written)
    {
        var parts = written.Split('=', 2, StringSplitOptions.TrimEntries);
        var fact = ProductFact.Find(parts[0]);
        if (!fact.IsValue)
            return Parsed<(string, bool)>.Refused(fact.Problem);
        return Answer(parts.Length == 1 ? "yes" : parts[1]) is { } so
            ? Parsed<(string, bool)>.Of((fact.Value.Id, so))
            : Parsed<(string, bool)>.Refused("fact.not-an-answer", ("part", parts[1]), ("asks", fact.Value.Asks), ("fact", fact.Value.Id));
    }

    /// <summary>Whether the words mean yes or no; null where neither.</summary>
    public static bool? Answer(string written) => written.Trim().ToLowerInvariant() switch
    {
        "yes" or "true" => true,
        "no" or "false" => false,
        _ => null,
    };

    /// <summary>A kind of product as these facts settle it: what depended on the product does no more.</summary>
    public ProductKind Of(ProductKind kind) => Settled.IsEmpty ? kind : kind with
    {
        Groups = [.. kind.Groups.Where(g => State(g.Name) is null),
            .. Settled.Where(f => f.Value && ProductGroup.IsKnown(f.Key)).Select(f => new ProductGroup(f.Key, true))],
    };

    /// <summary>The same, with what the words of a label or a recipe show where the maker has not said.</summary>
    public ProductKind Of(ProductKind kind, string words) =>
        Of(kind) is var settled && Shown(words, settled).ToImmutableArray() is { IsEmpty: false } shown
            ? settled with { Groups = [.. settled.Groups.Where(g => shown.All(s => s.Name != g.Name)), .. shown] }
            : settled;

    private IEnumerable<ProductGroup> Shown(string words, ProductKind kind)
    {
        foreach (var fact in ProductFact.All.Values
            .Where(f => State(f.Id) is null && ProductGroup.IsKnown(f.Id) && !kind.Groups.Contains(new(f.Id, true))))
        {
            if (fact.Says?.IsMatch(words) == true)
                yield return new(fact.Id, true);
            else if (fact.Hints?.IsMatch(words) == true)
                yield return new(fact.Id, false);
        }
    }
}
