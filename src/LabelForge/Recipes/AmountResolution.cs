using System.Collections.Immutable;
using LabelForge.Measures;

namespace LabelForge.Recipes;

/// <summary>Turns amounts written in any unit into exact masses.</summary>
internal static class AmountResolution
{
    public static (ImmutableArray<BatchLine> Lines, Mass Total) Resolve(Workshop workshop, ImmutableArray<MaterialUse> uses, string file)
    {
        var twice = uses.GroupBy(u => u.Material).FirstOrDefault(g => g.Count() > 1);
        if (twice is not null)
            throw Refuse(file, twice.Last().Line, $"\"{twice.Key}\" is used twice.", "Write one line with the whole amount.");
        var materials = uses.ToDictionary(u => u.Material, u => workshop.Material(u.Material, file, u.Line));
        foreach (var use in uses.Where(u => materials[u.Material].Kind == MaterialKind.Packaging))
            throw Refuse(file, use.Line, $"\"{use.Material}\" is packaging, which is not part of what is inside.", "Leave it out of the materials that are mixed.");

        // Each mass is a figure of grams plus a share of the batch: grams + share * total.
        var known = new Dictionary<string, (decimal Grams, decimal OfBatch)>();
        var waiting = uses.ToList();
        while (waiting.Count > 0)
        {
            var ready = waiting.Where(u => IsReady(u, known, uses, file)).ToArray();
            if (ready.Length == 0)
                throw Refuse(file, waiting[0].Line, $"The amounts refer to each other in a circle: {string.Join(", ", waiting.Select(u => u.Material))}.",
                    "Give at least one of them a mass or a volume.");
            foreach (var use in ready)
                known[use.Material] = InGrams(use, materials[use.Material], known, file);
            waiting.RemoveAll(ready.Contains);
        }

        var shares = known.Values.Sum(v => v.OfBatch);
        var grams = known.Values.Sum(v => v.Grams);
        if (shares >= 1 || grams == 0)
            throw Refuse(file, uses[0].Line, "The shares of the batch leave nothing for the rest.", "Give at least one material a mass or a volume, and keep the shares of batch below 100 % together.");
        var total = grams / (1 - shares);
        var lines = uses.Select(u =>
        {
            var (own, ofBatch) = known[u.Material];
            return new BatchLine(materials[u.Material], Mass.FromGrams(own + ofBatch * total), u.Amount);
        }).ToImmutableArray();
        return (lines, Mass.FromGrams(total));
    }

    private static bool IsReady(MaterialUse use, Dictionary<string, (decimal, decimal)> known, ImmutableArray<MaterialUse> uses, string file)
    {
        if (use.Amount.Of is not { } of || of == "batch")
            return true;
        return uses.Any(u => u.Material == of)
            ? known.ContainsKey(of)
            : throw Refuse(file, use.Line, $"\"{use.Amount.Figure} % of {of}\" names something that this recipe does not use.", "Write % of batch, or % of the id of a material above.");
    }

    private static (decimal Grams, decimal OfBatch) InGrams(MaterialUse use, Material material, Dictionary<string, (decimal Grams, decimal OfBatch)> known, string file)
    {
        var amount = use.Amount;
        if (amount.IsMass)
            return (amount.AsMass().Grams, 0);
        if (amount.IsVolume)
        {
            return material.GramsPerMillilitre is { } density
                ? (amount.AsVolume(material.DropsPerMillilitre).Millilitres * density, 0)
                : throw Refuse(file, use.Line, $"\"{use.Material}\" is measured by volume, but nothing says how heavy it is.",
                    $"Weigh it and write grams, or add its density to materials/{use.Material}.yaml: density: 0.95 g/mL");
        }
        var share = amount.Figure / 100;
        if (amount.Of == "batch")
            return (0, share);
        var (grams, ofBatch) = known[amount.Of!];
        return (grams * share, ofBatch * share);
    }

    private static InputException Refuse(string file, int line, string wrong, string write) => new(new Problem(file, line, wrong, write));
}
