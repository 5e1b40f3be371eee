namespace LabelForge.Checks.Reading;

/// <summary>
/// What all lines of a text have says nothing of any of them: an indent, a bullet before each, an empty line between all. Without it a
/// label that is centred, or whose every line is a point of a list, reads as the same label without.
/// </summary>
internal static class EvenLines
{
    // Of fewer lines all must be alike; of more, one in five may differ, as the title over a list of points does.
    private const int FewestLines = 5;
    private const double Nearly = 0.8;

    private static readonly ImmutableArray<char> Bullets =
        ['•', '-', '–', '—', '*', '·', '▪', '●', '◦', '‣', '►', '✦', '+', '>', '~'];

    /// <summary>The text without them. Every character keeps its index where <paramref name="isMeasured"/>.</summary>
    public static string Plain(string text, bool isMeasured)
    {
        var plain = WithoutBullets(WithoutGaps(text));
        return isMeasured ? plain : string.Join('\n', plain.Split('\n').Select(l => l.Trim(' ')));
    }

    private static string WithoutBullets(string text)
    {
        var lines = text.Split('\n');
        var said = lines.Where(HasWords).ToArray();
        foreach (var bullet in Bullets)
        {
            if (said.Count(l => IsBehind(l, bullet)) >= said.Length * (said.Length < FewestLines ? 1 : Nearly))
            {
                return string.Join('\n',
                    lines.Select(l => IsBehind(l, bullet) ? Blanked(l, l.IndexOf(bullet, StringComparison.Ordinal)) : l));
            }
        }
        return text;
    }

    private static string Blanked(string line, int at) => line[..at] + ' ' + line[(at + 1)..];

    private static bool IsBehind(string line, char bullet) => line.TrimStart() is [var first, ' ', ..] && first == bullet;

    // An empty line between all lines ends no block.
    private static string WithoutGaps(string text)
    {
        var lines = text.Split('\n');
        var said = lines.Index().Where(l => HasWords(l.Item)).Select(l => l.Index).ToArray();
        if (said.Length < FewestLines || said.Zip(said.Skip(1), (a, b) => b - a).Count(apart => apart > 1) < (said.Length - 1) * Nearly)
            return text;
        var plain = text.ToCharArray();
        // Of ends of lines that follow one another the last stays.
        var end = -1;
        for (var i = 0; i < plain.Length; i++)
        {
            if (plain[i] == '\n')
            {
                if (end >= 0)
                    plain[end] = ' ';
                end = i;
            }
            else if (plain[i] != ' ')
            {
                end = -1;
            }
        }
        return new string(plain);
    }

    private static bool HasWords(string line) => line.Any(char.IsLetterOrDigit);
}
