namespace LabelForge.Colours;

/// <summary>Small volumes in the measures of a kitchen.</summary>
public static class Spoon
{
    // 16 CFR 500.10: a teaspoon is a sixth of a fluid ounce, 4.92892159375 mL.
    private const decimal MillilitresOfTeaspoon = 4.92892159375m;

    private const int Sixteenths = 16;

    /// <summary>A volume in teaspoons to the nearest sixteenth (the smallest spoon in a set), or in drops.</summary>
    /// <param name="millilitres">The volume.</param>
    /// <param name="dropsPerMillilitre">How many drops make a millilitre, where it is measured so; else null.</param>
    public static string Of(decimal millilitres, decimal? dropsPerMillilitre)
    {
        if (dropsPerMillilitre is { } drops)
            return Invariant($"{Math.Max(1, Math.Round(millilitres * drops)):0} drops");
        var parts = (int)Math.Round(millilitres / MillilitresOfTeaspoon * Sixteenths);
        if (parts == 0)
            return "less than 1/16 tsp";
        var (whole, rest, of) = (parts / Sixteenths, parts % Sixteenths, Sixteenths);
        while (rest > 0 && rest % 2 == 0)
            (rest, of) = (rest / 2, of / 2);
        var part = rest == 0 ? "" : Invariant($"{rest}/{of}");
        return $"{string.Join(' ', new[] { whole == 0 ? "" : whole.ToString(CultureInfo.InvariantCulture), part }.Where(p => p.Length > 0))} tsp";
    }
}
