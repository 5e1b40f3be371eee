namespace LabelForge.Composition;

/// <summary>Proofs with the order free at and below 1 %, as every market has it.</summary>
internal static class UsualLines
{
    public static OnePercentLines Both { get; } = new(0.01m, 0.01m);

    extension(Prover)
    {
        public static CompositionProof Prove(IReadOnlyList<MaterialPart> parts, IReadOnlyList<Adjustment>? losses = null,
            IReadOnlyList<NamedBesides>? besides = null) =>
            Prover.Prove(parts, Both, losses, besides);
    }

    extension(IngredientAccount)
    {
        public static System.Collections.Immutable.ImmutableArray<IngredientAccount> Of(IReadOnlyList<MaterialPart> parts,
            IReadOnlyList<Adjustment>? losses = null) =>
            IngredientAccount.Of(parts, Both, losses);
    }
}
