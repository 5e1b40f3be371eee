using LabelForge.Composition;
using LabelForge.Ingredients;
using LabelForge.Recipes;
using LabelForge.Recipes.Saponification;

namespace LabelForge.Declarations;

/// <summary>Soap made in a batch as the composition room wants it: one material whose parts are known within bounds.</summary>
internal sealed class SoapPartOfBatch
{
    private const string Name = "the soap made in this batch";

    private readonly ImmutableArray<SoapSubstance> _made;
    private readonly decimal _grams;
    private readonly decimal _share;

    private SoapPartOfBatch(ImmutableArray<SoapSubstance> made, decimal grams, decimal share) =>
        (_made, _grams, _share) = (made, grams, share);

    /// <summary>Works out what came of the oils and the lye.</summary>
    /// <exception cref="InputException">There are no oils or no lye, or a soap has no standard name known here.</exception>
    public static SoapPartOfBatch Of(FinishedProduct product)
    {
        var recipe = product.Batch.Recipe;
        var charge = product.Soap ?? throw new InputException(recipe.File, recipe.DeclareAsLine, "finished.nothing-formed");
        var made = SoapMade.Of(charge);
        if (made.FirstOrDefault(s => !s.HasStandardName) is { } unnamed)
        {
            throw new InputException(recipe.File, recipe.DeclareAsLine, "finished.no-standard-name", ("unnamed", unnamed.Name),
                ("file", unnamed.Of!.Material.File));
        }
        return new SoapPartOfBatch(made, charge.Grams, charge.Grams / product.Batch.Total.Grams);
    }

    /// <summary>What was made as one material.</summary>
    public MaterialPart Part(NameIdentity identity)
    {
        return new MaterialPart(Name, _share, ListedOrder.None,
        [
            .. _made.GroupBy(s => identity.KeyOf(s.Name), StringComparer.Ordinal).Select(g => new Constituent(
                g.Key, new ShareRange(Share(g.Sum(s => s.Low)), Share(g.Sum(s => s.High))), false)),
        ]);

        Share Share(decimal grams) => Measures.Share.FromFraction(Math.Clamp(grams / _grams, 0, 1));
    }

    /// <summary>The proof with what is known of the oils that are left: of two, the greater leaves more.</summary>
    /// <param name="proof">What the bounds prove.</param>
    /// <param name="others">The other materials, their constituents under the names on the label.</param>
    /// <param name="nameOf">The name on the label.</param>
    public CompositionProof Known(CompositionProof proof, ImmutableArray<MaterialPart> others, Func<string, string> nameOf)
    {
        return proof.Knowing(IsCertain, Ask);

        // What finds no lye is shared over the oils in proportion to their mass, so of two oils the greater leaves more,
        // however much is left of both.
        bool IsCertain(UnprovenPair pair) => Left(pair.First) is { } first && Left(pair.Second) is { } second && first >= second;

        decimal? Left(string name) =>
            _made.Where(s => nameOf(s.Name) == name).ToArray() is { Length: > 0 } all
            && all.All(s => s is { Part: SoapPart.Unreacted, Of.Soap.IsAcid: false })
            && !others.Any(r => r.Constituents.Any(c => c.Name == name))
                ? all.Sum(s => s.Of!.Grams)
                : null;
    }

    // Questions about the soap go to those who can answer: the oils' certificates say their saponification values.
    private static Ask Ask(UnprovenPair pair) => pair.Ask.Material != Name ? pair.Ask : pair.Ask with
    {
        Material = "the oils",
        TurnsAt = null,
        OtherFigure = "the saponification value on the certificate, and write it as saponification: in each material",
    };
}
