namespace LabelForge.Ingredients.Supplied;

/// <summary>Splits a supplier's list into pieces that hold one name each, but does not split a name that is known as it stands.</summary>
/// <param name="knows">Whether a text is a name that the dictionary knows.</param>
internal sealed partial class ListSplitter(Func<string, bool> knows)
{
    private const int MostCommasInAName = 4;

    private enum Ending { Comma, Line, Stop, Sure }

    /// <summary>The pieces in order, and the sentences after the list.</summary>
    public (ImmutableArray<string> Pieces, ImmutableArray<string> After) Split(string list)
    {
        var cut = Cut(list);
        var hasCommas = cut.Any(c => c.Ending == Ending.Comma);
        var pieces = new List<string>();
        var after = ImmutableArray.CreateBuilder<string>();
        var current = "";
        for (var at = 0; at < cut.Count; at++)
        {
            current = current.Length == 0 ? cut[at].Text : $"{current}\n{cut[at].Text}";
            var next = at + 1 < cut.Count ? cut[at + 1].Text : "";
            var ends = cut[at].Ending == Ending.Line && Closing().IsMatch(next) && !Known($"{current} {next}");
            if (cut[at].Ending == Ending.Line && next.Trim().Length > 0 && !ends && !LineParts(current, next, hasCommas))
                continue;
            pieces.Add(current);
            current = "";
            if (cut[at].Ending != Ending.Stop && !ends)
                continue;
            // After a full stop come more names, or sentences that are none; so after a line that begins as such sentences do.
            string[] rest = [.. cut.Skip(at + 1).Select(c => c.Text.Trim()).Where(t => t.Length > 0)];
            if (rest.Length == 0 || rest.Any(Known))
                continue;
            after.Add(string.Join(", ", rest).ReplaceLineEndings(" "));
            break;
        }
        var names = WithCommas([.. pieces.Where(p => p.Trim().Length > 0)]).SelectMany(Words).Where(p => p.Any(char.IsLetterOrDigit));
        return ([.. names], after.ToImmutable());
    }

    // Between two lines: one name broken, or two names?
    private bool LineParts(string line, string next, bool hasCommas) =>
        !Known($"{line} {next}") && ((Known(line) && Known(next)) || !hasCommas);

    private bool Known(string piece) => piece.Length < SuppliedText.MostCharactersOfAName && knows(NamePiece.Of(piece, knows).Name);

    private static List<(string Text, Ending Ending)> Cut(string list)
    {
        var inside = Brackets.Inside(list);
        var cut = new List<(string, Ending)>();
        var from = 0;
        for (var at = 0; at < list.Length; at++)
        {
            if (inside[at] || EndingAt(list, at) is not { } ending)
                continue;
            cut.Add((list[from..at], ending));
            from = at + 1;
        }
        cut.Add((list[from..], Ending.Sure));
        return cut;
    }

    private static Ending? EndingAt(string list, int at) => list[at] switch
    {
        ',' when IsInsideAName(list, at) => null,
        ',' => Ending.Comma,
        ';' or '|' => Ending.Comma,
        PaperText.Parting => Ending.Sure,
        PaperText.NoteWas => Ending.Stop,
        '\n' => BlankFollows(list, at) ? Ending.Sure : Ending.Line,
        '.' when EndsASentence(list, at) => Ending.Stop,
        _ => null,
    };

    // 1,2-Hexanediol; N,N-Dimethyl; 0,5 %: figures or letters on both sides and no space.
    private static bool IsInsideAName(string list, int at)
    {
        if (at == 0 || at + 1 >= list.Length || char.IsWhiteSpace(list[at + 1]))
            return false;
        var (left, right) = (Run(list, at - 1, -1), Run(list, at + 1, 1));
        if (left is 1 or 2 && right is 1 or 2)
        {
            var after = at + 1 + right;
            return list[after..Math.Min(list.Length, after + 3)].TrimStart(' ', '\'') is [',' or '-' or '%', ..];
        }
        return list[at - 1] is 'N' or 'O' or 'S' && list[at + 1] == list[at - 1] && at + 2 < list.Length && list[at + 2] == '-';
    }

