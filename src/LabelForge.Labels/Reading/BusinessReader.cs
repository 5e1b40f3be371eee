namespace LabelForge.Checks.Reading;

/// <summary>Who answers for the product and where, as a label says it. What is null was not found.</summary>
/// <param name="Spans">The places it stands in.</param>
/// <param name="Name">The business's name.</param>
/// <param name="LeadIn">The words before it: <c>Distributed by</c>.</param>
/// <param name="Street">Street and number, or a post office box.</param>
/// <param name="City">The city.</param>
/// <param name="State">The state, as written.</param>
/// <param name="Zip">The ZIP code.</param>
/// <param name="Foreign">A country other than the United States that stands in the address, or null.</param>
public sealed record BusinessRead(
    ImmutableArray<TextSpan> Spans, string? Name, string? LeadIn, string? Street, string? City, string? State, string? Zip,
    string? Foreign)
{
    /// <summary>The place in one line, or null.</summary>
    public string? Place =>
        string.Join(", ",
            new[] { Street, City, $"{State} {Zip}".Trim(), Foreign }.Where(t => !string.IsNullOrWhiteSpace(t))) is { Length: > 0 } line
            ? line
            : null;

    /// <summary>Whether mail would reach it: a street or box, a city, a state and a ZIP code.</summary>
    public bool HasMailAddress => Street is not null && City is not null && State is not null && Zip is not null;
}

/// <summary>Finds the business's name and place on a label.</summary>
public static partial class BusinessReader
{
    /// <summary>What stands on the label; nothing found is a record of nulls.</summary>
    /// <param name="text">The label's text, the ingredient list and the net quantity blanked.</param>
    public static BusinessRead Read(string text)
    {
        var place = City().Matches(text).Where(m => !NoCity().IsMatch(m.Groups["city"].Value))
            .OrderByDescending(m => m.Groups["zip"].Success).ThenByDescending(m => m.Index).FirstOrDefault();
        var led = LedName().Matches(text).OrderByDescending(m => m.Groups["lead"].Value.Length)
            .FirstOrDefault(m => IsName(m.Groups["name"].Value));
        var foreign = Abroad().Match(text) is { Success: true } a ? a.Groups["country"].Value : null;
        if (place is null)
        {
            var alone = led is not null ? Tidy(led.Groups["name"].Value) : Corporate(text) ?? Copyright(text);
            return new(led is null ? [] : [Span(led)], alone, led?.Groups["lead"].Value,
                Street().Match(text) is { Success: true } s ? s.Groups["street"].Value.Trim() : null, null, null, null, foreign);
        }
        var (city, cityStart) = CityOf(text, place);
        var before = text[..cityStart];
        var street = StreetAtEnd().Match(before[Math.Max(0, before.Length - 120)..]);
        var nameEnd = street.Success ? before.Length - street.Length : before.Length;
        var name = led is not null && led.Index < place.Index + place.Length
            ? Tidy(led.Groups["name"].Value)
            : InCity(place) ?? NameBefore(text[..nameEnd]) ?? Corporate(text) ?? Copyright(text);
        return new(
            [new TextSpan(Math.Min(nameEnd, led is { } l && l.Index < place.Index ? Math.Max(l.Index, nameEnd - 80) : nameEnd),
                place.Index + place.Length
                    - Math.Min(nameEnd, led is { } k && k.Index < place.Index ? Math.Max(k.Index, nameEnd - 80) : nameEnd))],
            name, led?.Groups["lead"].Value,
            street.Success ? Spaces().Replace(street.Groups["street"].Value, " ").Trim().TrimEnd(',') : null, city,
            place.Groups["state"].Value, place.Groups["zip"].Success ? place.Groups["zip"].Value : null, foreign);
    }

    /// <summary>The name of a business that stands by itself near the end of a label, below the
    /// list: few words, each with a capital; null where nothing is one.</summary>
    /// <param name="text">The label's text, all that was read blanked.</param>
    /// <param name="after">Where the list ends.</param>
    /// <param name="not">The statement of identity.</param>
    public static string? NameAfter(string text, int after, TextSpan? not)
    {
        var at = after;
        string? found = null;
        foreach (var line in text[Math.Min(after, text.Length)..].Split('\n'))
        {
            var start = at;
            at += line.Length + 1;
            var name = Tidy(line);
            if (name.Split(' ').Length is > 1 and < 6
                && name.All(c => char.IsLetter(c) || c is ' ' or '&' or '\'' or '’' or '.' or '-')
                && name.Split(' ').All(w => w.Length < 4 || char.IsUpper(w[0]))
                && IsName(name) && not?.Overlaps(new TextSpan(start, line.Length)) != true && !LabelWords.BeginsPart(name))
                found = name;
        }
        return found;
    }

