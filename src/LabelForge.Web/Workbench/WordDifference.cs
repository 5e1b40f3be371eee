namespace LabelForge.Web.Workbench;

/// <summary>Which words of a text another one has too, in the same order: what is left is what changed.</summary>
public static class WordDifference
{
    // Beyond this many words a table of both would take more room than the answer is worth.
    private const int MostWords = 600;

    /// <summary>The text in pieces, each said to stand in the other too or not; together they are the text.</summary>
    public static IReadOnlyList<(string Words, bool Same)> Of(string text, string other)
    {
        var (own, theirs) = (Parted(text), Parted(other));
        if (own.Length > MostWords || theirs.Length > MostWords)
            return [(text, text == other)];
        // The longest common subsequence, from the end (Hirschberg 1977 gives it in less room; labels are short).
        var longest = new int[own.Length + 1, theirs.Length + 1];
        for (var i = own.Length - 1; i >= 0; i--)
            for (var j = theirs.Length - 1; j >= 0; j--)
                longest[i, j] = Bare(own[i]) == Bare(theirs[j])
                    ? longest[i + 1, j + 1] + 1
                    : Math.Max(longest[i + 1, j], longest[i, j + 1]);
        var pieces = new List<(string Words, bool Same)>();
        for (int i = 0, j = 0; i < own.Length;)
        {
            var same = j < theirs.Length && Bare(own[i]) == Bare(theirs[j]);
            if (!same && j < theirs.Length && longest[i, j + 1] > longest[i + 1, j])
            {
                j++;
                continue;
            }
            if (pieces.Count > 0 && pieces[^1].Same == same)
                pieces[^1] = (pieces[^1].Words + own[i], same);
            else
                pieces.Add((own[i], same));
            i++;
            j += same ? 1 : 0;
        }
        return pieces;
    }

    // The last of a list has no comma behind it.
    private static string Bare(string piece) => piece.TrimEnd(',', ' ');

    // Ingredients are parted by commas: a name is one piece, so that what moved is seen to move whole.
    private static string[] Parted(string text)
    {
        var mark = text.Contains(", ", StringComparison.Ordinal) ? ',' : ' ';
        var pieces = new List<string>();
        for (var at = 0; at < text.Length;)
        {
            var end = text.IndexOf(mark, at);
            while (mark == ',' && end >= 0 && end + 1 < text.Length && text[end + 1] != ' ')
                end = text.IndexOf(mark, end + 1);
            var next = end < 0 ? text.Length : Math.Min(text.Length, end + (mark == ',' ? 2 : 1));
            pieces.Add(text[at..next]);
            at = next;
        }
        return [.. pieces];
    }
}
