using LabelForge.Ingredients;

namespace LabelForge.Checks.Reading;

/// <summary>
/// Parts the body of an ingredient list into its names. Commas, semicolons, bullets and bars always part; strokes, plus
/// signs, dashes and full stops do where the names between them are known and the whole is none; a line's end parts or joins,
/// whichever leaves fewer unknown names.
/// </summary>
internal static partial class ListNames
{
    // More than any label has: they bound what a hostile text can cost.
    private const int MostNames = 300;
    private const int MostLinesOfName = 4;
    private const int MostLines = 400;

    private static readonly Lazy<Regex> MayContain = new(() => new Regex(
        $@"[.\s(\[]*(?:(?:colou?r(?:ant|ing|\s+additive)?s?\s+)?(?:{LabelWords.Alternatives(LabelWord.MayContain)})(?:\s*/\s*(?:{LabelWords.Alternatives(LabelWord.MayContain)}))?|\+/-|±)(?:\s*\(\s*(?:\+/-|±)\s*\))?\s*:?\s*",
        RegexOptions.CultureInvariant, TimeSpan.FromSeconds(5)));

    /// <summary>The names of a list, each with what it is known as.</summary>
    public static ImmutableArray<IngredientRead> Read(string body, IngredientDictionary dictionary)
    {
        var may = MayContain.Value.Match(FoldedText.Of(body));
        var main = may.Success ? body[..may.Index] : body;
        var items = Names(main, dictionary).Select(n => (n, May: false));
        if (may.Success)
            items = items.Concat(Names(body[(may.Index + may.Length)..], dictionary).Select(n => (n, May: true)));
        return [.. Named(items.Take(MostNames), dictionary)];
    }

    /// <summary>What a name is known as, kitchen names included; null where it is not.</summary>
    public static Ingredient? Known(string name, IngredientDictionary dictionary) =>
        Bare(name) is var bare && bare.Length > 1 ? dictionary.Find(bare) ?? KitchenNames.Find(bare, dictionary, ofOils: false) : null;

    /// <summary>Parts a list at commas, semicolons and bullets outside parentheses; the comma of 1,2-Hexanediol stays.</summary>
    public static IEnumerable<string> Split(string list)
    {
        var part = new StringBuilder();
        var open = 0;
        for (var i = 0; i < list.Length; i++)
        {
            var c = list[i];
            open = c switch { '(' or '[' => open + 1, ')' or ']' => Math.Max(0, open - 1), _ => open };
            var parts = (open == 0
                && c is ',' or ';' or '•' or '·' or '|' or '∙' or '‧' or '●' or '◦' or '*'
                && !(c == '*' && (part.Length == 0 || list[i - 1] != ' ')))
                && !(c == ',' && i > 0 && char.IsDigit(list[i - 1]) && i + 1 < list.Length && char.IsDigit(list[i + 1]));
            if (!parts)
            {
                part.Append(c);
                continue;
            }
            yield return part.ToString();
            part.Clear();
        }
        yield return part.ToString();
    }

    /// <summary>A name without footnote marks, percentages, bullets, or the word organic before it.</summary>
    public static string Bare(string name)
    {
        var bare = Footnote().Replace(Percent().Replace(ItemNumber().Replace(name, ""), ""), "").Trim()
            .TrimStart('-', '*', '+', '–', '—', '/')
            .TrimEnd('.', '*', '†', '‡', '+', ':', ' ', '-', '/', '–', '—').Trim();
        return Organic().Replace(Spaces().Replace(bare, " "), "").Trim();
    }

    /// <summary>The ways in which the end of one line and the start of the next may make a name:
    /// parted by a space, or a broken word.</summary>
    public static IEnumerable<string> Ways(string end, string start)
    {
        if (end.EndsWith('-') && !end.EndsWith(" -", StringComparison.Ordinal))
        {
            yield return end[..^1] + start;
            yield return end + start;
        }
        else
        {
            yield return $"{end} {start}";
        }
    }

    private static IEnumerable<IngredientRead> Named(IEnumerable<(string Name, bool May)> items, IngredientDictionary dictionary)
    {
        var ofOils = false;
        foreach (var (name, may) in items)
        {
            ofOils |= KitchenNames.BeginsOils(name);
            // "Saponified oils of olive, coconut and castor".
            if (ofOils
                && dictionary.Find(name) is null
                && And().Split(name) is { Length: > 1 } pair
                && pair.All(p => KitchenNames.Find(KitchenNames.AfterOils(p), dictionary, ofOils) is not null))
            {
                foreach (var part in pair)
                    yield return new(part, KitchenNames.Find(KitchenNames.AfterOils(part), dictionary, ofOils), may)
                    {
                        IsKitchenName = true,
                    };
                continue;
            }
            var known = dictionary.Find(name) ?? InTwoLanguages(name, dictionary);
            var kitchen = known is null
                ? KitchenNames.Find(AndFirst().Replace(KitchenNames.AfterOils(name), ""), dictionary, ofOils)
                : null;
            yield return new(name, known ?? kitchen, may) { IsKitchenName = kitchen is not null };
        }
    }

