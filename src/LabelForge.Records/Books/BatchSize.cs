using System.Globalization;
using System.Text.RegularExpressions;
using LabelForge.Measures;
using LabelForge.Recipes;

namespace LabelForge.Records.Books;

/// <summary>How large a batch is to be: so many pieces, so much mass, or the moulds at hand.</summary>
public static partial class BatchSize
{
    /// <summary>The recipe scaled to a number of pieces.</summary>
    public static BatchFormula ToPieces(Workshop workshop, Recipe recipe, int pieces)
    {
        if (pieces is < 1 or > 1_000_000)
            throw new InputException(new Problem(null, 0, $"{pieces} is not a number of pieces.", "Write a whole number above zero: --pieces 18"));
        var batch = BatchFormula.Of(workshop, recipe);
        return Scaled(workshop, batch, (decimal)pieces / recipe.Pieces, pieces);
    }

    /// <summary>The recipe scaled to a mass; as many whole pieces as it makes at the recipe's mass a piece.</summary>
    public static BatchFormula ToMass(Workshop workshop, Recipe recipe, Mass mass)
    {
        var batch = BatchFormula.Of(workshop, recipe);
        var pieces = (int)Math.Floor(mass.Grams / batch.PerPiece.Grams);
        return pieces > 0
            ? Scaled(workshop, batch, mass.Grams / batch.Total.Grams, pieces)
            : throw new InputException(new Problem(null, 0, $"{mass} is less than one piece of {recipe.Name} ({batch.PerPiece.Grams:0.#} g).", "Write a larger mass: --mass \"2 kg\""));
    }

    /// <summary>The recipe scaled to fill moulds, written as <c>6 x 113 g, 12 x 85 g</c>.</summary>
    public static BatchFormula ToMoulds(Workshop workshop, Recipe recipe, string moulds)
    {
        var filled = moulds.Split(',').Select(part =>
        {
            var match = Mould().Match(part.Trim());
            var mass = match.Success ? Amount.Parse(match.Groups["mass"].Value) : default;
            return match.Success && mass is { IsValue: true, Value.IsMass: true } && int.TryParse(match.Groups["count"].Value, NumberStyles.None, CultureInfo.InvariantCulture, out var count) && count > 0
                ? (Count: count, Grams: count * mass.Value.AsMass().Grams)
                : throw new InputException(new Problem(null, 0, $"\"{part.Trim()}\" is not a set of moulds.", "Write how many cavities and what each holds: --moulds \"6 x 113 g, 12 x 3 oz\""));
        }).ToArray();
        var batch = BatchFormula.Of(workshop, recipe);
        return Scaled(workshop, batch, filled.Sum(f => f.Grams) / batch.Total.Grams, filled.Sum(f => f.Count));
    }

    /// <summary>The recipe with other masses in place of its own: what was really weighed.</summary>
    public static BatchFormula Of(Workshop workshop, Recipe recipe, IEnumerable<(string Material, decimal Grams)> masses, int pieces) => BatchFormula.Of(workshop, recipe with
    {
        Pieces = pieces,
        Materials = [.. masses.Where(m => m.Grams > 0).Select(m => new MaterialUse(m.Material, new Amount(m.Grams, AmountUnit.Gram, null), 0))],
    });

    private static BatchFormula Scaled(Workshop workshop, BatchFormula batch, decimal factor, int pieces) =>
        Of(workshop, batch.Recipe, batch.Lines.Select(l => (l.Material.Id, Math.Round(l.Mass.Grams * factor, 6))), pieces);

    [GeneratedRegex(@"^(?<count>\d{1,6})\s*(x|×|of)\s*(?<mass>.+)$", RegexOptions.IgnoreCase)]
    private static partial Regex Mould();
}
