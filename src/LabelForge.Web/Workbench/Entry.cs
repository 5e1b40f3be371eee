namespace LabelForge.Web.Workbench;

/// <summary>Reads what was typed into a form, or says at which field what is wrong.</summary>
internal static class Entry
{
    // Where a problem stands: a file's path never begins so.
    private const char Field = '#';

    /// <summary>Reads a field; what is wrong with it is a problem of that field.</summary>
    /// <param name="field">The field's id.</param>
    /// <param name="read">Reads it.</param>
    public static T At<T>(string field, Func<T> read)
    {
        try
        {
            return read();
        }
        catch (InputException e)
        {
            throw At(field, e);
        }
    }

    /// <summary>Writes what fields may be to blame for, as an amount that is more than there is.</summary>
    /// <param name="write">Writes it.</param>
    /// <param name="blamed">How the code of a problem begins, and the id of the field to blame; anything else is no field's.</param>
    public static async Task<T> At<T>(Func<Task<T>> write, params (string Kind, string Field)[] blamed)
    {
        try
        {
            return await write();
        }
        catch (InputException e) when (FieldFor(e, blamed) is { } field)
        {
            throw At(field, e);
        }
    }

    /// <summary>A refusal by what stands in a field.</summary>
    public static InputException At(string field, InputException refusal) => new(refusal.Problem with { Path = Field + field });

    private static string? FieldFor(InputException e, (string Kind, string Field)[] blamed) =>
        blamed.FirstOrDefault(b => e.Problem.Code.StartsWith(b.Kind, StringComparison.Ordinal)).Field;

    /// <summary>Whether a field is to blame.</summary>
    public static bool IsAtField(Problem? problem) => problem?.Path is [Field, ..];

    /// <summary>The id of the field that is to blame; null where none is.</summary>
    public static string? FieldOf(Problem? problem) => problem?.Path is [Field, .. var id] ? id : null;

    /// <summary>What is wrong with a field, in the page's words; null where it is not to blame.</summary>
    public static string? WrongAt(Problem? problem, string field, string language) =>
        problem is not null && FieldOf(problem) == field ? PageWords.Told(problem, language) : null;

    /// <summary>A text that may not be empty.</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="missing">The code of the problem that it is.</param>
    public static string Needed(string text, string missing) => Optional(text) ?? throw new InputException(missing);

    /// <summary>An amount as people write it, in the words that the books read.</summary>
    public static string Amount(string text, string missing) => Loose.Amount(Needed(text, missing));

    /// <summary>A text, or nothing.</summary>
    public static string? Optional(string text) => text.Trim() is { Length: > 0 } typed ? typed : null;

    /// <summary>A day as the browser's own field gives it.</summary>
    public static DateOnly Day(string text, string what) =>
        IsoDay.Read(text) is { } day
            ? day
            : throw new InputException("form.day-missing", ("what", what));

    /// <summary>A whole number above zero.</summary>
    public static int Count(string text, string what) =>
        PlainFigure.Whole(Loose.Count(text.Trim()).Trim()) is > 0 and var count
            ? count
            : throw (text.Trim().Length == 0
                ? new InputException("form.count-missing", ("what", what))
                : new InputException("form.not-a-count", ("text", text.Trim())));

    /// <summary>A whole number, zero too.</summary>
    public static int CountOrNone(string text, string what) => text.Trim() is "" or "0" ? 0 : Count(text, what);

    /// <summary>A figure, not below zero.</summary>
    public static decimal Figure(string text, string what) =>
        PlainFigure.Read(text.Trim()) is { } figure
            ? figure
            : throw (text.Trim().Length == 0
                ? new InputException("form.figure-missing", ("what", what))
                : new InputException("form.not-a-figure", ("text", text.Trim())));

    /// <summary>A mass in any unit of mass, or as the scale shows it.</summary>
    public static Mass Mass(string text, bool onTheScale = false) =>
        Measures.Amount.Parse(Loose.Amount(text)).OrRefuse() is { IsMass: true } amount
            ? amount.AsMass()
            : throw (onTheScale
                ? new InputException("form.not-on-the-scale", ("text", text.Trim()))
                : new InputException("form.not-a-mass-like", ("text", text.Trim())));

    /// <summary>The value, or the refusal as an error.</summary>
    public static T Value<T>(Parsed<T> parsed) => parsed.IsValue ? parsed.Value : throw new InputException(parsed.Problem);
}
