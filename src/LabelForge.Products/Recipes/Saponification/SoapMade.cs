using LabelForge.Ingredients;

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
/// as little water in place of glycerin. Acids go first and completely, plain ones (citric, lactic, acetic) before fatty ones:
/// one mole of alkali, one of soap or salt (by equivalents), one of water. Waxes give soap and
/// fatty alcohols, which stay together under the soap's name, and no glycerin.
/// </para>
/// <para>
/// What finds no alkali is shared over the oils and waxes in proportion to their mass: each is saponified to the same part.
/// In truth a little of it is half-split fat. Where there are two alkalis, each oil takes of both as there are moles.
/// </para>
/// <para>
/// The part that reacts is min(1, alkali / demand), so it falls with every value. What a fat gives rises with its own value
/// until the alkali is used up and from there runs one way, and falls with the others': so the least and the most lie at the
/// ends of the ranges, or where the alkali is just used up. The bounds below are therefore the very least and most of each
/// substance. Of several at once they say less: where one is at its most another may not be.
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
            Add(fat.Name, SoapPart.Unreacted, fat.Grams * (1 - least.Part(fat)), fat.Grams * (1 - middle.Part(fat)),
                fat.Grams * (1 - most.Part(fat)), fat);
        var rest = charge.Lyes.Sum(l => l.Rest);
        Add("Water", SoapPart.Water, rest + WaterOfAcids(v => v.Low), rest + WaterOfAcids(v => v.Middle),
            rest + WaterOfAcids(v => v.High));
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
            // Where nothing is loose the three are one figure, divided in three ways.
            if (high > Nothing)
                all.Add(new SoapSubstance(name, part, of, Math.Min(low, grams), grams, Math.Max(high, grams)));
        }

        // The acids have what alkali they need, as far as it goes, and give a mole of water for each.
        decimal WaterOfAcids(Func<SaponificationValue, decimal> at) =>
            Math.Min(charge.AlkaliMoles, charge.Fats.Where(f => f.Soap.IsAcid).Sum(f => f.Moles(at(f.Value)))) * MolarMass.Water;

        // Least where the oils take up least of what acids and waxes leave them, and these leave least.
        decimal GlycerinLow() => new Reaction(charge, f => IsOil(f) ? f.Value.Low : f.Value.High).Glycerin;

        decimal GlycerinHigh() => new Reaction(charge, f => IsOil(f) ? f.Value.High : f.Value.Low).Glycerin;
    }

    private static IEnumerable<SoapSubstance> Soaps(SoapCharge charge, Fat fat)
    {
        foreach (var group in charge.Lyes.GroupBy(l => l.Alkali))
        {
            var part = charge.AlkaliMoles == 0 ? 0 : group.Sum(l => l.Moles) / charge.AlkaliMoles;
            if (part <= 0)
                continue;
            var gain = group.Key.MolarMass - Leaves(fat.Soap.Kind);
            var name = fat.Soap.With(group.Key);
            var most = new Reaction(charge, f => f.Value.Low);
            // The value at which the alkali that the others leave at the least is just used up.
            var others = charge.Fats.Where(f => !ReferenceEquals(f, fat) && Reaction.AreOfOneTurn(f, fat)).Sum(f => f.Moles(f.Value.Low));
            var usedUp = fat.Grams == 0 ? 0 : (most.Found(fat) - others) / fat.Moles(1);
            decimal[] ends = [fat.Value.Low, fat.Value.High];
            var middle = part * Grams(fat.Value.Middle, f => f.Value.Middle);
            yield return new SoapSubstance(name ?? $"{group.Key.Name.Split(' ')[0]} soap of {fat.Name}", SoapPart.Soap, fat,
                Math.Min(middle, part * ends.Min(v => Grams(v, f => f.Value.High))),
                middle,
                Math.Max(middle,
                    part * ends.Append(Math.Clamp(usedUp, fat.Value.Low, fat.Value.High)).Max(v => Grams(v, f => f.Value.Low))))
            {
                HasStandardName = name is not null,
            };

            decimal Grams(decimal own, Func<Fat, decimal> value)
            {
                var reaction = new Reaction(charge, f => ReferenceEquals(f, fat) ? own : value(f));
                return fat.Grams * reaction.Part(fat) + reaction.Moles(fat) * gain;
            }
        }
    }

    // What one mole of alkali drives out of the fat.
    private static decimal Leaves(FatKind kind) => kind switch
    {
        FatKind.Triglyceride => MolarMass.Glycerin / 3,
        FatKind.Acid or FatKind.PlainAcid => MolarMass.Water,
        _ => 0,
    };

    private static bool IsOil(Fat fat) => fat.Soap.Kind == FatKind.Triglyceride;
}
