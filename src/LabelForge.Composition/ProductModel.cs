namespace LabelForge.Composition;

/// <summary>A material and a name in its list: its place among the <see cref="MaterialModel.Names"/>.</summary>
internal readonly record struct Source(int Material, int Constituent);

/// <summary>
/// An ingredient of the product: where it comes from, in what else it is named besides, and what of it was lost (a fraction
/// of the charged batch).
/// </summary>
internal sealed record ProductIngredient(string Name, bool IsColour, ImmutableArray<Source> Sources, ImmutableArray<NamedBesides> Besides,
    decimal Lost);

/// <summary>The materials of a product and the ingredients that they have in common.</summary>
/// <remarks>
/// No more can have left than was there, so a loss says something of the materials too: each must have brought at least
/// what the others together cannot have. Its list is read again with that as the least share of what was lost. Where only
/// one material leaves open how much it brought, that cuts out exactly the compositions with too little; where several do,
/// some of those are left in, which can only widen bounds and leave a pair unproven, never prove too much.
/// </remarks>
internal sealed class ProductModel
{
    // What some compositions hold too little of for its loss, and where how much there is of it is open.
    private readonly ImmutableArray<Opened> _opened;

    /// <summary>Reads a product.</summary>
    /// <exception cref="InputException">The data contradicts itself.</exception>
    public ProductModel(IReadOnlyList<MaterialPart> parts, OnePercentLines lines, IReadOnlyList<Adjustment> losses,
        IReadOnlyList<NamedBesides> besides)
    {
        if (parts.Any(p => p.ShareOfProduct < 0) || Math.Abs(parts.Sum(p => p.ShareOfProduct) - 1) > 1e-9m)
            throw new ArgumentException("The materials' shares of a product are not negative and sum to 1.", nameof(parts));
        foreach (var part in parts)
            Refuse(part);
        Materials = [.. parts.Where(p => p.ShareOfProduct > 0).Select(p => new MaterialModel(p, lines.Lists))];
        (Lines, Losses) = (lines, [.. losses]);
        Left = 1 - losses.Sum(l => l.ShareRemoved);
        var sources = Materials
            .SelectMany((material, m) => material.Names.Select((name, n) => (name, source: new Source(m, n))))
            .ToLookup(s => s.name, s => s.source, StringComparer.Ordinal);
        Ingredients = [.. sources.Select(g => g.Key).Concat(besides.Select(b => b.Name)).Distinct(StringComparer.Ordinal)
            .Select(name => new ProductIngredient(
            name, sources[name].Any(IsColour), [.. sources[name]], [.. besides.Where(b => b.Name == name)],
            losses.Where(l => l.Ingredient == name).Sum(l => l.ShareRemoved)))];
        foreach (var loss in losses)
            Refuse(loss);
        _opened = [.. Ingredients.Where(i => i.Lost > 0 && Charged(i, s => Materials[s.Material].Low[s.Constituent]) < i.Lost)
            .Select(i => new Opened(i,
            [.. i.Sources.Where(s => Materials[s.Material].Low[s.Constituent] < Materials[s.Material].High[s.Constituent])]))];
        Materials = [.. Materials.Select((material, at) => HoldingWhatWasLost(material, at))];
    }

    /// <summary>The materials that are in the product at all.</summary>
    public ImmutableArray<MaterialModel> Materials { get; }

    /// <summary>The ingredients, in order of first mention.</summary>
    public ImmutableArray<ProductIngredient> Ingredients { get; }

    /// <summary>Where the order by weight ends.</summary>
    public OnePercentLines Lines { get; }

    /// <summary>What left the batch.</summary>
    public ImmutableArray<Adjustment> Losses { get; }

    /// <summary>What is left of the charged batch, a fraction above 0 up to 1.</summary>
    public decimal Left { get; }

    /// <summary>Least share of the finished product.</summary>
    public decimal Low(ProductIngredient of) => Finished(of, s => Materials[s.Material].Low[s.Constituent], b => b.Low);

    /// <summary>Greatest share of the finished product.</summary>
    public decimal High(ProductIngredient of) => Finished(of, s => Materials[s.Material].High[s.Constituent], b => b.High);

    /// <summary>Estimated share of the finished product.</summary>
    public decimal Estimate(ProductIngredient of) =>
        Finished(of, s => Materials[s.Material].Estimate[s.Constituent], b => (b.Low + b.High) / 2);

