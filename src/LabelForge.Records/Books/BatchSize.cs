namespace LabelForge.Records.Books;

/// <summary>How large a batch is to be: so many pieces, so much mass, or the moulds at hand.</summary>
public static partial class BatchSize
{
    private const decimal HeaviestGrams = 100_000_000m;

    /// <summary>The recipe scaled to a number of pieces.</summary>
    public static BatchFormula ToPieces(Workshop workshop, Recipe recipe, int pieces)
    {
        if (pieces is < 1 or > 1_000_000)
            throw new InputException("pieces.not-a-number", ("pieces", pieces));
        var batch = BatchFormula.Of(workshop, recipe);
        return Scaled(workshop, batch, (decimal)pieces / recipe.Pieces, pieces);
    }

    /// <summary>The recipe scaled to a mass weighed in; as many whole pieces as what is left of it makes.</summary>
    public static BatchFormula ToMass(Workshop workshop, Recipe recipe, Mass mass)
    {
        var batch = BatchFormula.Of(workshop, recipe);
        var factor = mass.Grams / batch.Total.Grams;
        var pieces = Math.Floor(mass.Grams * batch.Left / batch.PerPiece.Grams);
        return pieces is > 0 and <= 1_000_000 && mass.Grams <= HeaviestGrams
            ? Scaled(workshop, batch, factor, (int)pieces)
            : throw new InputException("batch.no-pieces", ("mass", mass), ("recipe", recipe.Name),
                ("grams", $"{batch.Total.Grams / recipe.Pieces:0.#}"));
    }

    /// <summary>The recipe scaled to fill moulds, written as <c>6 x 113 g, 12 x 85 g</c>.</summary>
    public static BatchFormula ToMoulds(Workshop workshop, Recipe recipe, string moulds)
    {
        var filled = moulds.Split(',').Select(part =>
        {
            var match = Mould().Match(part.Trim());
            var mass = match.Success ? Amount.Parse(match.Groups["mass"].Value) : default;
            return match.Success && mass is { IsValue: true, Value.IsMass: true } && mass.Value.AsMass().Grams is > 0 and <= 100_000m
                && PlainFigure.Whole(match.Groups["count"].Value) is > 0 and <= 100_000 and var count
                ? (Count: count, Grams: count * mass.Value.AsMass().Grams)
                : throw new InputException("moulds.unreadable", ("part", part.Trim()));
        }).ToArray();
        var batch = BatchFormula.Of(workshop, recipe);
        return Scaled(workshop, batch, filled.Sum(f => f.Grams) / batch.Total.Grams, filled.Sum(f => f.Count));
    }

    /// <summary>The recipe with other masses in place of its own: what was really weighed.</summary>
    /// <remarks>What leaves the batch (a yield, losses) is taken to leave in the same proportion.</remarks>
    public static BatchFormula Of(Workshop workshop, Recipe recipe, IEnumerable<(string Material, decimal Grams)> masses, int pieces)
    {
        var weighed = masses.Where(m => m.Grams > 0).ToArray();
        var changed = recipe with
        {
            Pieces = pieces,
            Materials = [.. weighed.Select(m => new MaterialUse(m.Material, new Amount(m.Grams, AmountUnit.Gram, null), 0))],
        };
        if (recipe.Yield is not null || recipe.Losses.Any(l => l.Amount.IsMass))
        {
            var factor = weighed.Sum(m => m.Grams) / BatchFormula.Of(workshop, recipe).Total.Grams;
            changed = changed with
            {
                Yield = recipe.Yield is { } yield ? yield with { Mass = yield.Mass * factor } : null,
                Losses = [.. recipe.Losses
                    .Select(l => l.Amount.IsMass
                        ? l with { Amount = new Amount(l.Amount.AsMass().Grams * factor, AmountUnit.Gram, null) }
                        : l)],
            };
        }
        return BatchFormula.Of(workshop, changed);
    }

    private static BatchFormula Scaled(Workshop workshop, BatchFormula batch, decimal factor, int pieces) =>
        Of(workshop, batch.Recipe,
            batch.Lines.GroupBy(l => l.Material.Id).Select(g => (g.Key, Math.Round(g.Sum(l => l.Mass.Grams) * factor, 6))), pieces);

    [GeneratedRegex(@"^(?<count>[0-9]{1,6})\s*(x|×|of)\s*(?<mass>.+)$", RegexOptions.IgnoreCase)]
    private static partial Regex Mould();
}
