using System.Collections.Frozen;

namespace LabelForge.Checks.Reading;

/// <summary>The ways to reach a business that stand on a label.</summary>
public sealed record ContactRead(ImmutableArray<TextSpan> Spans, ImmutableArray<string> Phones, ImmutableArray<string> Emails,
    ImmutableArray<string> Webs)
{
    /// <summary>Whether any of them could take a report of a bad reaction.</summary>
    public bool Any => Phones.Length + Emails.Length + Webs.Length > 0;

    /// <summary>The line of the label whose letters are those of the web address, which so names
    /// the business; null where none is.</summary>
    /// <param name="text">The label's text.</param>
    /// <param name="not">A place that does not count.</param>
    public string? NameIn(string text, TextSpan? not)
    {
        var hosts = Webs.Concat(Emails.Select(e => e[(e.IndexOf('@') + 1)..]))
            .Select(w => ContactReader.Host().Replace(w, "").Split('.', '/')[0].Replace("-", "").ToLowerInvariant())
            .Where(h => h.Length > 4).ToHashSet();
        var at = 0;
        foreach (var line in text.Split('\n'))
        {
            var start = at;
            at += line.Length + 1;
            foreach (var part in line.Split('|', '•', '·', '~').Select(p => p.Trim()))
            {
                if (part.Length is > 4 and < 60
                    && hosts.Contains(string.Concat(part.Where(char.IsLetterOrDigit)).ToLowerInvariant())
                    && not?.Overlaps(new TextSpan(start, line.Length)) != true)
                    return part;
            }
        }
        return null;
    }

    /// <summary>All in one line, or null.</summary>
    public string? Line => Any ? string.Join("  ", Phones.Concat(Emails).Concat(Webs)) : null;
}

/// <summary>Finds phones, e-mail and web addresses.</summary>
public static partial class ContactReader
{
    /// <summary>Reads them.</summary>
    public static ContactRead Read(string text)
    {
        var emails = Email().Matches(text);
        var rest = emails.Aggregate(text, (t, m) => t.Remove(m.Index, m.Length).Insert(m.Index, new string(' ', m.Length)));
        var webs = Web().Matches(rest).Concat(WebOfCountry().Matches(rest).Where(m => Endings.Value.Contains(m.Groups["ending"].Value)))
            .DistinctBy(m => m.Index).OrderBy(m => m.Index).ToArray();
        var abroad = PhoneAbroad().Matches(rest)
            .Where(m => m.Value.Count(char.IsDigit) is var figures
                && (m.Value[0] == '+' ? figures is >= 8 and <= 15 : figures is >= 9 and <= 11)).ToArray();
        var phones = Phone().Matches(rest)
            .Where(m => m.Value.Count(char.IsDigit) is 7 or 10 or 11
                && !abroad.Any(a => m.Index >= a.Index && m.Index < a.Index + a.Length))
            .Concat(abroad).OrderBy(m => m.Index).ToArray();
        return new(
            [.. emails.Concat(webs).Concat(phones).Select(m => new TextSpan(m.Index, m.Length))],
            [.. phones.Select(m => m.Value.Trim()).Distinct()], [.. emails.Select(m => m.Value).Distinct()],
            [.. webs.Select(m => m.Value.TrimEnd('.', ',', ';', '/')).Distinct()]);
    }

    // Countries end their addresses with their two letters, but for the United Kingdom; the European Union has an ending of its own.
    private static readonly Lazy<FrozenSet<string>> Endings = new(() => Country.All.Select(c => c.Code.ToLowerInvariant()).Append("uk")
        .Append("eu").ToFrozenSet(StringComparer.Ordinal));

    [GeneratedRegex(@"^(?:https?://)?(?:www\.)?", RegexOptions.IgnoreCase)]
    internal static partial Regex Host();

    [GeneratedRegex(@"[\w.+-]{1,64}@[\w-]{1,63}(?:\.[\w-]{2,63}){1,4}")]
    private static partial Regex Email();

    // A bare name with an ending counts as a web address where the ending is one that businesses use.
    [GeneratedRegex(@"(?:https?://|www\.)[\w-]{1,63}(?:\.[\w-]{1,63}){0,4}(?:/[\w./%?=&#-]*)?|(?<![\w@.-])[a-z0-9][\w-]{1,62}(?:\.[\w-]{2,63}){0,2}\.(?:com|net|org|co|us|shop|store|biz|info|io|example|studio|soap|ca|uk|co\.uk|eu|farm|life|me|gift|art|bio|boutique|beauty|care|earth|house|market|online|site|website|space|love|today|test|invalid)\b(?:/[\w./%?=&#-]*)?", RegexOptions.IgnoreCase)]
    private static partial Regex Web();

    [GeneratedRegex(@"(?<![\w.,/-])(?:\+?1[ .-]?)?(?:\([0-9]{3}\)\s?|[0-9]{3}[ .-])?[0-9]{3}[ "
        + @".-][0-9]{4}(?![\w/-])|(?<![\w.,/-])1-8[0-9][0-9]-[A-Z0-9-]{7,10}\b")]
    private static partial Regex Phone();

    // In small letters alone, as such addresses are printed: after a full stop without a space stands a capital.
    [GeneratedRegex(@"(?<![\w@.-])[a-z0-9][a-z0-9-]{2,62}(?:\.[a-z0-9-]{2,63}){0,2}\.(?<ending>[a-z]{2})\b(?:/[\w./%?=&#-]*)?(?![\w.-])")]
    private static partial Regex WebOfCountry();

    // With the country's number, or with the nought that numbers inside many countries begin with (ITU-T E.123; from memory).
    [GeneratedRegex(@"(?<![\w.,/+-])(?:\+[0-9]{1,3}[ .-]?(?:\(?[0-9]{1,4}\)?[ .-]?){1,5}[0-9]{2,4}|\(?0[1-9][0-9]{0,3}\)?[ /][0-9]{2,4}(?:[ "
        + @"-]?[0-9]{2,4}){1,3})(?![\w/-])")]
    private static partial Regex PhoneAbroad();
}
