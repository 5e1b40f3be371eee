using LabelForge.Tags;

namespace LabelForge.Web.Workbench;

/// <summary>A bottle's number in a field for weights. The cursor stands there after a weighing, and a scanner types where the cursor is;
/// no weight is written with an M before a number.</summary>
/// <param name="Before">What stood in the field before it was scanned.</param>
/// <param name="Bottle">The bottle's number: 1042 of M1042.</param>
public sealed record ScannedIntoField(string Before, int Bottle)
{
    /// <summary>Reads a field; null where it holds no bottle's number at its end.</summary>
    /// <param name="field">The field's text.</param>
    public static ScannedIntoField? Read(string field)
    {
        var at = field.LastIndexOfAny(['M', 'm']);
        return at >= 0 && BottleTags.NumberOf(field[at..].Replace(" ", "", StringComparison.Ordinal)) is { } bottle
            ? new ScannedIntoField(field[..at].Trim(), bottle)
            : null;
    }
}
