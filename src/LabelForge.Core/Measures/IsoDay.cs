namespace LabelForge.Measures;

/// <summary>A day as files, lists and data write it: <c>2026-11-25</c> (ISO 8601).</summary>
public static class IsoDay
{
    private const string Form = "yyyy-MM-dd";

    /// <summary>The day as text.</summary>
    public static string ToIso(this DateOnly day) => day.ToString(Form, CultureInfo.InvariantCulture);

    /// <summary>The day that a text writes so.</summary>
    /// <returns>Null where it is none.</returns>
    public static DateOnly? Read(string? text) =>
        DateOnly.TryParseExact(text, Form, CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) ? day : null;
}
