namespace LabelForge.Checks.Reading;

/// <summary>An address as it stands on a label, anywhere in the world.</summary>
/// <param name="Span">Its place.</param>
/// <param name="Name">The name before it, or null.</param>
/// <param name="Line">The address in one line.</param>
/// <param name="Country">The country in two letters (ISO 3166-1), or null where nothing tells it.</param>
/// <param name="HasStreet">Whether a street and number, or a post office box, stands in it.</param>
/// <param name="LeadIn">The words before the name: <c>Responsible person</c>, <c>Imported by</c>; or null.</param>
public sealed record AddressRead(TextSpan Span, string? Name, string Line, string? Country, bool HasStreet, string? LeadIn);

/// <summary>Finds addresses by their postal codes and the countries beside them.</summary>
/// <remarks>The shapes of postal codes: Universal Postal Union, addressing systems by country; from memory.</remarks>
public static partial class AddressReader
{
    private const int MostAddresses = 8;
    private const int LongestBefore = 160;
    private const int LongestAfter = 96;

    // City, street and district may stand between a postal code and the country.
    private const int MostWordsToCountry = 10;

    private static readonly Lazy<Regex> LeadIn = new(() => new Regex(
        $@"^.*?(?<![\p{{L}}])(?<lead>(?:{LabelWords.Alternatives(LabelWord.Responsible)})(?:\s*\((?:eu|uk|ue|rp)\))?(?:\s*/\s*(?:{LabelWords.Alternatives(LabelWord.Responsible)}))?|(?:hand\s?)?made\s+(?:[\p{{L}} ]{{0,24}}\s)?(?:by|for))(?![\p{{L}}])\s*[:\-–]?\s*",
        RegexOptions.CultureInvariant, TimeSpan.FromSeconds(5)));

    // What begins after an address on its line or the next: another part of the label.
    private static readonly Lazy<Regex> Ends = new(() => new Regex(
        $@"\n\s*\n|(?<![\p{{L}}])(?:{string.Join('|', new[] { LabelWord.MadeIn, LabelWord.Lot, LabelWord.BestBefore, LabelWord.Responsible, LabelWord.Ingredients }.Select(LabelWords.Alternatives))})(?![\p{{L}}])",
        RegexOptions.CultureInvariant, TimeSpan.FromSeconds(5)));

    /// <summary>The addresses in order.</summary>
    /// <param name="text">The label's text, the ingredient list and the net quantity blanked.</param>
    public static ImmutableArray<AddressRead> Read(string text)
    {
        var coded = Code().Matches(text).Take(MostAddresses).Select(m => Of(text, m)).OfType<AddressRead>().DistinctBy(a => a.Line)
            .ToImmutableArray();
        return coded.IsEmpty ? WithoutCode(text) : coded;
    }

    private static AddressRead? Of(string text, Match code)
    {
        var afterAt = code.Index + code.Length;
        var after = After(text, afterAt);
        var found = Countries.FirstIn(after, MostWordsToCountry);
        var shape = code.Groups.Values.Skip(1).First(g => g.Success).Name;
        var country = found?.Code ?? CountryBefore(code.Value) ?? (shape is "digits" or "us" ? null : shape.ToUpperInvariant());
        // Five figures in a row are an address only with a place after them, or a country.
        var city = CityFollows().Match(after);
        if ((shape == "digits" && found is null && country is null && !city.Success && !IsAfterCity(text, code))
            || (shape == "mt" && found is null))
            return null;
        country ??= shape == "us" ? "US" : null;
        var from = Math.Max(0, code.Index - LongestBefore);
        // Half a line is no name.
        if (from > 0 && text.IndexOf('\n', from - 1, code.Index - from + 1) is >= 0 and var endOfLine)
            from = endOfLine + 1;
        var before = text[from..code.Index];
        if (before.LastIndexOf("\n\n", StringComparison.Ordinal) is >= 0 and var gap)
            (before, from) = (before[(gap + 2)..], from + gap + 2);
        if (Begins(before) is > 0 and var begin)
            (before, from) = (before[begin..], from + begin);
        var parts = Break().Split(before).Select(p => p.Trim()).Where(p => p.Any(char.IsLetterOrDigit)).ToArray();
        // The last part may be the city; the street is the nearest part with a number or a box.
        var street = Array.FindLastIndex(parts, p => Street().IsMatch(p));
        street = street >= 0 && parts.Length - street <= 4 ? street : -1;
        // "2 Example Quay, Dublin 2" and "8, rue Exemple": the street begins a part earlier.
        while (street > 0 && (BeginsStreet().IsMatch(parts[street - 1]) || IsOfStreet().IsMatch(parts[street - 1])))
            street--;
        // Where the city comes after its code, what stands before it is the street or the name.
        var nameAt = street > 0 ? street - 1 : street < 0 ? parts.Length - (city.Success ? 1 : 2) : -1;
        // "Example Goods, Inc.": the comma before a legal form parts nothing.
        var whole = nameAt > 0 && LegalForms.IsForm(parts[nameAt]) ? $"{parts[nameAt - 1]}, {parts[nameAt]}" : null;
        var (name, lead) = street == 0 ? NameInside(parts[0]) : NameOf(whole ?? (nameAt >= 0 ? parts[nameAt] : null));
        nameAt -= whole is null ? 0 : 1;
        var tail = code.Value.Trim() + (found is { } f ? after[..(f.Start + f.Length)] : city.Value);
        var first = street >= 0 ? street : nameAt >= 0 && city.Success ? parts.Length : Math.Max(0, parts.Length - 1);
        var line = Spaces().Replace(string.Join(", ", parts[first..].Append(tail.Trim(' ', ',', '.', '\n').Replace("\n", ", "))), " ");
        var begins = parts.Length == 0
            ? code.Index
            : from
                + Math.Max(0,
                    before.LastIndexOf(parts[Math.Max(0, Math.Min(nameAt >= 0 && name is not null ? nameAt : first, parts.Length - 1))],
                        StringComparison.Ordinal));
        var hasStreet = street >= 0 || (found is { } c && Street().IsMatch(after[..c.Start]));
        return new(new TextSpan(begins, code.Index - begins + tail.Length), name, line, country, hasStreet, lead);
    }

