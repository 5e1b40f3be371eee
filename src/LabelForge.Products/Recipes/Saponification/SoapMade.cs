using System.Collections.Immutable;

namespace LabelForge.Recipes.Saponification;

/// <summary>What a substance is in soap that was made.</summary>
public enum SoapPart
{
    /// <summary>The soap of a fat.</summary>
    Soap,

    /// <summary>Glycerin that came of triglycerides.</summary>
    Glycerin,

    /// <summary>Fat that found no alkali.</summary>
    Unreacted,

    /// <summary>Water that came with the lye or of fatty acids.</summary>
    Water,

    /// <summary>Alkali that found no fat.</summary>
    SpareAlkali,

    /// <summary>What came with the oils and takes no part.</summary>
    Bystander,
}

/// <summary>A substance in soap that was made, in grams for the batch.</summary>
/// <param name="Name">Its name in the dictionary; where no standard name is known, "soap of" its fat.</param>
/// <param name="Part">What it is.</param>
/// <param name="Of">The fat it comes of; null where it comes of several.</param>
/// <param name="Low">No less than this, whatever saponification values within their ranges the fats have.</param>
/// <param name="Middle">With every fat at the middle of its range; these sum to what went in.</param>
/// <param name="High">No more than this.</param>
public sealed record SoapSubstance(string Name, SoapPart Part, Fat? Of, decimal Low, decimal Middle, decimal High)
{
    /// <summary>Whether the name is a standard one.</summary>
    public bool HasStandardName { get; init; } = true;
}

/// <summary>What comes of fats and lye once the alkali is used up.</summary>
/// <remarks>
/// <para>
/// An oil counts as pure triglyceride: three moles of alkali give three of soap and one of glycerin, and no water. The
/// little free acid of an edible oil (Codex CXS 210 allows an acid value of 0.6 mg KOH/g refined, 4.0 virgin) would give
/// as little water in place of glycerin. Free fatty acids go first and completely: one mole of alkali, one of soap, one of
/// water. Waxes give soap and fatty alcohols, which stay together under the soap's name, and no glycerin.
/// </para>
/// <para>
/// What finds no alkali is shared over the oils and waxes in proportion to their mass: each is saponified to the same part.
/// In truth a little of it is half-split fat. Where there are two alkalis, each oil takes of both as there are moles.
/// </para>
/// <para>
/// The part that reacts is min(1, alkali / demand), so a fat's alkali rises with its own value and falls with the others',
/// and the bounds below follow from the ends of the ranges. They hold for every value in between; they may be wider than the
/// very least and most, since the two terms of a soap's mass are bounded apart.
/// </para>
/// </remarks>
public static class SoapMade
{
    /// <summary>Grams that count as none: what decimal division leaves of nothing.</summary>
    private const decimal Nothing = 1e-12m;

    /// <summary>The substances, soaps first; the middles sum to the mass of what went in.</summary>
    public static ImmutableArray<SoapSubstance> Of(SoapCharge charge)
    {
        var least = new Reaction(charge, f => f.Value.Low);
        var middle = new Reaction(charge, f => f.Value.Middle);
        var most = new Reaction(charge, f => f.Value.High);
        var all = ImmutableArray.CreateBuilder<SoapSubstance>();
        foreach (var fat in charge.Fats)
            all.AddRange(Soaps(charge, fat));
        Add("Glycerin", SoapPart.Glycerin, GlycerinLow(), middle.Glycerin, GlycerinHigh());
        foreach (var fat in charge.Fats)
            Add(fat.Name, SoapPart.Unreacted, fat.Grams * (1 - least.Part(fat)), fat.Grams * (1 - middle.Part(fat)), fat.Grams * (1 - most.Part(fat)), fat);
        var rest = charge.Lyes.Sum(l => l.Rest);
        var acids = charge.Fats.Where(f => f.Soap.Kind == FatKind.Acid).ToArray();
        Add("Water", SoapPart.Water,
            rest + acids.Sum(f => AlkaliRange.Of(charge, f).Low) * MolarMass.Water,
            rest + acids.Sum(middle.Moles) * MolarMass.Water,
            rest + acids.Sum(f => AlkaliRange.Of(charge, f).High) * MolarMass.Water);
        foreach (var group in charge.Lyes.Where(l => l.Moles > 0).GroupBy(l => l.Alkali))
        {
            var part = group.Sum(l => l.Moles) / charge.AlkaliMoles * group.Key.MolarMass;
            Add(group.Key.Name, SoapPart.SpareAlkali, most.Spare * part, middle.Spare * part, least.Spare * part);
        }
        foreach (var bystander in charge.Bystanders)
            Add(bystander.Name, SoapPart.Bystander, bystander.Grams, bystander.Grams, bystander.Grams);
        return all.ToImmutable();

        void Add(string name, SoapPart part, decimal low, decimal grams, decimal high, Fat? of = null)
        {
            if (high > Nothing)
                all.Add(new SoapSubstance(name, part, of, low, grams, high));
        }

        // With nothing but triglycerides the glycerin is a third of the alkali used, whichever oil used it.
        decimal GlycerinLow() => Third(charge.Fats.All(IsOil)
            ? Math.Min(charge.AlkaliMoles, charge.Demand(v => v.Low))
            : charge.Fats.Where(IsOil).Sum(f => AlkaliRange.Of(charge, f).Low));

        decimal GlycerinHigh() => Third(Math.Min(charge.AlkaliMoles, charge.Fats.All(IsOil)
            ? charge.Demand(v => v.High)
            : charge.Fats.Where(IsOil).Sum(f => AlkaliRange.Of(charge, f).High)));
    }

    private static IEnumerable<SoapSubstance> Soaps(SoapCharge charge, Fat fat)
    {
        var (least, middle, most) = (new Reaction(charge, f => f.Value.Low), new Reaction(charge, f => f.Value.Middle), new Reaction(charge, f => f.Value.High));
        var alkali = AlkaliRange.Of(charge, fat);
        foreach (var group in charge.Lyes.GroupBy(l => l.Alkali))
        {
            var part = charge.AlkaliMoles == 0 ? 0 : group.Sum(l => l.Moles) / charge.AlkaliMoles;
            var gain = group.Key.MolarMass - Leaves(fat.Soap.Kind);
            var name = fat.Soap.With(group.Key);
            if (part > 0)
            {
                yield return new SoapSubstance(name ?? $"{group.Key.Name.Split(' ')[0]} soap of {fat.Name}", SoapPart.Soap, fat,
                    part * (fat.Grams * most.Part(fat) + alkali.Low * gain),
                    part * (fat.Grams * middle.Part(fat) + middle.Moles(fat) * gain),
                    part * (fat.Grams * least.Part(fat) + alkali.High * gain))
                {
                    HasStandardName = name is not null,
                };
            }
        }
    }

    // What one mole of alkali drives out of the fat.
    private static decimal Leaves(FatKind kind) => kind switch
    {
        FatKind.Triglyceride => MolarMass.Glycerin / 3,
        FatKind.Acid => MolarMass.Water,
        _ => 0,
    };

    private static decimal Third(decimal moles) => moles * MolarMass.Glycerin / 3;

    private static bool IsOil(Fat fat) => fat.Soap.Kind == FatKind.Triglyceride;
}