    /// <summary>A line that names a workshop of the trade by its word for one, as <c>Savonnerie du Gué</c>; null where none does. For
    /// labels whose address stands apart from the name.</summary>
    internal static string? NameByTrade(string text) =>
        text.Split('\n').Select(Tidy)
            .FirstOrDefault(l => l.Split(' ').Length is > 1 and < 8
                && l.Length > 0
                && char.IsUpper(l[0])
                && HouseOfTrade().IsMatch(FoldedText.Of(l)));

    /// <summary>Words at the head of a label that may name a business: few, with capitals; null where none stand there.</summary>
    internal static string? NameAtHead(string text, TextSpan? not)
    {
        var first = text.Split('\n').FirstOrDefault(l => l.Trim().Length > 0) ?? "";
        var name = Tidy(Parts().Split(first).FirstOrDefault(p => p.Trim().Length > 0) ?? "");
        return not?.Overlaps(new TextSpan(text.IndexOf(first, StringComparison.Ordinal), first.Length)) != true
            && name.Length > 2
            && !name.Any(char.IsDigit) && IsName(name) && !LabelWords.BeginsPart(name) ? name : null;
    }

    /// <summary>Whether a name says by its words that it is a business's.</summary>
    public static bool IsCorporate(string name) => CorporateName().IsMatch(name);

    // "1 Example Lane Fairport, ME": the street's last word parts the street from a city that follows without a comma.
    private static (string City, int Start) CityOf(string text, Match place)
    {
        var city = place.Groups["city"];
        var start = city.Index;
        var value = city.Value;
        if (StreetWord().Matches(value) is { Count: > 0 } words
            && words[^1].Index + words[^1].Length < value.Length
            && BeginsWithNumber(text, start))
        {
            var cut = words[^1].Index + words[^1].Length;
            return (value[cut..].Trim(' ', ',', '.'), start + cut);
        }
        if (NameThenCity().Match(value) is { Success: true } both)
            return (both.Groups["city"].Value, start + both.Groups["city"].Index);
        return (Spaces().Replace(value, " ").Trim(), start);
    }

    // "Skerry Soapworks Fairport ME": nothing parts the name from the city but the word for a business.
    private static string? InCity(Match place) =>
        NameThenCity().Match(place.Groups["city"].Value) is { Success: true } both ? Tidy(both.Groups["name"].Value) : null;

    private static string? Copyright(string text) =>
        CopyrightName().Matches(text).Select(m => Tidy(m.Groups["name"].Value)).FirstOrDefault(IsName);

    private static bool BeginsWithNumber(string text, int at) => Number().IsMatch(text[Math.Max(0, at - 8)..at]);

    private const int LongestGap = 80;

    /// <summary>The name that stands just before an address: on its line, or else on the line above it.</summary>
    private static string? NameBefore(string before)
    {
        var above = before.TrimEnd(' ', ',', '\n', '•', '·', '|', '/', '-', '–', ';');
        var lines = above.Split('\n');
        // Over a list that was read stands what it is the list of.
        if (lines.Length == 0 || before.Length - above.Length > LongestGap)
            return null;
        // "Where: 12 Mill Road" below "Maker: Example Pantry": the word before the colon says what follows.
        var last = lines.Length > 1 && AloneBeforeColon().IsMatch(lines[^1]) ? lines[^2] : lines[^1];
        last = OwnLead().Replace(last, "");
        if (Sentence().IsMatch(last))
            return null;
        // Of a line of several sentences the last is the name.
        var part = PartBreak().Split(last).LastOrDefault(p => p.Trim().Length > 0) ?? "";
        var bare = Tidy(LeadIn().Replace(part, ""));
        return IsName(bare) ? bare : null;
    }

    private static string? Corporate(string text) =>
        CorporateName().Matches(text).Select(m => Tidy(m.Value)).FirstOrDefault(IsName);

    private static string Tidy(string name) =>
        Spaces().Replace(name, " ").Trim().Trim(',', ';', '.', '-', '–', '|', '•', '·', ':', '*', '#', '©', '(', ')', '"').Trim();

    // A name is short, begins with a capital or a figure, and is no other part of a label.
    private static bool IsName(string name)
    {
        var tidy = Tidy(name);
        return tidy.Length is > 1 and <= 60
            && tidy.Any(char.IsLetter)
            && (char.IsUpper(tidy[0]) || char.IsDigit(tidy[0]))
            && (IsCorporate(tidy) || !NoName().IsMatch(tidy))
            && IsTitled(tidy.Split(' '));
    }

    // Names are written with capitals: "Heals dry skin and smells good" is none.
    private static bool IsTitled(string[] words) =>
        words.Length <= 8
            && words.Where(w => w.Length > 3 && char.IsLetter(w[0])).ToArray() is var longer
            && longer.Count(w => char.IsUpper(w[0])) * 2 > longer.Length - (longer.Length == 0 ? 1 : 0);

