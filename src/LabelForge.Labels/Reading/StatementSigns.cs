namespace LabelForge.Checks.Reading;

/// <summary>
/// The signs that part the statements of a label where lines do not: strokes, stars and dashes of a label in one line, and the bars
/// of a table of words and values. They become ends of lines and colons, so that what reads lines reads them; every other character
/// keeps its index.
/// </summary>
internal static partial class StatementSigns
{
    // Two statements may share a line; of three some begin as parts of labels do.
    private const int FewestStatements = 3;
    private const int FewestParts = 2;
    private const int FewestCommas = 2;
    private const int FewestRows = 2;

    // A line of so many statements is no label's; it bounds what a hostile text can cost.
    private const int MostStatements = 40;

    // A single stroke parts two languages as often as two statements.
    private static readonly ImmutableArray<string> Signs = ["//", "||", "|", " * ", " • ", " · ", " ~ ", " — ", " – ", " - "];

    /// <summary>The text with the signs between its statements made ends of lines; as it is where it has none.</summary>
    public static string Parted(string text) =>
        string.Join('\n', text.Split('\n').Select(l => Bracketed().IsMatch(l) ? Unbracketed(l) : l).Select(OfLine));

    // "[ 180 g ]  [ LOT 31 ]": each in a bracket of its own.
    private static string Unbracketed(string line) =>
        line[..line.LastIndexOf(']')].Replace('[', ' ').Replace(']', '\n') + " " + line[(line.LastIndexOf(']') + 1)..];

    /// <summary>The text with the rows of its tables made lines: the words of the first cell announce what stands in the next.</summary>
    public static string WithoutTables(string text)
    {
        var lines = text.Split('\n');
        if (lines.Count(l => Announced().IsMatch(l)) >= FewestRows)
            lines = [.. lines.Select(l => Announced().Match(l) is { Success: true } row
                ? $"{l[..row.Groups["gap"].Index].TrimEnd(':')}: {l[(row.Groups["gap"].Index + row.Groups["gap"].Length)..]}".PadRight(l.Length)
                : l)];
        lines = Aligned(lines);
        return lines.Count(l => Row().IsMatch(l)) < FewestRows
            ? string.Join('\n', lines)
            : string.Join('\n', lines.Select(l => Row().IsMatch(l) ? OfRow(l) : l));
    }

    // Words and values in two columns, each row of both, and parts of a label among the words: "Sold as      soap".
    private static string[] Aligned(string[] lines)
    {
        var rows = lines.Index().Select(l => (l.Index, Cells: TwoCells().Match(l.Item))).Where(r => r.Cells.Success)
            .GroupBy(r => r.Cells.Groups["value"].Index).MaxBy(g => g.Count())?.ToArray() ?? [];
        if (rows.Length < FewestAligned || rows.Count(r => LabelWords.BeginsPart(r.Cells.Groups["word"].Value)) < FewestRows)
            return lines;
        foreach (var (index, cells) in rows)
            lines[index] = $"{cells.Groups["word"].Value}: {cells.Groups["value"].Value}".PadRight(lines[index].Length);
        return lines;
    }

    private const int FewestAligned = 4;

    // "| Lot   | 12 |" is "Lot: 12", as long as it was.
    private static string OfRow(string line)
    {
        var cells = line.Trim().Trim('|').Split('|', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)
            .Where(c => c.Any(char.IsLetterOrDigit)).ToArray();
        var first = cells.Length > 1 && cells[0][^1] != ':' ? cells[0] + ":" : cells.FirstOrDefault("");
        return string.Join(' ', cells.Skip(1).Prepend(first)).PadRight(line.Length);
    }

    private static string OfLine(string line)
    {
        foreach (var sign in Signs)
        {
            var starts = Places(line, sign).ToArray();
            if (starts.Length < FewestStatements - 1 || starts.Length > MostStatements || !ArePartedBy(line, sign, starts))
                continue;
            var parted = line.ToCharArray();
            foreach (var at in starts)
            {
                parted.AsSpan(at, sign.Length).Fill(' ');
                // The next line begins with its first word.
                var end = at + sign.Length;
                while (end < line.Length && line[end] == ' ')
                    end++;
                parted[end - 1] = '\n';
            }
            // Between its statements one may be parted by another sign: "10 g · Lot 12 | 555-0100 | name.example".
            return string.Join('\n', new string(parted).Split('\n').Select(OfLine));
        }
        return line;
    }

    // Outside parentheses.
    private static IEnumerable<int> Places(string line, string sign)
    {
        var open = 0;
        for (var i = 0; i < line.Length; i++)
        {
            open = line[i] switch { '(' or '[' => open + 1, ')' or ']' => Math.Max(0, open - 1), _ => open };
            if (open > 0 || string.CompareOrdinal(line, i, sign, 0, sign.Length) != 0)
                continue;
            yield return i;
            i += sign.Length - 1;
        }
    }

    // Some of the statements begin as parts do, and the list, where it is one of them, is parted by other signs.
    private static bool ArePartedBy(string line, string sign, int[] starts)
    {
        var statements = starts.Zip(starts.Skip(1).Append(line.Length), (from, to) => line[(from + sign.Length)..to].Trim())
            .Prepend(line[..starts[0]].Trim()).Where(s => s.Length > 0).ToArray();
        return statements.Any(BeginsPart)
            && statements.Count(s => BeginsPart(s) || s.Count(c => c == ',') >= FewestCommas) >= FewestParts
            && HoldLists(statements);
    }

    // "Ingredients: Aqua | Glycerin | Parfum": the sign parts names. The heading may be a statement of its own.
    private static bool HoldLists(string[] statements)
    {
        var headed = statements.Where(s => s[0] != '(' && LabelWords.BeginsAny(s, [LabelWord.Ingredients])).ToArray();
        return headed.Length == 0
            || headed.Any(s => ListNames.Split(s).Take(2).Count() > 1 || s.Split(' ').Length <= MostWordsOfHeading);
    }

    private const int MostWordsOfHeading = 3;

    private static bool BeginsPart(string statement) => LabelWords.BeginsPart(statement) || Quantity().IsMatch(statement);

    // "Lot:          12", "Lot ........ 12": the words of a table's first column, with a colon.
    [GeneratedRegex(@"^\s*\p{L}[\p{L}' /]{1,30}(?::(?<gap>\s{2,})|(?<gap>\s?\.{2,}\s+))\S")]
    private static partial Regex Announced();

    [GeneratedRegex(@"^\s*(?:\[[^\[\]]+\]\s*)+$")]
    private static partial Regex Bracketed();

    [GeneratedRegex(@"^\s*(?<word>\p{L}[\p{L}' /]{1,18}?):?\s{3,}(?<value>\S.*)$")]
    private static partial Regex TwoCells();

    [GeneratedRegex(@"^\s*\|.*\|\s*$")]
    private static partial Regex Row();

    [GeneratedRegex(@"^(?:[e℮]\s?)?[0-9]+(?:[.,][0-9]+)?\s?(?:m?l|cl|k?g|(?:fl\.?\s?)?oz)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Quantity();
}
