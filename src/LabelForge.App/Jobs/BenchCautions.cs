using LabelForge.Papers;
using LabelForge.Recipes.Saponification;

namespace LabelForge.Print.Jobs;

/// <summary>The usual cautions of the bench for what goes into a batch: common practice. The
/// supplier's safety data sheets say more, and go before these.</summary>
public static class BenchCautions
{
    /// <summary>One caution each, the gravest not necessarily first; never none.</summary>
    public static ImmutableArray<string> Of(Workshop workshop, BatchFormula batch, PaperWords? words = null)
    {
        words ??= PaperWords.English;
        var kinds = batch.Lines.Select(l => l.Material.Kind).ToHashSet();
        var cautions = ImmutableArray.CreateBuilder<string>();
        if (kinds.Contains(MaterialKind.Base) || kinds.Contains(MaterialKind.Oil))
            cautions.Add(words["caution-hot"]);
        if (kinds.Contains(MaterialKind.Fragrance))
            cautions.Add(words["caution-fragrance"]);
        if (LyeCautions.Apply(workshop, batch))
            cautions.AddRange(LyeCautions.In(words));
        if (kinds.Contains(MaterialKind.Colourant))
            cautions.Add(words["caution-powder"]);
        cautions.Add(words["caution-sheets"]);
        return cautions.ToImmutable();
    }
}