    private static TextSpan Span(Match match) => new(match.Index, match.Length);

    [GeneratedRegex(@"(?<=^|[\s,.;•·|–—-])(?<city>\p{Lu}[\p{L}.'’]*(?:[ -]\p{Lu}?[\p{L}.'’]+){0,5})[ ]?[,.•·|/]?[ \n]{1,3}\(?(?<state>"
        + Region.StateCodes + "|" + Region.StateNames + "|" + Region.StatesShortened + @")\b\)?(?![ ](?!U\.?S)\p{L})(?:[ ]?[,.•·|/]?[ \n]{1,3}(?:USA[, ]+)?(?<zip>"
        + Postcode.American + @")(?![0-9]))?")]
    private static partial Regex City();

    // Mail kept at the post office for its owner stands where a street does, with or without the street of the office.
    private const string AtPostOffice = "(?:general[ ]delivery|poste[ ]restante)";

    [GeneratedRegex(@"(?<street>" + AtPostOffice + @"|(?:" + AtPostOffice + @"[ ]?[,;•·|/-]?[ \n]*)?(?:[0-9]{1,6}[A-Z]?(?:-[0-9A-Z]+)?[ ]+(?:[\p{L}0-9.'’#-]+[ ]*){1,6}(?:,?[ "
        + @"\n]*(?:suite|ste|unit|apt|apartment|floor|fl|bldg|building|no|#)\.?[ ]*[\w-]+)?|p\.?[ ]?o\.?[ ]?box[ "
        + @"]+\w+|(?:rt|rte|route|hwy|highway|state route|county road)\.?[ ]?[0-9]+(?:,?[ ]box[ ]\w+)?|rr?[ ]?[0-9]+[ ]box[ ]\w+))[ ]*[,.;•·|/-]?[ \n]*$",
        RegexOptions.IgnoreCase)]
    private static partial Regex StreetAtEnd();

    [GeneratedRegex(@"(?<street>\b[0-9]{1,6}[A-Z]?[ ]+(?:[\p{L}0-9.'’]+[ "
        + @"]){1,4}(?:st|street|ave|avenue|rd|road|ln|lane|dr|drive|way|blvd|boulevard|ct|court|pl|place|hwy|highway|terrace|trail|row|square)\b\.?|\bp\.?[ ]?o\.?[ ]?box[ ]+[0-9]+)", RegexOptions.IgnoreCase)]
    private static partial Regex Street();

    [GeneratedRegex(@"\b(?:street|st|avenue|ave|road|rd|lane|ln|drive|dr|way|boulevard|blvd|court|ct|place|pl|highway|hwy|row|square|trail|terrace)\b\.?", RegexOptions.IgnoreCase)]
    private static partial Regex StreetWord();

    [GeneratedRegex(@"[0-9][A-Za-z]?[ ]$")]
    private static partial Regex Number();

    [GeneratedRegex(@"(?<lead>(?:(?:hand\s?-?\s?)?(?:made|crafted|poured|manufactured|produced|distributed|packed|packaged|bottled|mfg\.?|mfd\.?|dist\.?|marketed|sold)(?:(?:\s+(?:exclusively|and\s+\w+|with love|in small batches))?(?:\s+in\s+(?:the\s+)?(?:USA|U\.S\.A\.|US|United States))?\s+(?:by|for)|(?:[ ]+(?!by\s*[:•|]?\s+(?-i:[\p{Lu}0-9“""«„]))[\p{L}.&'’]+){1,6}[ ]+by)(?=\s*[:•|]?\s+(?-i:[\p{Lu}0-9“""«„]))))\s*[:•|]?\s+(?<name>[^\n,;|•]{2,60}?)(?=\s*(?:[\n,;|•]|$|\.\s|\.$|\s+in\s+\p{Lu}|\s+by\s+(?-i:\p{Lu})|\s[-–—]\s|\s[0-9]{1,6}\s\p{Lu}))", RegexOptions.IgnoreCase)]
    private static partial Regex LedName();

    [GeneratedRegex(@"^\s*(?:(?:hand\s?-?\s?)?(?:\p{L}{2,}ed|made|cut|grown|mfg\.?|mfd\.?|dist\.?)\s+(?:\p{L}+\s+){0,4}?(?:by|for|in|at)(?:\s*:|(?=\s+(?-i:[\p{Lu}0-9])))|by\s|from\s|©(?:\s*[0-9]{4})?|business\s*:|address\s*:)\s*", RegexOptions.IgnoreCase)]
    private static partial Regex LeadIn();

