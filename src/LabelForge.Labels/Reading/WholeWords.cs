namespace LabelForge.Checks.Reading;

/// <summary>Names in a text, as whole words: "Inc" stands in no "incinerate".</summary>
internal static class WholeWords
{
    /// <summary>The text with a name blanked wherever it stands, in whatever letters; every other place keeps its index.</summary>
    public static string Blanked(string text, string name)
    {
        StringBuilder? left = null;
        for (var at = 0; (at = text.IndexOf(name, at, StringComparison.OrdinalIgnoreCase)) >= 0; at += name.Length)
        {
            if (!IsWithin(text, at - 1, name[0]) && !IsWithin(text, at + name.Length, name[^1]))
                (left ??= new(text)).Remove(at, name.Length).Insert(at, new string(' ', name.Length));
        }
        return left?.ToString() ?? text;
    }

    private static bool IsWithin(string text, int at, char edge) =>
        at >= 0 && at < text.Length && char.IsLetter(text[at]) && char.IsLetter(edge);
}