    /// <summary>Whether a list numbers its names from the first, as "1. Aqua 2. Glycerin".</summary>
    public static bool IsNumbered(string body) => FirstNumber().IsMatch(body);

    // "Sea Salt/Sel marin": a name, and the French for it.
    private static Ingredient? InTwoLanguages(string name, IngredientDictionary dictionary) =>
        name.Split('/', StringSplitOptions.TrimEntries) is [var one, var other]
            ? KnownWords.AreFrench(other) ? dictionary.Find(one) : KnownWords.AreFrench(one) ? dictionary.Find(other) : null
            : null;

    private static IEnumerable<string> Names(string body, IngredientDictionary dictionary) =>
        (IsNumbered(body) ? InlineNumbers() : ItemNumbers()).Split(body).SelectMany(Split).SelectMany(p => BySigns(p, dictionary))
            .SelectMany(p => ByLines(p, dictionary))
            .SelectMany(r => AndAlso().Split(r))
            .Select(Bare)
            .Where(n => n.Any(char.IsLetterOrDigit) && !NoName().IsMatch(n)).Select(n => Unbroken(n, dictionary))
            .SelectMany(n => Blended(n, dictionary));

    // Strokes, plus signs, dashes and full stops part names where at least half of what they part is known and the whole is not.
    private static IEnumerable<string> BySigns(string piece, IngredientDictionary dictionary)
    {
        if (piece.IndexOfAny(['/', '+', '-', '–', '—', '.', '\\', '~', '>']) < 0 || Known(OneLine(piece), dictionary) is not null)
            return [piece];
        foreach (var sign in new[] { Strokes(), Plus(), Dashes(), FullStops() })
        {
            var parts = sign.Split(piece).Where(p => p.Any(char.IsLetterOrDigit)).ToArray();
            if (parts.Length > 1
                && parts.Count(p => Known(OneLine(p), dictionary) is not null) is > 1 and var known
                && known * 2 >= parts.Length)
                return parts.SelectMany(p => BySigns(p, dictionary));
        }
        return [piece];
    }

    // Over lines without a separator: the parting with the fewest unknown names, of such the one with the most known, then the fewest.
    private static IEnumerable<string> ByLines(string piece, IngredientDictionary dictionary)
    {
        var lines = piece.Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        if (lines.Length is < 2 or > MostLines)
            return [OneLine(piece)];
        var best = new (int Unknown, int Known, int From, string Name)[lines.Length + 1];
        for (var to = 1; to <= lines.Length; to++)
        {
            best[to] = (int.MaxValue, 0, 0, "");
            for (var from = Math.Max(0, to - MostLinesOfName); from < to; from++)
            {
                var (name, isKnown) = Joined(lines.AsSpan(from, to - from), dictionary);
                var way = (Unknown: best[from].Unknown + (isKnown ? 0 : 1), Known: best[from].Known + (isKnown ? 1 : 0), From: from,
                    Name: name);
                var isBetter = way.Unknown < best[to].Unknown
                    || (way.Unknown == best[to].Unknown && (way.Unknown > 0 ? way.Known > best[to].Known : way.Known < best[to].Known));
                if (isBetter)
                    best[to] = way;
            }
        }
        var names = new List<string>();
        for (var at = lines.Length; at > 0; at = best[at].From)
            names.Add(best[at].Name);
        names.Reverse();
        return names;
    }

    private static (string Name, bool IsKnown) Joined(ReadOnlySpan<string> lines, IngredientDictionary dictionary)
    {
        var ways = new List<string> { lines[0] };
        foreach (var line in lines[1..])
            ways = [.. ways.SelectMany(w => Ways(w, line)).Take(8)];
        // "Phenoxyethanol" and "Parfum" below it are no perfume's name: kitchen names go over
        // lines only where the first is none by itself.
        var whole = false;
        foreach (var line in lines[..^1])
            whole |= dictionary.Find(Bare(line)) is not null;
        var known = ways.FirstOrDefault(w => whole ? dictionary.Find(Bare(w)) is not null : Known(w, dictionary) is not null);
        // A small letter after the hyphen goes on with the word; PEG- and a figure keep it.
        return (known ?? ways[lines.Length > 1 && ways.Count > 1 && !char.IsLower(lines[1][0]) ? ways.Count - 1 : 0], known is not null);
    }

