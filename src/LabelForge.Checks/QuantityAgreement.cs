using LabelForge.Checks.Reading;
using LabelForge.Quantities;

namespace LabelForge.Checks;

/// <summary>How two quantities of one statement stand to each other.</summary>
public enum Agreement
{
    /// <summary>They state the same, or the metric figure is the customary one cut.</summary>
    Agree,

    /// <summary>The metric figure is the customary one rounded up.</summary>
    RoundedUp,

    /// <summary>The customary figure is the metric one cut to fewer digits than its own: 8.4 fl oz beside 250 mL.</summary>
    CutShort,

    /// <summary>They differ by more than ordinary rounding.</summary>
    Disagree,
}

/// <summary>Judges whether the customary and the metric figure state one quantity, allowing for ordinary rounding.</summary>
/// <remarks>
/// Either figure may be the measured one. The metric one may be the customary one converted exactly and cut, or rounded to
/// the nearest, at the places written: 16 oz is 453.59 g, so 453 g or 454 g. Or the customary one may be the metric one
/// converted likewise, if it has as many digits as the metric figure (three suffice) or the two decimal places that are the
/// most 21 CFR 701.13(d) allows: 100 g is 3.527 oz, so 3.52 oz or 3.53 oz, but 3.5 oz is cut short. Rounding of converted values:
/// common practice, after NIST Handbook 130.
/// </remarks>
public static class QuantityAgreement
{
    private const int LeastDigits = 2;
    private const int EnoughDigits = 3;
    private const int MostPlaces = 2;

    /// <summary>Compares them; both must be masses or both volumes.</summary>
    public static Agreement Between(ReadQuantity customary, ReadQuantity metric) =>
        Between(customary, metric, customary.Metric, ReadMeasure.SizeOf(customary.LastUnit));

    /// <summary>The same where fluid ounces may be imperial ones, 28.413 0625 mL (Weights and
    /// Measures Act 1985, Schedule 1; from memory).</summary>
    public static Agreement BetweenImperial(ReadQuantity customary, ReadQuantity metric) =>
        customary.Measures is [{ Unit: "fl oz" or "oz" } ounces] && customary.IsVolume
            ? Between(customary, metric, ounces.Figure * ImperialFluidOunce, ImperialFluidOunce)
            : Agreement.Disagree;

    private const decimal ImperialFluidOunce = 28.4130625m;

    private static Agreement Between(ReadQuantity customary, ReadQuantity metric, decimal millilitresOrGrams, decimal customaryUnit)
    {
        var converted = millilitresOrGrams / ReadMeasure.SizeOf(metric.LastUnit);
        var places = metric.Measures[^1].Places;
        var written = metric.InLastUnit;
        if (written == Cut(converted, places))
            return Agreement.Agree;
        var last = customary.Measures[^1];
        var isPrecise = Digits(customary) >= Math.Min(metric.Measures[^1].Digits, EnoughDigits) || last.Places >= MostPlaces;
        var back = metric.Metric / customaryUnit;
        if (isPrecise && customary.InLastUnit == Cut(back, last.Places))
            return Agreement.Agree;
        // 2.9 g is 0.102 oz, cut to its two digits 0.10 oz, and written without the last zero.
        if (customary.InLastUnit == RoundedDown.To(back, Math.Clamp(metric.Measures[^1].Digits, LeastDigits, EnoughDigits), MostPlaces))
            return Agreement.Agree;
        if (written == Math.Round(converted, places, MidpointRounding.AwayFromZero))
            return Agreement.RoundedUp;
        if (isPrecise && customary.InLastUnit == Math.Round(back, last.Places, MidpointRounding.AwayFromZero))
            return Agreement.Agree;
        return Digits(customary) >= LeastDigits && customary.InLastUnit == Cut(back, last.Places)
            ? Agreement.CutShort
            : Agreement.Disagree;
    }

    // Of 1 lb 2 oz the pounds hold digits too.
    private static int Digits(ReadQuantity quantity) => quantity.Measures.Length > 1 ? EnoughDigits : quantity.Measures[^1].Digits;

    private static decimal Cut(decimal figure, int places) => RoundedDown.ToPlaces(figure, places);
}