    // "гр. Пловдив 4000, ул. Измислена 7": the city before its code, the street after it.
    private static bool IsAfterCity(string text, Match code) =>
        CityBefore().IsMatch(text[Math.Max(0, code.Index - 40)..code.Index])
            && text[(code.Index + code.Length)..Math.Min(text.Length, code.Index + code.Length + 60)].Split('\n')[0] is [',', ..] after
            && Street().IsMatch(after);

    // "B-9000 Gent": the letters of the country's vehicles, or its two letters, before the code.
    private static string? CountryBefore(string code) =>
        code.IndexOf('-') is > 0 and <= 3 and var end && code[..end].All(char.IsLetter) ? code[..end] switch
        {
            "A" => "AT",
            "B" => "BE",
            "D" => "DE",
            "E" => "ES",
            "F" => "FR",
            "H" => "HU",
            "I" => "IT",
            "L" => "LU",
            "N" => "NO",
            "P" => "PT",
            "S" => "SE",
            "SLO" => "SI",
            var two => two.Length == 2 && Countries.Name(two) != two ? two : null,
        }
        : null;

    // Before an address, on its lines, may stand a lot, a date or directions: it begins after them, or with who answers for it.
    private static int Begins(string before)
    {
        var folded = FoldedText.Of(before);
        if (LabelWords.Pattern(LabelWord.Responsible).Matches(folded) is { Count: > 0 } led)
            return led[^1].Index;
        var last = new[] { LabelWord.BestBefore, LabelWord.Lot, LabelWord.Warnings, LabelWord.Directions }
            .SelectMany(w => LabelWords.Pattern(w).Matches(folded)).Select(m => m.Index).DefaultIfEmpty(-1).Max();
        return last >= 0 && before.IndexOf('\n', last) is >= 0 and var end ? end + 1 : 0;
    }

    private static string After(string text, int at)
    {
        var after = text[at..Math.Min(text.Length, at + LongestAfter)];
        var folded = FoldedText.Of(after);
        var end = Ends.Value.Match(folded) is { Success: true } part ? part.Index : after.Length;
        return after[..(Code().Match(after) is { Success: true } next && next.Index < end ? next.Index : end)];
    }

