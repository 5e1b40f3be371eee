using LabelForge.Ingredients;
using LabelForge.Recipes.Saponification;

namespace LabelForge.Recipes;

/// <summary>Turns amounts written in any unit into exact masses.</summary>
internal sealed class AmountResolution
{
    /// <summary>What percentages name for everything that is weighed in.</summary>
    private const string Batch = "batch";

    /// <summary>What percentages name for all materials of kind oil together.</summary>
    private const string Oils = "oils";

    private readonly Workshop _workshop;
    private readonly ImmutableArray<MaterialUse> _uses;
    private readonly string _file;
    private readonly WrittenSuperfat? _superfat;
    private readonly Dictionary<string, Material> _materials;

    // Each mass is a figure of grams plus a share of the batch: grams + share * total.
    private readonly Dictionary<string, (decimal Grams, decimal OfBatch)> _known = [];

    private AmountResolution(Workshop workshop, ImmutableArray<MaterialUse> uses, string file, WrittenSuperfat? superfat)
    {
        (_workshop, _uses, _file, _superfat) = (workshop, uses, file, superfat);
        var twice = uses.GroupBy(u => u.Material).FirstOrDefault(g => g.Count() > 1);
        if (twice is not null)
            throw Refuse(twice.Last().Line, "recipe.used-twice", ("name", twice.Key),
                ("list", string.Join(" and ", twice.Select(u => u.Amount))));
        _materials = uses.ToDictionary(u => u.Material, u => workshop.Material(u.Material, file, u.Line));
        foreach (var use in uses.Where(u => _materials[u.Material].Kind == MaterialKind.Packaging))
            throw Refuse(use.Line, "recipe.packaging-inside", ("material", use.Material));
    }

    /// <summary>The masses of materials, and of all together.</summary>
    /// <param name="workshop">Where the materials are described.</param>
    /// <param name="uses">The materials with their amounts.</param>
    /// <param name="file">The file they stand in, for messages.</param>
    /// <param name="superfat">The superfat by which a lye may be measured out; null where there is none.</param>
    /// <exception cref="InputException">An amount cannot be worked out.</exception>
    public static (ImmutableArray<BatchLine> Lines,
        Mass Total) Resolve(Workshop workshop, ImmutableArray<MaterialUse> uses, string file, WrittenSuperfat? superfat = null) =>
        new AmountResolution(workshop, uses, file, superfat).Resolved();

    private (ImmutableArray<BatchLine> Lines, Mass Total) Resolved()
    {
        var waiting = _uses.ToList();
        while (waiting.Count > 0)
        {
            var ready = waiting.Where(IsReady).ToArray();
            if (ready.Length == 0)
                throw Refuse(waiting[0].Line, "recipe.amounts-in-a-circle", ("list", string.Join(", ", waiting.Select(u => u.Material))));
            foreach (var use in ready)
                _known[use.Material] = InGrams(use);
            waiting.RemoveAll(ready.Contains);
        }

        var shares = _known.Values.Sum(v => v.OfBatch);
        var grams = _known.Values.Sum(v => v.Grams);
        if (shares >= 1 || grams <= 0)
            throw Refuse(_uses[0].Line, "recipe.nothing-for-the-rest");
        var total = grams / (1 - shares);
        return ([.. _uses.Select(u => new BatchLine(_materials[u.Material], MassOf(u, total), u.Amount))], Mass.FromGrams(total));
    }

    private Mass MassOf(MaterialUse use, decimal total)
    {
        var (own, ofBatch) = _known[use.Material];
        var grams = own + ofBatch * total;
        return grams > 0 ? Mass.FromGrams(grams) : throw Refuse(use.Line, "recipe.lye-enough");
    }

    private bool IsReady(MaterialUse use)
    {
        if (use.Amount.Unit == AmountUnit.BySuperfat)
            return _uses.All(u => u == use
                || _known.ContainsKey(u.Material)
                || (u.Amount.Unit != AmountUnit.BySuperfat && AlkaliOf(u).IsNone));
        if (use.Amount.Of is not { } of || of == Batch)
            return true;
        if (_uses.Any(u => u.Material == of))
            return _known.ContainsKey(of);
        if (of != Oils)
            throw Refuse(use.Line, "recipe.share-of-unknown", ("figure", use.Amount.Figure), ("of", of));
        return OilUses is { Length: > 0 } oils
            ? oils.All(o => _known.ContainsKey(o.Material))
            : throw Refuse(use.Line, "recipe.share-of-no-oils", ("figure", use.Amount.Figure));
    }

    private (decimal Grams, decimal OfBatch) InGrams(MaterialUse use)
    {
        var amount = use.Amount;
        var material = _materials[use.Material];
        if (amount.Unit == AmountUnit.BySuperfat)
            return BySuperfat(use);
        if (amount.IsMass)
            return (amount.AsMass().Grams, 0);
        if (amount.IsVolume)
        {
            return material.GramsPerMillilitre is { } density
                ? (amount.AsVolume(material.DropsPerMillilitre).Millilitres * density, 0)
                : throw Refuse(use.Line, "recipe.no-density", ("material", use.Material),
                    ("inner", Densities.Missing(material.File, material.Contains.Select(c => c.Name), _workshop.Dictionary)));
        }
        var share = amount.Figure / 100;
        if (amount.Of == Batch)
            return (0, share);
        var (grams, ofBatch) = _known.TryGetValue(amount.Of!, out var one) ? one : Sum(OilUses.Select(o => _known[o.Material]));
        return (grams * share, ofBatch * share);
    }

    // The moles of alkali that all the rest takes up, less the superfat and what other lyes bring, over what a gram of this lye brings.
    private (decimal Grams, decimal OfBatch) BySuperfat(MaterialUse use)
    {
        if (_superfat is not { } superfat)
            throw Refuse(use.Line, "recipe.no-superfat");
        var gives = AlkaliOf(use).Gives;
        if (gives == 0)
            throw Refuse(use.Line, "recipe.not-a-lye", ("material", use.Material));
        var (grams, ofBatch) = Sum(_uses.Where(u => u != use && _known.ContainsKey(u.Material)).Select(u =>
        {
            var alkali = AlkaliOf(u);
            var moles = alkali.Takes * (1 - superfat.Share.Fraction) + alkali.TakesFirst - alkali.Gives;
            return (_known[u.Material].Grams * moles, _known[u.Material].OfBatch * moles);
        }));
        return grams > 0 || ofBatch > 0
            ? (grams / gives, ofBatch / gives)
            : throw Refuse(use.Line, "recipe.no-oil-for-lye");
    }

    private MaterialUse[] OilUses => [.. _uses.Where(u => _materials[u.Material].Kind == MaterialKind.Oil)];

    private AlkaliPerGram AlkaliOf(MaterialUse use) => AlkaliPerGram.Of(_workshop, _materials[use.Material]);

    private static (decimal Grams, decimal OfBatch) Sum(IEnumerable<(decimal Grams, decimal OfBatch)> parts) =>
        parts.Aggregate((Grams: 0m, OfBatch: 0m), (sum, next) => (sum.Grams + next.Grams, sum.OfBatch + next.OfBatch));

    private InputException Refuse(int line, string code, params ReadOnlySpan<(string Name, object? Value)> arguments) =>
        new(_file, line, code, arguments);
}
