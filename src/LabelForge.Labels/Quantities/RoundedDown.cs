namespace LabelForge.Quantities;

/// <summary>Rounding that never goes up: a package may hold more than its label says, never less.</summary>
public static class RoundedDown
{
    /// <summary>Cuts a figure to a number of decimal places.</summary>
    public static decimal ToPlaces(decimal figure, int places)
    {
        var scale = 1m;
        for (var i = 0; i < places; i++)
            scale *= 10m;
        return decimal.Truncate(figure * scale) / scale;
    }

    /// <summary>Cuts a figure to significant figures and at most so many decimal places; whole units are always kept.</summary>
    public static decimal To(decimal figure, int significant, int places)
    {
        var whole = 0;
        for (var rest = figure; rest >= 1m; rest /= 10m)
            whole++;
        // Zeros after the point before the first other digit are not significant.
        var leading = 0;
        if (figure is > 0m and < 1m)
            for (var rest = figure * 10m; rest < 1m; rest *= 10m)
                leading++;
        return ToPlaces(figure, Math.Clamp(significant - whole + leading, 0, places));
    }

    /// <summary>The figure without trailing zeros.</summary>
    public static string Text(decimal figure) => figure.ToString("0.############", CultureInfo.InvariantCulture);
}