    // No code, but a street and at the end of its lines a country: "15 Example Quay, Valletta, Malta".
    private static ImmutableArray<AddressRead> WithoutCode(string text)
    {
        var found = ImmutableArray.CreateBuilder<AddressRead>();
        var at = 0;
        foreach (var whole in text.Split('\n'))
        {
            var start = at;
            at += whole.Length + 1;
            // After the country a sentence may follow: "Valparaíso, Chile. Fabricado en Chile".
            var line = CountryAndMore().Match(whole) is { Success: true } cut && Countries.Code(cut.Groups["country"].Value) is not null
                ? whole[..(cut.Groups["country"].Index + cut.Groups["country"].Length)]
                : whole;
            if (found.Count < MostAddresses && InProvince(text, line, start) is { } province)
            {
                found.Add(province);
                continue;
            }
            var last = Break().Split(line).LastOrDefault(p => p.Any(char.IsLetter))?.Trim(' ', '.') ?? "";
            if (found.Count >= MostAddresses
                || Countries.Code(last) is not { } country
                || (Ends.Value.Match(FoldedText.Of(line)) is { Success: true } other
                    && !LeadIn.Value.IsMatch(FoldedText.Of(line))
                    && other.Index < line.LastIndexOf(last, StringComparison.Ordinal)))
                continue;
            var blockAt = Math.Max(text.LastIndexOf("\n\n", Math.Max(0, start - 1), StringComparison.Ordinal) + 2,
                Math.Max(0, start - LongestBefore));
            blockAt = Math.Min(start, blockAt < 2 ? 0 : blockAt);
            var parts = Break().Split(text[blockAt..(start + line.Length)]).Select(p => p.Trim()).Where(p => p.Any(char.IsLetterOrDigit))
                .ToArray();
            var street = Array.FindLastIndex(parts, p => Street().IsMatch(p));
            if (street < 0 || parts.Length - street > 4)
                continue;
            var (name, lead) = street == 0 ? NameInside(parts[0]) : NameOf(parts[street - 1]);
            found.Add(new(new TextSpan(blockAt, start + line.Length - blockAt), name, string.Join(", ", parts[street..]), country, true,
                lead));
        }
        return found.ToImmutable();
    }

    // "Plain Pits Ltd., Lethbridge, Alberta": a city and its province are a place in Canada, a code or none.
    private static AddressRead? InProvince(string text, string line, int start)
    {
        if (Province().Match(line) is not { Success: true } place)
            return null;
        // The name stands before the city, or on the line over it.
        var above = text[..start].TrimEnd(' ', '\n');
        var from = place.Index > 0 ? start : above.LastIndexOf('\n') + 1;
        var (name, lead) = NameOf(Break().Split(place.Index > 0 ? line[..place.Index] : above[from..])
            .LastOrDefault(p => p.Any(char.IsLetterOrDigit))?.Trim());
        return name is null
            ? null
            : new(new TextSpan(from, start + place.Index + place.Length - from), name,
                Spaces().Replace(place.Value, " ").Trim(' ', ','), "CA", false, lead);
    }

    private static (string? Name, string? Lead) NameOf(string? part)
    {
        if (part is null || IsSentence().IsMatch(part))
            return (null, null);
        var lead = LeadIn.Value.Match(FoldedText.Of(part));
        var name = OtherLead().Replace(part[(lead.Success ? lead.Index + lead.Length : 0)..].Trim(' ', ':', '.', '-', '–', '©'), "");
        return (name.Length is > 1 and <= 60 && name.Count(char.IsLetter) > 1 && !Opening().IsMatch(name) && !IsTalk(name) ? name : null,
            lead.Success ? part.Substring(lead.Groups["lead"].Index, lead.Groups["lead"].Length) : null);
    }

    // "leaves skin soft": words without any capital are no name.
    private static bool IsTalk(string name) => char.IsLower(name[0]) && name.Count(c => c == ' ') > 1 && !name.Any(char.IsUpper)
        && !name.Contains('&');

    /// <summary>The lines of a place, but for sentences among them: those belong to no address.</summary>
    internal static IEnumerable<TextSpan> WithoutSentences(string text, TextSpan place)
    {
        var isInCapitals = CapitalLetters.AreAll(text);
        for (var at = place.Start; at < place.End;)
        {
            var end = text.IndexOf('\n', at, place.End - at) is >= 0 and var found ? found : place.End;
            var line = text[at..end].Trim();
            if (!(isInCapitals ? IsSentence().IsMatch(line.ToLowerInvariant()) : IsShortSentence().IsMatch(line)))
                yield return new(at, end - at);
            at = end + 1;
        }
    }

    [GeneratedRegex(@",\s*(?<country>\p{Lu}[\p{L} ]{2,30})\.\s+\p{Lu}")]
    private static partial Regex CountryAndMore();

    [GeneratedRegex(@"(?<=,\s?|^)\p{Lu}[\p{L}.'’ -]{1,30}(?:,\s*|\s+(?=\())\(?(?:" + Region.ProvinceCodes + "|" + Region.ProvinceNames
        + @"|Québec|Colombie-Britannique|Nouveau-Brunswick|Nouvelle-Écosse)\b\)?(?=\s*(?:$|[.,;|•·]|[–—-]\s))")]
    private static partial Regex Province();

