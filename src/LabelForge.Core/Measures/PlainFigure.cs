namespace LabelForge.Measures;

/// <summary>Figures as files, lists and calls write them: the digits 0 to 9 and at most one point, without sign or space.</summary>
public static class PlainFigure
{
    /// <summary>A figure.</summary>
    /// <returns>Null where it is none.</returns>
    public static decimal? Read(string? text) =>
        decimal.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var figure) ? figure : null;

    /// <summary>A whole number.</summary>
    /// <returns>Null where it is none.</returns>
    public static int? Whole(string? text) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var whole) ? whole : null;
}
