namespace LabelForge.Recipes.Saponification;

/// <summary>How far fats react with the alkali there is, with each fat's saponification value at one place of its range.</summary>
internal sealed class Reaction
{
    // Who has the alkali first: plain acids are far stronger than fatty acids, and these than any ester.
    private static readonly FatKind[][] Turns = [[FatKind.PlainAcid], [FatKind.Acid], [FatKind.Triglyceride, FatKind.Wax]];

    private readonly Func<Fat, decimal> _value;
    private readonly Dictionary<FatKind, decimal> _part = [];
    private readonly Dictionary<FatKind, decimal> _found = [];

    /// <summary>Lets acids have the alkali first, then shares what is left over the oils and waxes alike.</summary>
    public Reaction(SoapCharge charge, Func<Fat, decimal> value)
    {
        _value = value;
        var left = charge.AlkaliMoles;
        foreach (var turn in Turns)
        {
            var demand = charge.Fats.Where(f => turn.Contains(f.Soap.Kind)).Sum(Demand);
            foreach (var kind in turn)
                (_part[kind], _found[kind]) = (demand == 0 ? 0 : Math.Min(1, left / demand), left);
            left = Math.Max(0, left - demand);
        }
        Spare = left;
        Glycerin = charge.Fats.Where(f => f.Soap.Kind == FatKind.Triglyceride).Sum(Moles) * MolarMass.Glycerin / 3;
    }

    /// <summary>Moles of alkali that nothing took up.</summary>
    public decimal Spare { get; }

    /// <summary>Grams of glycerin.</summary>
    public decimal Glycerin { get; }

    /// <summary>What part of a fat reacts, from 0 to 1.</summary>
    public decimal Part(Fat fat) => _part[fat.Soap.Kind];

    /// <summary>Moles of alkali that a fat takes up.</summary>
    public decimal Moles(Fat fat) => Part(fat) * Demand(fat);

    /// <summary>Moles of alkali that those before its kind left.</summary>
    public decimal Found(Fat fat) => _found[fat.Soap.Kind];

    /// <summary>Whether two fats have their turn at the alkali together.</summary>
    public static bool AreOfOneTurn(Fat one, Fat other) => Turns.Any(t => t.Contains(one.Soap.Kind) && t.Contains(other.Soap.Kind));

    private decimal Demand(Fat fat) => fat.Moles(_value(fat));
}