    [GeneratedRegex(@"(?<=^|\n|[.,;|•] ?)(?:©\s*(?:[0-9]{4}\s*)?)?\p{Lu}[\p{L}'’&.]*(?:[ ](?:&|and|of|the|\+|\p{Lu}[\p{L}'’&]*)){0,5},?[ "
        + @"](?:Co\b\.?|Company\b|LLC\b|L\.L\.C\.|Inc\b\.?|Ltd\b\.?|Corp\b\.?|GmbH\b|Pty\b|Soapworks\b|Soapery\b|Works\b|Apothecary\b|Studio\b|Workshop\b|Farms?\b|Bodycare\b|Body Care\b|Botanicals\b|Bath House\b|Makers\b|Brothers\b|Sisters\b|Shop\b|Soaps\b)(?=\s*(?:[\n,.;|•]|$|[-–—]))", RegexOptions.IgnoreCase)]
    private static partial Regex CorporateName();

    [GeneratedRegex(@"^(?<name>\p{Lu}.*\b(?:Co\b\.?|Company|LLC|Inc\b\.?|Ltd\b\.?|Corp\b\.?|Soapworks|Soapery|Works|Apothecary|Studio|Workshop|Farms?|Bodycare|Botanicals|Makers|Soaps?|Goods|Supply))[ ]+(?<city>\p{Lu}.*)$", RegexOptions.IgnoreCase)]
    private static partial Regex NameThenCity();

    // "Made with love in Maine": words before the state that are no city.
    [GeneratedRegex(@"\b(?:in|by|made|love|from|with)$|^(?:made|hand\s?made|hand\s?crafted|love)\b", RegexOptions.IgnoreCase)]
    private static partial Regex NoCity();

    // "Nothing to it.": a small word last, and a full stop.
    [GeneratedRegex(@"\s(?!(?:co|inc|ltd|llc)\.)\p{Ll}+[.!]\s*$")]
    private static partial Regex Sentence();

    [GeneratedRegex(@"^\s*\p{L}[\p{L} ]{1,20}:\s*$")]
    private static partial Regex AloneBeforeColon();

    [GeneratedRegex(@"^\s*(?:maker|made by|who|business|company|producer|seller)\s*:\s*", RegexOptions.IgnoreCase)]
    private static partial Regex OwnLead();

    [GeneratedRegex(@"(?:©|\(c\)|copyright)\s*(?:[0-9]{4})?\s*(?<name>[^\n.,;|•]{2,60})", RegexOptions.IgnoreCase)]
    private static partial Regex CopyrightName();

    [GeneratedRegex(@"(?:(?<!\b(?:Co|Inc|Ltd|Corp|St|Mt|Dr|Mr|Mrs|Ms|No|Bros))[.;|•·]\s+|\s[-–—]\s)(?!\p{Ll})")]
    private static partial Regex PartBreak();

    [GeneratedRegex(@"\b(?:net\s*w|ingredients?|directions|warning|caution|(?:lot|batch)(?=[\s.:#]*(?:no\b|code\b|$|\S*[0-9]))\b|tested|cruelty|vegan|discontinue|www|https?|@|questions|comments|phone|hand\s?made(?!$)|made in|with love|small batch|bar soap|body (?:lotion|butter|scrub|wash|oil)|lip balm|sugar scrub|bath (?:bomb|salts?))\b|^(?:keep|store|use|rinse|lather|apply|avoid|call|visit|hand)(?:$|\s+(?:in|at|on|to|as|out|up|us|away|only|daily|well|with|the|a|an|your|onto|into|cool|dry|below|from|by|bar|wash|cream)\b)|^[0-9]{5}(?:-[0-9]{4})?$|^\+?[0-9 ().-]+$", RegexOptions.IgnoreCase)]
    private static partial Regex NoName();

    [GeneratedRegex(@"(?<=[\n,. ])(?<country>Canada|Mexico|China|France|Germany|Italy|Spain|Portugal|India|Japan|Korea|South "
        + @"Korea|Thailand|Vietnam|Turkey|Morocco|Ghana|United Kingdom|England|Scotland|Wales|Ireland|Australia|New "
        + @"Zealand|Netherlands|Belgium|Poland|Brazil|Taiwan|Indonesia|Greece|Switzerland|Austria|Sweden|Denmark|Norway|Finland)(?=\s*(?:[.\n,]|$))")]
    private static partial Regex Abroad();

    // A workshop, in French, Italian, Spanish, Portuguese, German, Dutch, Polish, Czech, Swedish and Danish; written by us.
    [GeneratedRegex(@"\b(?:savonnerie|atelier|laboratoires?|cosmetiques|saponificio|officina|laboratorio|taller|jaboneria|saboaria|seifenmanufaktur|seifensiederei|manufaktur|zeepmakerij|zeepatelier|mydlarnia|pracownia|mydlarna|tvalmakeri|saebevaerksted)\b")]
    private static partial Regex HouseOfTrade();

    [GeneratedRegex(@"[|•·]|\s[–—-]\s")]
    private static partial Regex Parts();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Spaces();
}
