namespace LabelForge.Web.Workbench;

/// <summary>Reads what was typed into a form, or says at which field what is wrong.</summary>
internal static class Entry
{
    /// <summary>A text that may not be empty.</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="missing">The code of the problem that it is.</param>
    public static string Needed(string text, string missing) => Optional(text) ?? throw Refuse(missing);

    /// <summary>An amount as people write it, in the words that the books read.</summary>
    public static string Amount(string text, string missing) => Loose.Amount(Needed(text, missing));

    /// <summary>A text, or nothing.</summary>
    public static string? Optional(string text) => text.Trim() is { Length: > 0 } typed ? typed : null;

    /// <summary>A day as the browser's own field gives it.</summary>
    public static DateOnly Day(string text, string what) =>
        DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day)
            ? day
            : throw Refuse("form.day-missing", ("what", what));

    /// <summary>A whole number above zero.</summary>
    public static int Count(string text, string what) =>
        int.TryParse(Loose.Count(text.Trim()).Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out var count) && count > 0
            ? count
            : throw (text.Trim().Length == 0
                ? Refuse("form.count-missing", ("what", what))
                : Refuse("form.not-a-count", ("text", text.Trim())));

    /// <summary>A whole number, zero too.</summary>
    public static int CountOrNone(string text, string what) => text.Trim() is "" or "0" ? 0 : Count(text, what);

    /// <summary>A figure, not below zero.</summary>
    public static decimal Figure(string text, string what) =>
        decimal.TryParse(text.Trim(), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var figure)
            ? figure
            : throw (text.Trim().Length == 0
                ? Refuse("form.figure-missing", ("what", what))
                : Refuse("form.not-a-figure", ("text", text.Trim())));

    /// <summary>A mass in any unit of mass, or as the scale shows it.</summary>
    public static Mass Mass(string text, bool onTheScale = false) =>
        Measures.Amount.Parse(Loose.Amount(text)).OrRefuse() is { IsMass: true } amount
            ? amount.AsMass()
            : throw (onTheScale
                ? Refuse("form.not-on-the-scale", ("text", text.Trim()))
                : Refuse("form.not-a-mass-like", ("text", text.Trim())));

    /// <summary>The value, or the refusal as an error.</summary>
    public static T Value<T>(Parsed<T> parsed) => parsed.IsValue ? parsed.Value : throw new InputException(parsed.Problem);

    private static InputException Refuse(string code, params ReadOnlySpan<(string Name, object? Value)> arguments) =>
        new(null, 0, code, arguments);
}
