using LabelForge.Ingredients;

namespace LabelForge.Checks.Reading;

/// <summary>
/// Text that was wrapped to the width of a narrow label: lines that end where the next word had no room are one line. Without it a name,
/// an address or a sentence falls into pieces, of which some say something by themselves.
/// </summary>
internal static partial class WrappedLines
{
    private const int FewestLines = 6;

    // Wider text is a page's, and its lines are sentences long.
    private const int Widest = 60;
    private const int Narrowest = 12;

    // Of statements on lines of their own few are as long as the longest; of wrapped ones most are.
    private const double FewestFull = 0.4;

    /// <summary>The text with the ends of wrapped lines made spaces, so that every character keeps its index.</summary>
    /// <param name="text">The text.</param>
    /// <param name="dictionary">The names known: the last of a list goes on in no line.</param>
    public static string Unwrapped(string text, IngredientDictionary dictionary)
    {
        var lines = text.Split('\n');
        var ends = new char[lines.Length];
        for (var from = 0; from < lines.Length;)
        {
            var to = from;
            while (to < lines.Length && lines[to].Trim().Length > 0)
                to++;
            Mark(lines[from..to], ends.AsSpan(from, to - from), dictionary);
            from = Math.Max(to, from + 1);
        }
        var joined = new StringBuilder(text.Length);
        for (var i = 0; i < lines.Length; i++)
            joined.Append(lines[i]).Append(i == lines.Length - 1 ? "" : ends[i] == ' ' ? " " : "\n");
        return joined.ToString();
    }

    // Whether each line of a block goes on in the next.
    private static void Mark(string[] lines, Span<char> ends, IngredientDictionary dictionary)
    {
        if (lines.Length < FewestLines)
            return;
        var width = lines.Where(l => l.Trim().Contains(' ')).Select(l => l.TrimEnd().Length).DefaultIfEmpty(0).Max();
        if (width is < Narrowest or > Widest)
            return;
        var full = new bool[lines.Length - 1];
        for (var i = 0; i < full.Length; i++)
            full[i] = lines[i].TrimEnd().Length + 1 + FirstWord(lines[i + 1]).Length > width;
        if (full.Count(f => f) < full.Length * FewestFull)
            return;
        for (var i = 0; i < full.Length; i++)
        {
            var standsAlone = (i + 1 == full.Length || !full[i + 1]) && IsTitle(lines[i + 1]);
            if (full[i] && !Ends(lines[i], lines[i + 1], dictionary) && !standsAlone && !Begins(lines[i + 1]))
                ends[i] = ' ';
        }
    }

    // A sentence, a number before a name or a postcode, and the last name of a list end where they do.
    private static bool Ends(string line, string next, IngredientDictionary dictionary)
    {
        var said = line.TrimEnd();
        var number = said.Split(' ')[^1];
        if (said[^1] is '-' or '.' or '!' or '?'
            || (char.IsUpper(next.TrimStart()[0]) && number.Any(char.IsDigit))
            || (char.IsDigit(next.TrimStart()[0]) && number.All(char.IsDigit)))
            return true;
        var last = ListNames.Split(said).LastOrDefault() ?? "";
        return dictionary.Find(ListNames.Bare(last)) is not null
            && dictionary.Find(ListNames.Bare($"{last} {ListNames.Split(next).FirstOrDefault()}")) is null;
    }

    // "Lantern Hill Refillery": a name on a line of its own.
    private static bool IsTitle(string line) =>
        line.Split(' ', StringSplitOptions.RemoveEmptyEntries) is [_, _, ..] words && words.All(w => char.IsUpper(w[0]) || w[0] is '&');

    private static string FirstWord(string line) => line.TrimStart().Split(' ', 2)[0];

    private static bool Begins(string line) =>
        !char.IsLetterOrDigit(line.TrimStart()[0]) && line.TrimStart()[0] is not ('(' or '"' or '“' or '«' or '„' or '&' or '/')
            || LabelWords.BeginsPart(line) || Quantity().IsMatch(line.TrimStart()) || Street().IsMatch(line.Trim());

    // "Kapelstraat 3" on a line of its own, under a name.
    [GeneratedRegex(@"^\p{Lu}[\p{L}.'’-]+(?: \p{L}+)? [0-9]{1,4}\s?[a-z]?,?$")]
    private static partial Regex Street();

    [GeneratedRegex(@"^(?:(?:[e℮]\s?)?[0-9]+(?:[.,][0-9]+)?\s?(?:m?l|cl|k?g|(?:fl\.?\s?)?oz)\b|(?:m?l|cl|g)\s[0-9])",
        RegexOptions.IgnoreCase)]
    private static partial Regex Quantity();
}
