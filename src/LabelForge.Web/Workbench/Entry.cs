using System.Globalization;
using LabelForge.Measures;

namespace LabelForge.Web.Workbench;

/// <summary>Reads what was typed into a form, or says at which field what is wrong.</summary>
internal static class Entry
{
    /// <summary>A text that may not be empty.</summary>
    public static string Needed(string text, string what, string write) =>
        text.Trim() is { Length: > 0 } typed ? typed : throw Refuse($"{what} is missing.", write);

    /// <summary>An amount as people write it, in the words that the books read.</summary>
    public static string Amount(string text, string what, string write) => Loose.Amount(Needed(text, what, write));

    /// <summary>A text, or nothing.</summary>
    public static string? Optional(string text) => text.Trim() is { Length: > 0 } typed ? typed : null;

    /// <summary>A day as the browser's own field gives it.</summary>
    public static DateOnly Day(string text, string what) =>
        DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) ? day : throw Refuse($"{what} is missing.", "Choose the day, or write year, month and day: 2026-11-25");

    /// <summary>A whole number above zero.</summary>
    public static int Count(string text, string what) =>
        int.TryParse(Loose.Count(text.Trim()).Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out var count) && count > 0
            ? count
            : throw Refuse(text.Trim().Length == 0 ? $"{what} is missing." : $"\"{text.Trim()}\" is not a number to count with.", "Write a whole number above zero: 12");

    /// <summary>A whole number, zero too.</summary>
    public static int CountOrNone(string text, string what) => text.Trim() is "" or "0" ? 0 : Count(text, what);

    /// <summary>A figure, not below zero.</summary>
    public static decimal Figure(string text, string what) =>
        decimal.TryParse(text.Trim(), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var figure)
            ? figure
            : throw Refuse(text.Trim().Length == 0 ? $"{what} is missing." : $"\"{text.Trim()}\" is not a figure.", "Write a plain figure with a decimal point: 42.5");

    /// <summary>A mass in any unit of mass.</summary>
    public static Mass Mass(string text, string write) =>
        Measures.Amount.Parse(Loose.Amount(text)).OrRefuse() is { IsMass: true } amount ? amount.AsMass() : throw Refuse($"\"{text.Trim()}\" is not a mass.", write);

    /// <summary>The value, or the refusal as an error.</summary>
    public static T Value<T>(Parsed<T> parsed) => parsed.IsValue ? parsed.Value : throw Refuse(parsed.Wrong, parsed.Write);

    private static InputException Refuse(string wrong, string write) => new(new Problem(null, 0, wrong, write));
}
