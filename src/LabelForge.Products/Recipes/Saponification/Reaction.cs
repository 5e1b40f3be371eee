namespace LabelForge.Recipes.Saponification;

/// <summary>How far fats react with the alkali there is, with each fat's saponification value at one place of its range.</summary>
internal sealed class Reaction
{
    private readonly Func<Fat, decimal> _value;
    private readonly decimal _acidPart;
    private readonly decimal _fatPart;

    /// <summary>Lets acids have the alkali first, then shares what is left over the oils and waxes alike.</summary>
    public Reaction(SoapCharge charge, Func<Fat, decimal> value)
    {
        _value = value;
        var acids = charge.Fats.Where(IsAcid).Sum(Demand);
        var fats = charge.Fats.Where(f => !IsAcid(f)).Sum(Demand);
        var alkali = charge.AlkaliMoles;
        _acidPart = Part(alkali, acids);
        var left = Math.Max(0, alkali - acids);
        _fatPart = Part(left, fats);
        Spare = Math.Max(0, left - fats);
        Glycerin = charge.Fats.Where(f => f.Soap.Kind == FatKind.Triglyceride).Sum(Moles) * MolarMass.Glycerin / 3;
    }

    /// <summary>Moles of alkali that nothing took up.</summary>
    public decimal Spare { get; }

    /// <summary>Grams of glycerin.</summary>
    public decimal Glycerin { get; }

    /// <summary>What part of a fat reacts, from 0 to 1.</summary>
    public decimal Part(Fat fat) => IsAcid(fat) ? _acidPart : _fatPart;

    /// <summary>Moles of alkali that a fat takes up.</summary>
    public decimal Moles(Fat fat) => Part(fat) * Demand(fat);

    private static decimal Part(decimal alkali, decimal demand) => demand == 0 ? 0 : Math.Min(1, alkali / demand);

    private static bool IsAcid(Fat fat) => fat.Soap.Kind == FatKind.Acid;

    private decimal Demand(Fat fat) => fat.Moles(_value(fat));
}

/// <summary>Between what a fat takes up at the least and at the most, moles, whatever values within their ranges the fats have.</summary>
internal readonly record struct AlkaliRange(decimal Low, decimal High)
{
    /// <summary>
    /// The range. A fat takes least where its own value is least and the others' most, for they draw alkali away from it,
    /// the acids before the rest; and the other way round.
    /// </summary>
    public static AlkaliRange Of(SoapCharge charge, Fat fat) => new(
        new Reaction(charge, f => ReferenceEquals(f, fat) ? f.Value.Low : f.Value.High).Moles(fat),
        new Reaction(charge, f => ReferenceEquals(f, fat) ? f.Value.High : f.Value.Low).Moles(fat));
}
