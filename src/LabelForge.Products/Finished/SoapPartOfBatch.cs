using System.Collections.Immutable;
using LabelForge.Composition;
using LabelForge.Measures;
using LabelForge.Recipes;
using LabelForge.Recipes.Saponification;

namespace LabelForge.Declarations;

/// <summary>Soap made in a batch as the composition room wants it: one material whose parts are known within bounds.</summary>
internal static class SoapPartOfBatch
{
    private const string Name = "the soap made in this batch";

    /// <summary>Proves the order of a batch in which the oils and lye stand as what came of them.</summary>
    /// <param name="workshop">Where the materials are described.</param>
    /// <param name="batch">What went in.</param>
    /// <param name="rest">The other materials.</param>
    /// <param name="losses">What left.</param>
    /// <exception cref="InputException">There are no oils or no lye, or a soap has no standard name known here.</exception>
    public static CompositionProof Prove(Workshop workshop, BatchFormula batch, ImmutableArray<MaterialPart> rest, ImmutableArray<Adjustment> losses)
    {
        var recipe = batch.Recipe;
        var charge = SoapCharge.In(workshop, batch) ?? throw new InputException(new Problem(recipe.File, recipe.DeclareAsLine,
            "Nothing is formed in this batch: it has no lye, or no oil for it.", "Write declare as: charged, or leave the line out."));
        var made = SoapMade.Of(charge);
        if (made.FirstOrDefault(s => !s.HasStandardName) is { } unnamed)
        {
            throw new InputException(new Problem(recipe.File, recipe.DeclareAsLine, $"No standard name is known here for the {unnamed.Name}.",
                $"Write declare as: charged; or find the name and write it in {unnamed.Of!.Material.File}, for example: soap name: Sodium Olivate"));
        }
        return Prover.Prove([Part(made, charge.Grams, batch), .. rest], losses).Knowing(IsCertain, Ask);

        // What finds no lye is shared over the oils in proportion to their mass, so of two oils the greater leaves more,
        // however much is left of both.
        bool IsCertain(UnprovenPair pair) => Left(pair.First) is { } first && Left(pair.Second) is { } second && first >= second;

        decimal? Left(string name) =>
            made.Where(s => s.Name == name).ToArray() is { Length: > 0 } all
            && all.All(s => s is { Part: SoapPart.Unreacted, Of.Soap.Kind: not FatKind.Acid })
            && !rest.Any(r => r.Constituents.Any(c => c.Name == name))
                ? all.Sum(s => s.Of!.Grams)
                : null;
    }

    private static MaterialPart Part(ImmutableArray<SoapSubstance> made, decimal whole, BatchFormula batch)
    {
        return new MaterialPart(Name, whole / batch.Total.Grams, ListedOrder.None,
        [
            .. made.GroupBy(s => s.Name).Select(g => new Constituent(
                g.Key, new ShareRange(Share(g.Sum(s => s.Low)), Share(g.Sum(s => s.High))), false)),
        ]);

        Share Share(decimal grams) => Measures.Share.FromFraction(Math.Clamp(grams / whole, 0, 1));
    }

    // Questions about the soap go to those who can answer: the oils' certificates say their saponification values.
    private static Ask Ask(UnprovenPair pair) => pair.Ask.Material != Name ? pair.Ask : pair.Ask with
    {
        Material = "the oils",
        TurnsAt = null,
        OtherFigure = "the saponification value on the certificate, and write it as saponification: in each material",
    };
}
