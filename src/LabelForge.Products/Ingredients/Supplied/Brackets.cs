namespace LabelForge.Ingredients.Supplied;

/// <summary>Which places of a text stand inside brackets that both open and close.</summary>
internal static class Brackets
{
    /// <summary>For each place, whether it is inside. A bracket without its partner counts as a plain character.</summary>
    public static bool[] Inside(string text)
    {
        var inside = new bool[text.Length];
        var open = new Stack<int>();
        var covered = 0;
        var pairs = new List<(int Open, int Close)>();
        for (var at = 0; at < text.Length; at++)
        {
            if (text[at] is '(' or '[' or '{')
                open.Push(at);
            else if (text[at] is ')' or ']' or '}' && open.Count > 0 && Fits(text[open.Peek()], text[at]))
                pairs.Add((open.Pop(), at));
        }
        foreach (var (from, to) in pairs.OrderBy(p => p.Open))
        {
            for (var at = Math.Max(from, covered); at <= to; at++)
                inside[at] = true;
            covered = Math.Max(covered, to + 1);
        }
        return inside;
    }

    private static bool Fits(char open, char close) => (open, close) is ('(', ')') or ('[', ']') or ('{', '}');
}
