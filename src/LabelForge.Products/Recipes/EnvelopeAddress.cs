using System.Collections.Frozen;

namespace LabelForge.Recipes;

/// <summary>An address as it stands on an envelope, read into its parts.</summary>
/// <remarks>
/// Streets stand above the town; the town's line holds the state and the postcode, in the order of the country: "Town, ST 00000"
/// in the United States, "Town AB A1A 1A1" in Canada, the postcode on a line of its own in the United Kingdom, "00000 Town" on
/// most of the continent. What cannot be told stays in the town.
/// </remarks>
public static partial class EnvelopeAddress
{
    /// <summary>Reads an address; null where nothing is written.</summary>
    /// <param name="text">One line for each line of the envelope, or one line with commas.</param>
    /// <param name="usual">The country where none is written and the postcode's form tells none.</param>
    public static Place? Read(string text, string usual = "US")
    {
        var lines = text.Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).ToList();
        if (lines is [var only])
            lines = OneLine(only);
        if (lines.Count == 0)
            return null;
        var country = lines.Count > 1 && !HasFigure(lines[^1]) ? Country.Find(lines[^1]) : null;
        if (country is not null)
            lines.RemoveAt(lines.Count - 1);
        if (CodeLast().Match(lines[^1]) is { Success: true } last && CodeLast().GetGroupNames().Last(g => last.Groups[g].Success) is var of
            && (country is null ? of != "MT" : country.Code == of))
        {
            var before = lines[^1][..last.Index].Trim(' ', ',');
            lines.RemoveAt(lines.Count - 1);
            if (before.Length > 0)
                lines.Add(before);
            return Of(lines, lines.Count > 1 || !HasFigure(lines.FirstOrDefault() ?? "") ? lines.LastOrDefault() : null, null,
                last.Value.ToUpperInvariant(), of);
        }
        if (Canadian().Match(lines[^1]) is { Success: true } ca && country is null or { Code: "CA" })
            return Of(lines, Town(ca), Letters(ca, Region.Provinces), ca.Groups["code"].Value.ToUpperInvariant(), "CA");
        // As the label has it: the postcode after its town.
        if (lines.Count > 1 && country is not null && CodeAlone().IsMatch(lines[^1]))
            return Of(lines[..^1], lines[^2], null, lines[^1], country.Code);
        if (Continental().Match(lines[^1]) is { Success: true } eu && country is not { Code: "US" })
            return Of(lines, eu.Groups["town"].Value.Trim(), null, eu.Groups["code"].Value, country?.Code ?? usual);
        if (American().Match(lines[^1]) is { Success: true } us
            && (country is null or { Code: "US" })
            && Letters(us, Region.States) is { } state)
            return Of(lines, Town(us), state, us.Groups["code"].Value is { Length: > 0 } zip ? zip : null, "US");
        return Of(lines, lines.Count > 1 || !HasFigure(lines[^1]) ? lines[^1] : null, null, null, country?.Code ?? usual);
    }

    /// <summary>A place as people read it: street, town, state in full, postcode, country.</summary>
    public static string Understood(Place place) => string.Join(" · ", new[]
    {
        place.Street, place.City, place.Region is { } region ? Region.Name(region) : null, place.Postcode,
        place.Country is { } code ? Country.Find(code)?.Name ?? code : null,
    }.Where(p => !string.IsNullOrWhiteSpace(p)));

    private static Place Of(List<string> lines, string? town, string? region, string? postcode, string country)
    {
        var streets = lines.Take(lines.Count - (town is null ? 0 : 1)).Select(l => l.Trim(' ', ',')).ToImmutableArray();
        return new Place(streets.IsEmpty ? null : string.Join(", ", streets), town is { Length: > 0 } ? town : null, region, postcode,
            country);
    }

    // "14 Mill Road, Wendle, ME 00000": the last comma may part the town from its state.
    private static List<string> OneLine(string line)
    {
        var parts = line.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).ToList();
        var last = parts.Count > 1 && Country.Find(parts[^1]) is not null && !Region.States.ContainsKey(parts[^1].ToUpperInvariant())
            ? parts.Count - 2
            : parts.Count - 1;
        if (last > 0 && StateAndCode().IsMatch(parts[last]))
        {
            parts[last - 1] += ", " + parts[last];
            parts.RemoveAt(last);
        }
        return parts;
    }

    private static string Town(Match match) => match.Groups["town"].Value.Trim(' ', ',');

    private static string? Letters(Match match, FrozenDictionary<string, string> known)
    {
        var written = match.Groups["state"].Value.Trim();
        return known.ContainsKey(written.ToUpperInvariant()) ? written.ToUpperInvariant()
            : known.FirstOrDefault(k => string.Equals(k.Value, written, StringComparison.OrdinalIgnoreCase)).Key;
    }

    private static bool HasFigure(string text) => text.Any(char.IsAsciiDigit);

    // Each group is named by its country.
    [GeneratedRegex(@"\b(?:(?<GB>" + Postcode.British + ")|(?<IE>" + Postcode.Irish + ")|(?<MT>" + Postcode.Maltese + @"))\z",
        RegexOptions.IgnoreCase)]
    private static partial Regex CodeLast();

    [GeneratedRegex(@"^(?<town>.+?),? +(?<state>" + Region.ProvinceCodes + "|" + Region.ProvinceNames + @"),? +(?<code>"
        + Postcode.Canadian + @")\z", RegexOptions.IgnoreCase)]
    private static partial Regex Canadian();

    private const string CodeOfContinent = "(?:[A-Z]{1,2}-)?(?<code>" + Postcode.Dutch + @"(?= |\z)|" + Postcode.Portuguese + "|"
        + Postcode.Polish + "|" + Postcode.Parted + "|[0-9]{4,6})";

    [GeneratedRegex("^" + CodeOfContinent + @" +(?<town>\D.*)\z")]
    private static partial Regex Continental();

    [GeneratedRegex("^" + CodeOfContinent + @"\z")]
    private static partial Regex CodeAlone();

    [GeneratedRegex(@"^(?<town>.+?),? +(?<state>" + Region.StateCodes + "|" + Region.StateNames + @"),?(?: +(?<code>" + Postcode.American
        + @"))?\z", RegexOptions.IgnoreCase)]
    private static partial Regex American();

    [GeneratedRegex(@"^(?:[A-Za-z]{2}|[A-Za-z]{3,13}(?: [A-Za-z]{4,10})?)(?: +" + Postcode.American + "| +" + Postcode.Canadian + @")?\z",
        RegexOptions.IgnoreCase)]
    private static partial Regex StateAndCode();
}
