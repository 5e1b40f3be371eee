namespace LabelForge.Ingredients;

/// <summary>
/// The mark of a nanomaterial on a name: a supplier writes <c>Titanium Dioxide [nano]</c> or <c>(nano)</c>, and in the EU and
/// the UK the label says <c>[nano]</c> after the name (Regulation (EC) No 1223/2009, Article 19(1)(g)).
/// </summary>
public static class NanoName
{
    /// <summary>The mark as a label carries it, with the space before it.</summary>
    public const string Mark = " [nano]";

    /// <summary>Whether the name carries the mark in either kind of bracket.</summary>
    public static bool IsMarked(string name) => Bare(name).Length < name.TrimEnd().Length;

    /// <summary>The name without the mark.</summary>
    public static string Bare(string name)
    {
        var text = name.TrimEnd();
        foreach (var mark in new[] { "[nano]", "(nano)" })
        {
            if (text.EndsWith(mark, StringComparison.OrdinalIgnoreCase))
                return text[..^mark.Length].TrimEnd();
        }
        return text;
    }
}
