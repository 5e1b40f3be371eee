using LabelForge.Ingredients;

namespace LabelForge.Checks.Reading;

/// <summary>How far an ingredient list reaches: it is told by what follows, name by name and line by line.</summary>
/// <param name="text">The label's text.</param>
/// <param name="folded">The same, folded.</param>
/// <param name="dictionary">The names that are known.</param>
internal sealed partial class ListExtent(string text, string folded, IngredientDictionary dictionary)
{
    private const int LongestList = 8000;

    // A name that nobody knows is no longer than this where the list is seen to go on after it.
    private const int MostWords = 6;

    // So many names that nobody knows may stand below one another in a list of lines.
    private const int MostUnknownLines = 3;

    // The number of the first name, with spaces before it.
    private const int LongestNumber = 12;

    // Fewer names below one another may be anything.
    private const int FewestLines = 4;

    private static readonly Lazy<Regex> BeginsOther = new(() => new Regex(
        $@"\G[ *#_""“(]*(?!no\.)(?:{string.Join('|', new[] { LabelWord.Ingredients, LabelWord.Lot, LabelWord.BestBefore, LabelWord.Responsible, LabelWord.MadeIn, LabelWord.Directions, LabelWord.Warnings, LabelWord.Net, LabelWord.Other }.Select(LabelWords.Alternatives))})(?![\p{{L}}]|-\p{{L}}|\.?\s?[0-9]+,)",
        RegexOptions.CultureInvariant, TimeSpan.FromSeconds(5)));

    // What may follow a list on its line.
    private static readonly Lazy<Regex> Inline = new(() => new Regex(
        $@"\G(?:(?:{LabelWords.Alternatives(LabelWord.BestBefore)})(?![\p{{L}}])\s*[:.]?\s*(?=[0-9]|see|voir)|(?:{LabelWords.Alternatives(LabelWord.Lot)})(?:\s*(?:no\.?|nr\.?|n°|#|code))?\s*[:#]|(?:{string.Join('|', new[] { LabelWord.Directions, LabelWord.Warnings, LabelWord.Responsible, LabelWord.Ingredients }.Select(LabelWords.Alternatives))})\s*:|net\s*(?:wt|weight|contents)\b|(?:distributed by|manufactured (?:by|for)|made (?:by|in|for))\b)",
        RegexOptions.CultureInvariant, TimeSpan.FromSeconds(5)));

    // "Lip balm: Ingredients: ..." begins the list of another product.
    private static readonly Lazy<Regex> HeadsAnother =
        new(
            () =>
                new Regex(
                    $@"(?<![\p{{L}}])(?:ingredients|inci|{LabelWords.Alternatives(LabelWords.Of(LabelWord.Ingredients).Where(w => w.Length > 7 && !w.StartsWith("made", StringComparison.Ordinal) && w != "contains"))})\s*:", RegexOptions.CultureInvariant, TimeSpan.FromSeconds(5)));

    /// <summary>Where the list that begins at a place ends: the first character after it.</summary>
    public int End(int start, bool isHeaded)
    {
        var end = start;
        var open = 0;
        var any = false;
        for (; end < text.Length && end - start < LongestList; end++)
        {
            var c = text[end];
            open = c switch { '(' or '[' => open + 1, ')' or ']' => Math.Max(0, open - 1), _ => open };
            if (c == '\n' && any)
            {
                if (Lines.At(text, end + 1).Trim().Length == 0)
                    open = 0;
                if (open == 0 && Stops(start, text[start..end], end + 1, isHeaded))
                    return end;
            }
            else if (c == '.' && any && EndsSentence(start, end))
            {
                return end + 1;
            }
            else if (open == 0 && any && c is '—' or '–' && IsAside(start, end))
            {
                return end;
            }
            else if (open == 0 && any && end > start && !char.IsLetterOrDigit(text[end - 1]) && Inline.Value.IsMatch(folded, end))
            {
                return end;
            }
            any |= char.IsLetterOrDigit(c);
        }
        return end;
    }