    /// <summary>A name over lines as one.</summary>
    public static string OneLine(string piece)
    {
        var lines = piece.Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        return lines.Length == 0 ? "" : lines.Aggregate((a, b) => Ways(a, b).Last());
    }

    private static IEnumerable<string> Blended(string name, IngredientDictionary dictionary)
    {
        // A blend named with its parts: "Green Mica (Mica, Titanium Dioxide)".
        if (Blend().Match(name) is { Success: true } blend
            && dictionary.Find(name) is null
            && Split(blend.Groups["parts"].Value).Select(Bare).ToArray() is var parts && parts.All(p => dictionary.Find(p) is not null))
            return parts;
        var pair = And().Split(name);
        if (pair.Length > 1 && dictionary.Find(name) is null && pair.All(p => dictionary.Find(Bare(p)) is not null))
            return pair.Select(Bare);
        return [AndFirst().Replace(name, "") is { Length: > 0 } bare && dictionary.Find(bare) is not null ? bare : name];
    }

    // "PHENOXY-ETHANOL": the hyphen of a broken line belongs to no name.
    private static string Unbroken(string name, IngredientDictionary dictionary) =>
        name.Contains('-') && dictionary.Find(name) is null && dictionary.Find(name.Replace("- ", "").Replace("-", "")) is not null
            ? name.Replace("- ", "").Replace("-", "")
            : name;

    [GeneratedRegex(@"^\s*[0-9]{1,2}[.)]\s+")]
    private static partial Regex ItemNumber();

    // "1. Aqua", "2) Glycerin", each on its line.
    [GeneratedRegex(@"(?<=^|\n)\s*[0-9]{1,2}[.)](?:\s+|$)")]
    private static partial Regex ItemNumbers();

    [GeneratedRegex(@"^\s*1[.)]\s+\p{L}")]
    private static partial Regex FirstNumber();

    [GeneratedRegex(@"(?:^|\s+)[0-9]{1,2}[.)]\s+(?=\p{L})")]
    private static partial Regex InlineNumbers();

    [GeneratedRegex(@"\s*[/\\]\s*")]
    private static partial Regex Strokes();

    [GeneratedRegex(@"\s*\+\s*")]
    private static partial Regex Plus();

    [GeneratedRegex(@"\s+[-–—~>]+\s+|\s+[–—]|[–—]\s+")]
    private static partial Regex Dashes();

    [GeneratedRegex(@"(?<!\b(?:No|C\.I|Ext|C))\.(?:\s+|$)")]
    private static partial Regex FullStops();

    [GeneratedRegex(@"\s+(?:and|&|et|und|y|och|og|ja|és)\s+", RegexOptions.IgnoreCase)]
    private static partial Regex And();

    [GeneratedRegex(@"^[^(\[]+[(\[](?<parts>[^()\[\]]+,[^()\[\]]+)[)\]]?$")]
    private static partial Regex Blend();

    // Suppliers part the members of a blend so: "Phenoxyethanol (and) Caprylyl Glycol".
    [GeneratedRegex(@"\s*\(\s*(?:and|&)\s*\)\s*", RegexOptions.IgnoreCase)]
    private static partial Regex AndAlso();

    [GeneratedRegex(@"^(?:(?:certified\s+)?organic|vegan|natural|ingredients?|none)$", RegexOptions.IgnoreCase)]
    private static partial Regex NoName();

    [GeneratedRegex(@"^(?:and|&)\s+", RegexOptions.IgnoreCase)]
    private static partial Regex AndFirst();

    [GeneratedRegex(@"\(?\s*(?:[<>≤]\s*)?[0-9]+(?:[.,][0-9]+)?(?:\s*-\s*[0-9]+(?:[.,][0-9]+)?)?\s*%\s*\)?")]
    private static partial Regex Percent();

    [GeneratedRegex(@"^(?:certified\s+)?organic\s+|\s*\(organic\)$", RegexOptions.IgnoreCase)]
    private static partial Regex Organic();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Spaces();

    // "Sodium Hydroxide* (*none left in the finished bar)": what the mark says, in brackets behind the last name.
    [GeneratedRegex(@"\s*\(\s*[*†‡][^()]*\)?\s*$")]
    private static partial Regex Footnote();
}