    /// <summary>Whether both bounds are reached by some composition; if not, the truth is known
    /// to lie within them and may lie in less.</summary>
    /// <remarks>
    /// A loss binds the materials that hold what was lost to each other. Each alone is read exactly, the others holding the most
    /// they can; so only what comes from several of them at once, or what a list holds under several lines, is left too wide.
    /// </remarks>
    public bool IsTight(ProductIngredient of) => _opened switch
    {
        [] => true,
        [var one] when one.From.All(s => Materials[s.Material].Groups[s.Constituent].Length == 1) =>
            of.Name == one.Lost.Name || of.Sources.Count(s => one.From.Any(f => f.Material == s.Material)) < 2,
        _ => !of.Sources.Any(s => _opened.Any(o => o.From.Any(f => f.Material == s.Material))),
    };

    /// <summary>Whether its estimate rests on published figures wherever the lists leave its share open.</summary>
    public bool IsUsual(ProductIngredient of) => of.Besides.IsEmpty && of.Sources.All(s =>
        Materials[s.Material] is var material
        && (material.Low[s.Constituent] == material.High[s.Constituent]
            || material.Groups[s.Constituent].All(c => material.Part.Constituents[c].Usual is { IsPublished: true })));

    private decimal Finished(ProductIngredient of, Func<Source, decimal> share, Func<NamedBesides, decimal> besides) =>
        Math.Clamp((Math.Max(0, Charged(of, share) - of.Lost) + of.Besides.Sum(b => b.ShareOfProduct * besides(b))) / Left, 0, 1);

    private bool IsColour(Source source)
    {
        var material = Materials[source.Material];
        return material.Groups[source.Constituent].Any(c => material.Part.Constituents[c].IsColourant);
    }

    private decimal Charged(ProductIngredient of, Func<Source, decimal> share) =>
        of.Sources.Sum(s => Materials[s.Material].Part.ShareOfProduct * share(s));

    private MaterialModel HoldingWhatWasLost(MaterialModel material, int at)
    {
        var part = material.Part;
        var constituents = part.Constituents.ToBuilder();
        foreach (var ingredient in Ingredients.Where(i => i.Lost > 0))
        {
            if (ingredient.Sources.FirstOrDefault(s => s.Material == at, new Source(-1, -1)) is not { Material: >= 0 } source)
                continue;
            // The least sum of several of one name is no bound of any one of them; without it the set is wider, never too narrow.
            if (material.Groups[source.Constituent] is not [var place])
                continue;
            var others = ingredient.Sources.Where(s => s != source)
                .Sum(s => Materials[s.Material].Part.ShareOfProduct * Materials[s.Material].High[s.Constituent]);
            var least = Math.Min((ingredient.Lost - others) / part.ShareOfProduct, material.High[source.Constituent]);
            var old = constituents[place];
            if (least > old.Share.Low.Fraction)
                constituents[place] = old with { Share = new ShareRange(Share.FromFraction(least), old.Share.High) };
        }
        return constituents.SequenceEqual(part.Constituents)
            ? material
            : new MaterialModel(part with { Constituents = constituents.ToImmutable(), ExactShare = null }, material.Line);
    }

    private sealed record Opened(ProductIngredient Lost, ImmutableArray<Source> From);

    private static void Refuse(MaterialPart part)
    {
        if (part.Constituents.IsDefaultOrEmpty)
            throw new InputException("composition.no-list", ("material", part.Material));
        if (part.Constituents.GroupBy(c => c.Substance).FirstOrDefault(g => g.Count() > 1) is { } twice)
            throw new InputException("composition.lists-twice", ("material", part.Material), ("name", twice.Key));
    }

    private void Refuse(Adjustment loss)
    {
        if (loss.ShareRemoved < 0 || Left <= 0)
            throw new InputException(loss.File, loss.Line, "composition.loss-leaves",
                ("share-removed", $"{loss.ShareRemoved * 100:0.######}"), ("ingredient", loss.Ingredient));
        if (Ingredients.FirstOrDefault(i => i.Name == loss.Ingredient && !i.Sources.IsEmpty) is not { } ingredient)
            throw new InputException(loss.File, loss.Line, "composition.lost-not-there", ("ingredient", loss.Ingredient));
        var most = Charged(ingredient, s => Materials[s.Material].High[s.Constituent]);
        if (most < ingredient.Lost - CompositionLimits.Tolerance)
        {
            var from = string.Join(", ", ingredient.Sources.Select(s => Materials[s.Material].Part.Material));
            throw new InputException(loss.File, loss.Line, "composition.lost-more-than-there",
                ("lost", $"{ingredient.Lost * 100:0.######}"), ("ingredient", loss.Ingredient), ("from", from),
                ("most", $"{most * 100:0.######}"));
        }
    }
}