    private bool Stops(int start, string body, int next, bool isHeaded)
    {
        if (isHeaded && BeginsBulleted(start, body, next))
            return true;
        var tail = body.TrimEnd();
        var goesOn = tail[^1] is ',' or ';' or '/' or '-' or '–' or '—' or '+' or '&' or '•' or '·' or '|' or ':'
            || EndsWithAnd().IsMatch(tail);
        var line = Lines.At(text, next);
        if (line.Trim().Length == 0)
        {
            // Over one empty line, as between columns, a list goes on only from a comma, within a name or with more names.
            var at = Lines.Next(text, next);
            var after = Lines.At(text, at);
            return after.Trim().Length == 0
                || tail[^1] is ':'
                || BeginsOtherPart(at)
                || !(goesOn || IsBroken(tail, after) || IsListOfNames(after) || AreItems(body, at));
        }
        if (BeginsOtherPart(next) || HeadsAnother.Value.IsMatch(folded[next..Math.Min(folded.Length, next + line.Length)]))
            return true;
        if (goesOn || Percent().IsMatch(line) || (AtNumber().IsMatch(tail.TrimEnd('.', ')')) && ListNames.IsNumbered(body.TrimStart())))
            return false;
        var first = ListNames.Split(line).FirstOrDefault() ?? "";
        // A small letter goes on from the line before; without a heading only where names that are known follow.
        if ((char.IsLower(line.TrimStart()[0])
            && !(HoldsContact().IsMatch(line) && !IsKnown(first))
            && (isHeaded || ListNames.Split(line).Any(n => ListNames.Known(n, dictionary) is not null)))
            || line.TrimStart()[0] is '(' or '[' or ',' or ';' or '/' or '+' or '•' or '·' || IsBroken(tail, line))
            return false;
        // On a narrow label a long name takes three lines.
        var after2 = Lines.At(text, Lines.Next(text, next));
        if (IsBroken(tail, $"{line} {after2}") || (!line.Contains(',') && IsFormal($"{line} {after2}")))
            return false;
        // Names on lines of their own, and one among them that nobody knows.
        if (IsFormal(first) || (IsKnown(first) && !body.Contains(',')))
            return false;
        if (ListNames.Split(line).Skip(1).Any(IsKnown))
            return false;
        if (IsAmongKnown(tail, line, next))
            return false;
        if (IsShort(line) && !body.Contains(',') && body.Trim().Contains('\n') && NamesFollow(Lines.Next(text, next)))
            return false;
        return !(isHeaded && IsLastOfLines(body, line, Lines.Next(text, next)));
    }

    // A name that no dictionary has, over two lines or three, and the names after it: "Malva / Sylvestris Flower Extract, / Panthenol".
    private bool IsAmongKnown(string tail, string line, int next)
    {
        if (!tail.Contains(',') || !line.Contains(',') || IsFormal(ListNames.OneLine(ListNames.Split(tail).LastOrDefault() ?? "")))
            return false;
        var (lines, at) = (line, Lines.Next(text, next));
        for (var i = 0; i < MostLinesOfName && at < text.Length && Lines.At(text, at).Trim().Length > 0 && !BeginsOtherPart(at); i++)
        {
            lines += " " + Lines.At(text, at);
            at = Lines.Next(text, at);
        }
        var names = ListNames.Split(lines).ToArray();
        return IsShort(names[0]) && names.Skip(1).Take(2).Any(IsFormal);
    }

    private const int MostLinesOfName = 2;

    // Under a heading on a line of its own names stand one on each line up to an empty one: the last is a name too, known or not.
    private bool IsLastOfLines(string body, string line, int after)
    {
        var lines = body.Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        return lines.Length >= FewestLines
            && IsShort(line)
            && after < text.Length
            && Lines.At(text, after).Trim().Length == 0
            && lines.All(l => ListNames.Split(l).Take(2).Count() == 1)
            && lines.Count(IsFormal) * 2 > lines.Length;
    }

    // "• Ingredients: Aqua, Parfum" over "• Lot 12": the heading stands behind the bullet of a statement, and so does what follows.
    private bool BeginsBulleted(int start, string body, int next)
    {
        var heading = Lines.At(text, text.LastIndexOf('\n', Math.Max(0, start - 1)) + 1).TrimStart();
        var line = Lines.At(text, next).TrimStart();
        return heading.Length > 1 && line.Length > 1 && heading[0] is '•' or '·' or '-' or '*' or '–' && heading[0] == line[0]
            && body.Contains(',');
    }

    // Names on lines of their own, some of them unknown: a known one follows before anything else begins.
    private bool NamesFollow(int at)
    {
        for (var i = 0; i < MostUnknownLines && at < text.Length; i++)
        {
            var line = Lines.At(text, at);
            if (!IsShort(line) || BeginsOtherPart(at))
                return false;
            if (IsFormal(ListNames.Split(line).FirstOrDefault() ?? ""))
                return true;
            at = Lines.Next(text, at);
        }
        return false;
    }

    private bool BeginsOtherPart(int at) =>
        EnglishTerminator().IsMatch(Lines.At(text, at).TrimStart())
            || (BeginsOther.Value.Match(folded, at) is { Success: true } begins && !IsName(at, begins));

    // "Parfum" and "Sal" begin no other part: the whole of what stands before the next separator is a known name.
    private bool IsName(int at, Match begins) =>
        ListNames.Split(Lines.At(text, at)).FirstOrDefault() is { } first
            && first.Trim().Length > begins.Value.Trim().Length
            && IsFormal(first);

    // A name that two lines make together. One that is whole already may be known with other words after it too: the two must
    // differ, and a pair parted by a stroke, as CI 77491/CI 77492, is whole where it is known.
    private bool IsBroken(string tail, string after)
    {
        var last = ListNames.OneLine(ListNames.Split(tail).LastOrDefault() ?? "");
        var alone = dictionary.Find(ListNames.Bare(last));
        if (alone is not null && last.Contains('/'))
            return false;
        var next = ListNames.Split(after).FirstOrDefault() ?? "";
        // A hyphen inside may be that of a line before.
        return new[] { last.TrimEnd(), Unhyphened(last.TrimEnd()) }.Distinct().SelectMany(l => ListNames.Ways(l, next.TrimStart()))
            .Select(w => dictionary.Find(ListNames.Bare(w)))
            .FirstOrDefault(w => w is not null) is { } whole && whole.Key != alone?.Key;
    }

