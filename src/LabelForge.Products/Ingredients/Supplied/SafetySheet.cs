namespace LabelForge.Ingredients.Supplied;

/// <summary>Reads section 3 of a safety data sheet, "Composition/information on ingredients"
/// (Regulation (EC) No 1907/2006, Annex II; 29 CFR 1910.1200, Appendix D).</summary>
/// <remarks>
/// Sheets name what is hazardous and seldom all that is in a material, in no order that means anything. A row holds a name, a
/// CAS number and a share or band; in tables one a line, in forms one field a line. Without a CAS number nothing is taken for a row.
/// </remarks>
public static partial class SafetySheet
{
    private const int LongestName = 160;

    /// <summary>Reads the rows of section 3.</summary>
    /// <param name="text">The sheet, or that section of it.</param>
    /// <param name="knows">Whether a text is a known name as it stands.</param>
    /// <exception cref="InputException">There is no CAS number in it, it is too long, or a share cannot be.</exception>
    public static SuppliedList Read(string text, Func<string, bool> knows)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (text.Length > CertificateText.MostCharacters)
            throw new InputException("supplied.sheet-too-long");
        var section = Section(PaperText.Of(text).Replace(PaperText.Parting, ' '));
        var names = ImmutableArray.CreateBuilder<SuppliedName>();
        var unread = ImmutableArray.CreateBuilder<string>();
        var fields = new Fields();
        var before = "";
        foreach (var line in section.Split('\n').Select(l => Blanks().Replace(l, " ").Trim()).Where(l => l.Length > 0))
        {
            if (Field().Match(line) is { Success: true } field)
            {
                if (fields.Add(field.Groups["key"].Value, field.Groups["value"].Value.Trim()) is { } whole)
                    Enter(whole.Name, whole.Cas, whole.Share, line);
                continue;
            }
            if (Cas(line) is { } cas)
                Row(line, cas);
            else
                before = Heading().IsMatch(line) || line.Length > LongestName ? "" : line;
        }
        if (fields.Rest() is { } last)
            Enter(last.Name, last.Cas, last.Share, last.Name);
        return names.Count > 0
            ? new SuppliedList(names.ToImmutable(), unread.ToImmutable())
            : throw new InputException("supplied.no-cas-row");

        void Row(string line, (CasNumber Number, int At, int Length) cas)
        {
            var (front, back) = (line[..cas.At], line[(cas.At + cas.Length)..]);
            // The number may stand before the name, as may the share.
            var (name, share) = Shared(Bare(front));
            var (after, shareAfter) = Shared(Bare(back));
            if (!name.Any(char.IsLetter))
                name = after.Any(char.IsLetter) ? after : before;
            before = "";
            Enter(name, cas.Number, shareAfter ?? share, line);
        }

