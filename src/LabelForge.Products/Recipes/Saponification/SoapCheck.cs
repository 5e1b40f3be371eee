using LabelForge.Recipes;
using LabelForge.Recipes.Saponification;

namespace LabelForge.Checks;

/// <summary>Checks soap made from oils: whether any lye could be left over, and whether the superfat is what the recipe says.</summary>
public static class SoapCheck
{
    /// <summary>How far the superfat may lie from what the recipe says, as a fraction; common
    /// practice states it in whole percents.</summary>
    private const decimal SuperfatStep = 0.005m;

    /// <summary>Grams of lye that count as none: what decimal division leaves of nothing.</summary>
    private const decimal Nothing = 1e-12m;

    /// <summary>The findings; none for a batch in which no soap is made.</summary>
    /// <exception cref="InputException">A lye or an oil does not say what is needed to count it,
    /// or there is none and the recipe has a superfat.</exception>
    public static IEnumerable<Finding> Find(Workshop workshop, BatchFormula batch)
    {
        var recipe = batch.Recipe;
        if (SoapCharge.In(workshop, batch) is not { } charge)
        {
            if (recipe.Superfat is { } aim)
                throw new InputException(recipe.File, aim.Line, "soap.superfat-of-nothing");
            yield break;
        }
        var superfat = Superfat.Of(charge);
        var rules = workshop.Markets.Every.Rules;
        if (Spare(charge) > Nothing)
            yield return rules["lye.excess"].Find(recipe.File, Excess(charge, superfat), WhatToDo(charge, superfat));
        if (recipe.Superfat is { } written && Math.Abs(superfat.Middle - written.Share.Fraction) > SuperfatStep)
            yield return rules["lye.superfat-differs"].Find(recipe.File, written.Share, Percent(superfat.Middle));
        foreach (var lye in charge.Lyes.Where(l => !l.IsPurityKnown))
            yield return rules["lye.purity-unknown"].Find(recipe.File, lye.Material.Name, lye.Material.File);
    }

    // Judged by the low end of every oil's range: the least alkali that the oils may take up.
    private static string Excess(SoapCharge charge, Superfat superfat)
    {
        var lyes = string.Join(" and ", charge.Lyes.Select(l => l.Material.Name).Distinct());
        var grams = Grams(Spare(charge));
        return superfat.Middle < 0
            ? $"There is more {lyes} than the oils can take up: {Grams(-superfat.Middle * Middle(charge))} too much by the middle of "
                + $"their saponification values, {grams} by the low end. Spare lye burns skin."
            : $"There may be more {lyes} than the oils can take up: by the low end of their "
                + $"saponification values {grams} would be left over. Spare lye burns skin.";
    }

    private static string WhatToDo(SoapCharge charge, Superfat superfat)
    {
        var exact = charge.Fats.All(f => f.Value.Low == f.Value.High);
        // The superfat by the middle at which the low end comes out at nothing, rounded up to a tenth of a percent.
        var safe = 1 - (1 - superfat.Middle) / (1 - superfat.Least);
        var least = Math.Ceiling(safe * 1000) / 10;
        var weigh = $"Do not use the batch as it is; use at least {Grams(Spare(charge), up: true)} less lye" +
            (least > 0 ? Invariant($", or a superfat of {least:0.#} % or more") : "");
        return exact ? weigh + "." : weigh + "; or write the saponification value from each oil's certificate, which narrows the range.";
    }

    private static decimal Spare(SoapCharge charge) => Mass(charge, charge.AlkaliMoles - charge.Demand(v => v.Low));

    private static decimal Middle(SoapCharge charge) => Mass(charge, charge.Demand(v => v.Middle));

    // Of lye as it is weighed, impurities included, in the proportion in which the lyes are used.
    private static decimal Mass(SoapCharge charge, decimal moles) => moles / charge.AlkaliMoles * charge.Lyes.Sum(l => l.Grams);

    private static string Grams(decimal grams, bool up = false) =>
        ((up ? Math.Ceiling(grams * 10) : Math.Round(grams * 10)) / 10).ToString("0.0", CultureInfo.InvariantCulture) + " g";

    private static string Percent(decimal fraction) => (fraction * 100).ToString("0.0", CultureInfo.InvariantCulture) + " %";
}