    private static string Unhyphened(string name) =>
        name.Length == 0 ? name : name[..^1].Replace("-", "", StringComparison.Ordinal) + name[^1];

    private bool IsListOfNames(string line)
    {
        var names = ListNames.Split(line).Where(n => n.Any(char.IsLetter)).ToArray();
        return names.Length > 1 && names.Count(IsFormal) is > 1 and var formal && formal * 2 >= names.Length;
    }

    // The next column of a list of lines: a line with the bullet of those before, or two names below one another,
    // or one of two lines.
    private bool AreItems(string body, int at)
    {
        var (line, next) = (Lines.At(text, at).Trim(), Lines.At(text, Lines.Next(text, at)).Trim());
        var last = body[(body.TrimEnd().LastIndexOf('\n') + 1)..].TrimStart();
        return (last.Length > 0 && !char.IsLetterOrDigit(last[0]) && last[0] == line[0])
            || (!body.Contains(',') && ((IsFormal(line) && IsFormal(next)) || IsFormal($"{line} {next}")));
    }

    private bool IsKnown(string name) => ListNames.Known(name, dictionary) is not null || IsOfLaw(ListNames.Bare(name));

    // What is forbidden is a name too, and so is what is formed as a colour's.
    private bool IsOfLaw(string bare) => dictionary.IsOfLaw(bare) || Colour().IsMatch(bare);

    // Shea butter and honey stand in any praise; names of the nomenclature do not.
    private bool IsFormal(string name) =>
        ListNames.Bare(name) is var bare
            && (dictionary.Find(bare) is { } known
                ? !known.Everyday.Any(e => string.Equals(e, bare, StringComparison.OrdinalIgnoreCase))
                : IsOfLaw(bare));

    private static bool IsShort(string name) =>
        name.Split(' ', StringSplitOptions.RemoveEmptyEntries).Length is > 0 and <= MostWords && name.Any(char.IsLetter);

    [GeneratedRegex(@"^[*#_ ]*(?:net\b|(?:[e℮]\s)?[0-9]{1,4}(?:[.,][0-9]+)?\s?(?:m?l|cl|k?g|oz|fl\.? ?oz)\b|hand\s?-?made\b|hand\s?-?crafted\b|mfg\b|mfd\b|dist\.|packed\b|https?:|©|l:|#|[0-9]{1,5} "
        + @"\p{Lu}|p\.?\s?o\.? box\b|\*+\s*(?:certified|organic)|no\b(?!\.)|mind\.|nettof|[\w.+-]+@|[\w-]+\.(?:com|net|org|example|ca|uk|eu|shop)\b|\+?[0-9][0-9 ().-]{7,}$)", RegexOptions.IgnoreCase)]
    private static partial Regex EnglishTerminator();

    [GeneratedRegex(@"^[.\s(]*(?:(?:colou?r(?:ant|ing|\s+additive)?s?\s+)?may\s+(?:also\s+)?(?:contain|include)|peut\s+contenir|kann\s+enthalten|\+/-|±)", RegexOptions.IgnoreCase)]
    private static partial Regex MayContain();

    [GeneratedRegex(@"^(?:(?:(?:ext\.?\s*)?F?D\s?&\s?C\s+)(?:red|yellow|blue|green|orange|violet|brown|black)\s+(?:no\.?\s*)?[0-9]{1,2}"
        + @"(?:\s+(?:\w+\s+)?lake)?|C\.?\s?I\.?\s?#?\s?[0-9]{5}(?::[0-9])?)$", RegexOptions.IgnoreCase)]
    private static partial Regex Colour();

    [GeneratedRegex(@"\s[0-9]{1,2}$|^[0-9]{1,2}$")]
    private static partial Regex AtNumber();

    // "1. Aqua": the number of an item.
    [GeneratedRegex(@"^\s*[0-9]{1,2}\.$")]
    private static partial Regex BeginsWithNumber();

    // A line with a web or mail address, or a state and its code, is the maker's.
    [GeneratedRegex(@"@|\bwww\.|https?:|\.(?:com|net|org|example|shop|ca|uk|eu)\b|\b[a-z]{2} [0-9]{5}\b", RegexOptions.IgnoreCase)]
    private static partial Regex HoldsContact();

    [GeneratedRegex(@"(?:[.,;]\s|[.,;]$|\n)")]
    private static partial Regex DotOrEnd();

    [GeneratedRegex(@"(?:[.,;]\s|[.,;]$|\n\n)")]
    private static partial Regex Dot();

    [GeneratedRegex(@"^\s*[0-9]{1,2}(?:[.,][0-9]+)?\s?%")]
    private static partial Regex Percent();

    [GeneratedRegex(@"\s(?:and|et|und|y|e|en|och|og|i|a|ja|és|si|in|ir|un|και|и)$", RegexOptions.IgnoreCase)]
    private static partial Regex EndsWithAnd();
}
