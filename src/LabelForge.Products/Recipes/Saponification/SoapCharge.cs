using LabelForge.Ingredients;

namespace LabelForge.Recipes.Saponification;

/// <summary>Something in a batch that takes up alkali.</summary>
/// <param name="Material">The material.</param>
/// <param name="Name">Its name in the dictionary.</param>
/// <param name="Grams">How much of it.</param>
/// <param name="Value">What it takes up, mg KOH/g.</param>
/// <param name="IsFromCertificate">Whether the value is the material's own, not the dictionary's.</param>
/// <param name="Soap">What it is and what its soaps are called.</param>
public sealed record Fat(Material Material, string Name, decimal Grams, SaponificationValue Value, bool IsFromCertificate, SoapEntry Soap)
{
    /// <summary>Moles of alkali it takes up if its value is this, mg KOH/g.</summary>
    public decimal Moles(decimal koh) => Grams * koh / 1000 / MolarMass.PotassiumHydroxide;
}

/// <summary>Alkali in a batch.</summary>
/// <param name="Material">The material that brings it.</param>
/// <param name="Alkali">Which alkali.</param>
/// <param name="Grams">How much of the material.</param>
/// <param name="Purity">How much of the material is alkali; the rest is counted as water.</param>
/// <param name="IsPurityKnown">Whether the purity is written; else the material counts as all alkali.</param>
public sealed record Lye(Material Material, Alkali Alkali, decimal Grams, Share Purity, bool IsPurityKnown)
{
    /// <summary>Moles of alkali.</summary>
    public decimal Moles => Grams * Purity.Fraction / Alkali.MolarMass;

    /// <summary>What is not alkali, in grams.</summary>
    public decimal Rest => Grams * (1 - Purity.Fraction);
}

/// <summary>Something that comes with the oils and takes up no alkali, such as the tocopherol that keeps one.</summary>
public sealed record Bystander(string Name, decimal Grams);

/// <summary>What a batch brings to the making of soap: fats, lye, and what only stands by.</summary>
public sealed record SoapCharge(ImmutableArray<Fat> Fats, ImmutableArray<Lye> Lyes, ImmutableArray<Bystander> Bystanders)
{
    /// <summary>The mass of everything counted here, in grams.</summary>
    public decimal Grams => Fats.Sum(f => f.Grams) + Lyes.Sum(l => l.Grams) + Bystanders.Sum(b => b.Grams);

    /// <summary>Moles of alkali there are.</summary>
    public decimal AlkaliMoles => Lyes.Sum(l => l.Moles);

    /// <summary>Moles of alkali that the fats take up at the least, the middle or the most of their values.</summary>
    public decimal Demand(Func<SaponificationValue, decimal> at) => Fats.Sum(f => f.Moles(at(f.Value)));

    /// <summary>Moles of alkali that acids which are no fats take up; no superfat is counted on it.</summary>
    public decimal PlainAcidDemand(Func<SaponificationValue, decimal> at) =>
        Fats.Where(f => f.Soap.Kind == FatKind.PlainAcid).Sum(f => f.Moles(at(f.Value)));

    /// <summary>Reads the oils and the lye of a batch, what the shop mixed itself opened up; null where no soap is made in it.</summary>
    /// <exception cref="InputException">A lye or an oil does not say what is needed to count it.</exception>
    public static SoapCharge? In(Workshop workshop, BatchFormula batch)
    {
        var bought = ExplodedFormula.Of(workshop, batch);
        if (!bought.Any(f => f.Material.Kind == MaterialKind.Lye))
            return null;
        var charge = Of(bought.Select(f => (f.Material, f.Share.Fraction * batch.Total.Grams)), workshop.Dictionary);
        return charge.Fats.All(f => f.Soap.Kind == FatKind.PlainAcid) ? null : charge;
    }

    /// <summary>Reads so many grams of bought materials.</summary>
    /// <exception cref="InputException">A lye or an oil does not say what is needed to count it.</exception>
    public static SoapCharge Of(IEnumerable<(Material Material, decimal Grams)> bought, IngredientDictionary dictionary)
    {
        var fats = ImmutableArray.CreateBuilder<Fat>();
        var lyes = ImmutableArray.CreateBuilder<Lye>();
        var bystanders = ImmutableArray.CreateBuilder<Bystander>();
        foreach (var (material, grams) in bought.Where(b => TakesPart(b.Material)))
        {
            if (material.Kind == MaterialKind.Lye)
            {
                lyes.Add(LyeReading.Of(material, grams, dictionary));
                continue;
            }
            var (fat, besides) = FatReading.Of(material, grams, dictionary);
            if (fat is not null)
                fats.Add(fat);
            bystanders.AddRange(besides);
        }
        return new SoapCharge(fats.ToImmutable(), lyes.ToImmutable(), bystanders.ToImmutable());
    }

    /// <summary>Whether a bought material is counted here: lyes, oils, and whatever states its own saponification value.</summary>
    public static bool TakesPart(Material material) =>
        material.Kind is MaterialKind.Lye or MaterialKind.Oil || material.Saponification is not null;
}