    private static int Run(string list, int at, int step)
    {
        var digits = 0;
        for (; at >= 0 && at < list.Length && char.IsAsciiDigit(list[at]) && digits < 9; at += step)
            digits++;
        return digits;
    }

    private static bool BlankFollows(string list, int at)
    {
        while (++at < list.Length && list[at] is ' ' or '\t')
        {
        }
        return at < list.Length && list[at] == '\n';
    }

    // Not in "C.I. 77891", "No. 5", "Ext. Violet", "spp.", "max. 2 %", "0.5".
    private static bool EndsASentence(string list, int at)
    {
        var next = at + 1;
        while (next < list.Length && char.IsWhiteSpace(list[next]))
            next++;
        // A figure may follow a name that ends in a full stop: "Alcohol Denat. 5 %".
        if (next == at + 1 || (next < list.Length && !char.IsLetter(list[next]) && list[next] != PaperText.NoteWas))
            return next == list.Length;
        var from = at;
        while (from > 0 && (char.IsLetter(list[from - 1]) || list[from - 1] == '.'))
            from--;
        var word = list[from..at];
        return !word.Contains('.')
            && word.ToLowerInvariant() is not ("no" or "ext" or "spp" or "ssp" or "var" or "max" or "min" or "approx" or "denat" or "c"
                or "ca" or "sp" or "subsp");
    }

    private List<string> WithCommas(List<string> pieces)
    {
        var whole = new List<string>();
        for (var at = 0; at < pieces.Count; at++)
        {
            var taken = Enumerable.Range(2, MostCommasInAName - 1).Reverse()
                .FirstOrDefault(n => at + n <= pieces.Count && IsWithCommas(string.Join(',', pieces.Skip(at).Take(n))), 1);
            whole.Add(string.Join(',', pieces.Skip(at).Take(taken)));
            at += taken - 1;
        }
        return whole;
    }

    // How what follows a list begins, where no full stop ends the list: common usage.
    [GeneratedRegex(@"^\s*(?:store|keep|avoid|made (?:in|by|with)|best before|use (?:by|within)|net (?:wt|weight)|lot|batch|shelf "
        + @"life|do(?:es)? not|free (?:of|from)|for (?:external|professional|cosmetic)|distributed|manufactured|supplied|www\.|https?:|tel\b|phone|e-?mail|warning|caution|please|conserver|[àa] conserver|k[üu]hl|trocken|lagern|hergestellt|fabriqu|conservar|conservare|mantener|fabricado|prodotto|bewaren|przechowywa)", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Closing();

    private bool IsWithCommas(string piece) =>
        piece.Length < SuppliedText.MostCharactersOfAName
            && NamePiece.Of(piece, knows).Name is var name
            && name.Contains(',')
            && knows(name);

    private IEnumerable<string> Words(string piece)
    {
        string[] words = [.. Conjunctions.Split(piece, Known)];
        return words.Length > 1 && Conjunctions.IsBlend(piece) ? OneShare(words) : words;
    }

    // Glyceryl Stearate (and) PEG-100 Stearate 5 %: the figure is of the blend, so each holds at most so much.
    private string[] OneShare(string[] words)
    {
        var last = NamePiece.Of(words[^1], knows);
        if (last.Share == Measures.ShareRange.Unknown || words[..^1].Any(w => NamePiece.Of(w, knows).Share != Measures.ShareRange.Unknown))
            return words;
        var most = last.Share.High.Percent.ToString("0.########", System.Globalization.CultureInfo.InvariantCulture);
        return [.. words[..^1].Append(last.Name).Select(w => $"{w.Trim()} (together at most {most} percent) <= {most} %")];
    }
}