    // Many words, a small one last, and a full stop: no name.
    [GeneratedRegex(@"^\S+(?:\s+\S+){3,}\s+(?!(?:inc|ltée|enr|cie|ltd|co)\.)\p{Ll}+[.!]$")]
    private static partial Regex IsSentence();

    [GeneratedRegex(@"^\p{Lu}\S*(?:\s+\S+)+\s+\p{Ll}+[.!]$")]
    private static partial Regex IsShortSentence();

    // "Responsible person: Example Ltd 2 Example Quay": nothing parts the name from the street.
    private static (string? Name, string? Lead) NameInside(string part) =>
        NameOf(StreetNumber().Match(part) is { Success: true, Index: > 2 } at ? part[..at.Index] : null);

    [GeneratedRegex(@"(?<![\w-])(?:(?<gb>" + Postcode.British + ")|(?<ca>" + Postcode.Canadian + @")|(?<ie>" + Postcode.Irish
        + @")|(?<nl>(?!0)" + Postcode.Dutch + @"(?=\s+\p{Lu}\p{Ll}))|(?<pl>" + Postcode.Polish + @"(?=\s+\p{Lu}))|(?<us>(?:"
        + Region.StateCodes + ")[ ,]{1,2}" + Postcode.American + @")|(?<mt>" + Postcode.Maltese
        + @"(?=[\s,]))|(?<digits>(?:[A-Z]{1,2}-)?[0-9]{4,6}|" + Postcode.Parted + "|" + Postcode.Portuguese + @"))(?![\w-])")]
    private static partial Regex Code();

    [GeneratedRegex(@"^[ ]+\p{Lu}[\p{L}’'.]{2,}(?:[ -]\p{Lu}?\p{L}+){0,3}(?:[ ](?:[0-9]{1,2}|\p{Lu}))?(?=\s*(?:[\n,.(·|•–-]|$))")]
    private static partial Regex CityFollows();

    [GeneratedRegex(@"[,\n|•·]+")]
    private static partial Regex Break();

    [GeneratedRegex(@"\b(?![0-9]{1,2}\s?M\b)[0-9]{1,5}[A-Z]?\b|\b(?:p\.?\s?o\.?\s?box|unit|suite|c\.?p\.?)\s*[0-9]+|(?:general delivery|poste restante|postlagernd|straße|strasse|str\.|rue|via|calle|street|road|lane|quay|avenue|row|wynd|park|ul\.|ул\.|οδος|οδός|utca|tänav|gatan|gade|vej|iela|gatve|ulica|straat|laan|weg|platz|gasse)\b|\b(?-i:quai|place|chemin|impasse|allée|boulevard|route|plaza|paseo|camino|travessa|rua|largo|piazza|corso|viale|vicolo|ulica|náměstí|rynek|plac)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Street();

    [GeneratedRegex(@"^(?![0-9]{1,2}\s?M\b)[0-9]{1,5}[A-Z]?(?:\s+\p{L}.*)?$", RegexOptions.IgnoreCase)]
    private static partial Regex BeginsStreet();

    // "Unit 12", and "rue du Modèle" after its number: no names.
    [GeneratedRegex(@"^(?:(?i:unit|suite|ste|apt|flat|floor|box|p\.?\s?o\.? box|bureau|local|app|appartement|étage|bâtiment|bât|piso|bajo|interno|top|stiege)\.?\s*#?[0-9A-Z]{1,4}|(?:rue|avenue|av\.|boul\.|boulevard|chemin|ch\.|rang|route|impasse|allée|place|quai|via|viale|corso|piazza|calle|c/|avda\.|paseo|plaza|camino|rua|travessa|largo|ul\.|ulica|al\.)\s.*)$")]
    private static partial Regex IsOfStreet();

    [GeneratedRegex(@"\b[0-9]{1,5}[A-Z]?\s+\p{L}", RegexOptions.IgnoreCase)]
    private static partial Regex StreetNumber();

    // "Vyrába: Name": whatever word stands before a colon is none of the name.
    [GeneratedRegex(@"^[\p{L} ./]{3,32}:\s*(?=\p{Lu})")]
    private static partial Regex OtherLead();

    [GeneratedRegex(@"\p{Lu}[\p{L}.-]{2,} $")]
    private static partial Regex CityBefore();

    [GeneratedRegex(@"(?:^|\s)[0-9]{1,2}\s?M\W*$")]
    private static partial Regex Opening();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Spaces();
}
