using System.Collections.Immutable;
using LabelForge.Recipes;
using LabelForge.Recipes.Saponification;

namespace LabelForge.Print.Jobs;

/// <summary>The usual cautions of the bench for what goes into a batch: common practice. The supplier's safety data sheets say more, and go before these.</summary>
public static class BenchCautions
{
    /// <summary>One caution each, the gravest not necessarily first; never none.</summary>
    public static ImmutableArray<string> Of(Workshop workshop, BatchFormula batch)
    {
        var kinds = batch.Lines.Select(l => l.Material.Kind).ToHashSet();
        var cautions = ImmutableArray.CreateBuilder<string>();
        if (kinds.Contains(MaterialKind.Base) || kinds.Contains(MaterialKind.Oil))
            cautions.Add("Melted base, oil and wax burn skin and can catch fire. Never leave them on the heat alone; keep water away from hot oil; wear gloves and long sleeves.");
        if (kinds.Contains(MaterialKind.Fragrance))
            cautions.Add("Undiluted fragrance irritates skin and eyes. Wear gloves and goggles, air the room, and add it below its flash point.");
        if (LyeCautions.Apply(workshop, batch))
            cautions.AddRange(LyeCautions.All);
        if (kinds.Contains(MaterialKind.Colourant))
            cautions.Add("Do not breathe in loose powder.");
        cautions.Add("Read each supplier's safety data sheet first. Write down the lot of every bottle used.");
        return cautions.ToImmutable();
    }
}