        void Enter(string name, CasNumber? cas, ShareRange? share, string line)
        {
            name = Tail().Replace(name, "").Trim(' ', ',', ';', ':', '-', '(', '|', '.');
            if (name.Length is 0 or > LongestName)
                unread.Add(line);
            else if (SuppliedText.NameOf(name, names.Count + 1, false, new Footnotes("", []), knows) is { } read)
                names.Add(read with { Cas = cas ?? read.Cas, Share = share ?? read.Share });
        }
    }

    private static string Section(string text)
    {
        var start = Begin().Match(text);
        if (!start.Success)
            return text;
        var rest = text[(start.Index + start.Length)..];
        var end = End().Match(rest);
        return end.Success ? rest[..end.Index] : rest;
    }

    private static (CasNumber Number, int At, int Length)? Cas(string line)
    {
        foreach (Match match in CasText().Matches(line))
        {
            if (CasNumber.Parse(match.Groups["cas"].Value) is { IsValue: true, Value: var read })
                return (read, match.Index, match.Length);
        }
        return null;
    }

    // Numbers of other registers, hazard classes and statements say nothing of the share.
    private static string Bare(string text) => Blanks().Replace(Others().Replace(text, " "), " ").Trim();

    private static (string Left, ShareRange? Share) Shared(string text)
    {
        var match = ShareText_().Matches(text).LastOrDefault(m => m.Groups["unit"].Success)
            ?? ShareText_().Matches(text).LastOrDefault(m => m.Groups["high"].Success || m.Groups["sign"].Success);
        if (match is null)
            return (text, null);
        var rest = (text[..match.Index] + " " + text[(match.Index + match.Length)..]).Trim();
        return (rest, Range(match));
    }

    private static ShareRange Range(Match match)
    {
        var (low, high) = (Figure(match.Groups["low"].Value),
            match.Groups["high"].Success ? Figure(match.Groups["high"].Value) : (decimal?)null);
        if (low > 100 || high > 100 || low > high)
            throw new InputException("supplied.no-share", ("match", match.Value.Trim()));
        var (from, to) = (match.Groups["sign"].Value.TrimStart(), high) switch
        {
            (_, { } most) => (low, most),
            (['<', ..] or ['≤', ..], _) => (0m, low),
            (['>', ..] or ['≥', ..], _) => (low, 100m),
            _ => (low, low),
        };
        return new ShareRange(Share.FromPercent(from), Share.FromPercent(to));
    }

    private static decimal Figure(string text) =>
        decimal.Parse(text.Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);

    /// <summary>Rows written as fields, one a line: a new name ends the row before.</summary>
    private sealed class Fields
    {
        private string? _name;
        private CasNumber? _cas;
        private ShareRange? _share;

        public (string Name, CasNumber? Cas, ShareRange? Share)? Add(string key, string value)
        {
            switch (key.ToLowerInvariant())
            {
                case var k when k.StartsWith("cas", StringComparison.Ordinal):
                    _cas = SafetySheet.Cas(value)?.Number ?? _cas;
                    return null;
                case var k when IsAmount(k):
                    _share = Shared(Bare(value + (value.Contains('%') ? "" : " %"))).Share ?? _share;
                    return null;
                case var k when k.StartsWith("ec", StringComparison.Ordinal)
                    || k.StartsWith("reach", StringComparison.Ordinal)
                    || k.StartsWith("index", StringComparison.Ordinal) || k.StartsWith("class", StringComparison.Ordinal):
                    return null;
            }
            var whole = Rest();
            (_name, _cas, _share) = (value, null, null);
            return whole;
        }

        public (string Name, CasNumber? Cas, ShareRange? Share)? Rest()
        {
            var whole = _name is { Length: > 0 } name && (_cas is not null || _share is not null)
                ? (name, _cas, _share)
                : ((string, CasNumber?, ShareRange?)?)null;
            _name = null;
            return whole;
        }

        private static bool IsAmount(string key) =>
            key.StartsWith("conc", StringComparison.Ordinal)
                || key.StartsWith("konz", StringComparison.Ordinal)
                || key.StartsWith("content", StringComparison.Ordinal)
                || key.StartsWith("weight", StringComparison.Ordinal)
                || key.StartsWith("share", StringComparison.Ordinal)
                || key.StartsWith("amount", StringComparison.Ordinal)
                || key.StartsWith("gehalt", StringComparison.Ordinal)
                || key.Contains('%');
    }

    [GeneratedRegex(@"[ \t\u00A0]+")]
    private static partial Regex Blanks();

    [GeneratedRegex(@"(?:^|\n)[^\S\n]*(?:section|abschnitt|rubrique|secci[oó]n|sezione|rubriek|sekcja)?\s*3\s*[.:)\-–]?\s*(?:composition|information on ingr|zusammensetzung|composici[oó]n|composizione|samenstelling|sk[lł]ad)[^\n]*", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant, 20_000)]
    private static partial Regex Begin();

    [GeneratedRegex(@"\n[^\S\n]*(?:section|abschnitt|rubrique|secci[oó]n|sezione|rubriek|sekcja)?\s*4\s*[.:)\-–]?\s*(?:first|erste|premiers|primeros|misure|eerste|[sś]rodki)", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant, 20_000)]
    private static partial Regex End();

    [GeneratedRegex(@"^(?:3\.[0-9]|chemical name|hazardous|components?\b.*\bcas|ingredients?\b.*\bcas|name\b.*\bcas|substances?$|mixtures?$|gemische?$|m[eé]langes?$|full text|additional|note)", RegexOptions.IgnoreCase)]
    private static partial Regex Heading();

    [GeneratedRegex(@"^(?<key>(?:chemical |substance |component |ingredient |inci |product "
        + @")?name|component|substance|ingredient|stoffname|bezeichnung|nom(?: chimique)?|nombre|nome|naam|nazwa|cas(?:[ "
        + @"-]*(?:no|nr|number|nummer))?\.?|ec(?:[ -]*(?:no|number))?\.?|reach[^:]*|index[^:]*|classification[^:]*|conc(?:entration|\.)?[^:]*|konzentration[^:]*|gehalt[^:]*|content[^:]*|weight[^:]*|share[^:]*|amount[^:]*|% ?(?:w/w|by weight)?)\s*:\s*(?<value>.*)$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant, 20_000)]
    private static partial Regex Field();

    [GeneratedRegex(@"(?:CAS(?:[\s-]*(?:no|number|nr|#))?\.?\s*[:#]?\s*)?(?<![0-9-])(?<cas>[0-9]{2,7}-[0-9][0-9]-[0-9])(?![0-9-])",
        RegexOptions.IgnoreCase)]
    private static partial Regex CasText();

    [GeneratedRegex(@"(?:EC|EINECS|EG|CE)(?:[\s-]*(?:no|number|nr|#))?\.?\s*:?\s*[0-9]{3}-[0-9]{3}-[0-9]|\b[0-9]{3}-[0-9]{3}-[0-9]\b|\b[0-9]{3}-[0-9]{3}-[0-9][0-9]-[0-9]\b|(?:REACH[^0-9]*)?\b01-[0-9]{10}-[0-9][0-9](?:-\w{4})?|\b(?:skin|eye|acute|aquatic|met|ox|flam|stot|resp|repr|muta|carc|asp)\.?\s*(?:irrit|dam|corr|tox|sens|chronic|acute|liq|sol|se|re)?\.?\s*(?:tox\.?)?\s*[0-9][ABC]?\b|\b(?:EU)?[HP][0-9]{3}[A-Za-z]?\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant, 20_000)]
    private static partial Regex Others();

    [GeneratedRegex(@"(?<![\w.,-])(?<sign>>=|<=|[<>≤≥])?\s*(?<low>[0-9]{1,3}(?:[.,][0-9]{1,4})?)\s*(?<unit>%)?\s*(?:(?:-|to|–|…|\.\.)\s*(?:<=|>=|[<>≤≥])?\s*(?<high>[0-9]{1,3}(?:[.,][0-9]{1,4})?)\s*)?(?<unit>%)?(?![\w-])", RegexOptions.CultureInvariant, 20_000)]
    private static partial Regex ShareText_();

    [GeneratedRegex(@"[\s,;|]*(?:CAS(?:[\s-]*(?:no|number|nr))?\.?\s*:?|\(\s*\)|\[\s*\])\s*$", RegexOptions.IgnoreCase)]
    private static partial Regex Tail();
}
