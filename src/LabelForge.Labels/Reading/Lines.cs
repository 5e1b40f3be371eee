namespace LabelForge.Checks.Reading;

/// <summary>The lines of a text, found by where they begin.</summary>
internal static class Lines
{
    /// <summary>The line that begins there, without its end; empty past the text.</summary>
    public static string At(string text, int start) =>
        start >= text.Length ? "" : text.IndexOf('\n', start) is var end && end < 0 ? text[start..] : text[start..end];

    /// <summary>Where the line after the one at a place begins; the text's length where there is none.</summary>
    public static int Next(string text, int start) =>
        text.IndexOf('\n', Math.Min(start, text.Length)) is var end && end < 0 ? text.Length : end + 1;
}
