using System.Collections.Immutable;
using System.Text.RegularExpressions;

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

    /// <summary>The addresses in order.</summary>
    /// <param name="text">The label's text, the ingredient list and the net quantity blanked.</param>
    public static ImmutableArray<AddressRead> Read(string text) =>
        [.. Code().Matches(text).Take(MostAddresses).Select(m => Of(text, m)).OfType<AddressRead>().DistinctBy(a => a.Line)];

    private static AddressRead? Of(string text, Match code)
    {
        var after = Country().Match(text[(code.Index + code.Length)..Math.Min(text.Length, code.Index + code.Length + 48)]);
        var country = after.Success ? Countries.Code(after.Groups["country"].Value) : null;
        var shape = code.Groups.Values.Skip(1).First(g => g.Success).Name;
        country ??= shape is "digits" or "us" ? null : shape.ToUpperInvariant();
        // Five figures in a row are an address only with a place after them, or a country.
        if (shape == "digits" && !after.Success && !CityFollows().IsMatch(text[(code.Index + code.Length)..]))
            return null;
        country ??= shape == "us" ? "US" : null;
        var before = text[Math.Max(0, code.Index - LongestBefore)..code.Index];
        if (before.LastIndexOf("\n\n", StringComparison.Ordinal) is > 0 and var gap)
            before = before[(gap + 2)..];
        var parts = Break().Split(before).Select(p => p.Trim()).Where(p => p.Length > 0).ToArray();
        // The last part may be the city; the street is the nearest part with a number or a box.
        var street = Array.FindLastIndex(parts, p => Street().IsMatch(p));
        street = street >= 0 && parts.Length - street <= 4 ? street : -1;
        // "2 Example Quay, Dublin 2" and "8, rue Exemple": the street begins a part earlier.
        while (street > 0 && BeginsStreet().IsMatch(parts[street - 1]))
            street--;
        var nameAt = street > 0 ? street - 1 : street < 0 ? parts.Length - 2 : -1;
        var (name, lead) = street == 0 ? NameInside(parts[0]) : NameOf(nameAt >= 0 ? parts[nameAt] : null);
        var from = street >= 0 ? street : Math.Max(0, parts.Length - 1);
        var tail = code.Value.Trim() + (after.Success ? text.Substring(code.Index + code.Length, after.Length) : CityFollows().Match(text[(code.Index + code.Length)..]).Value);
        var line = Spaces().Replace(string.Join(", ", parts[from..].Append(tail.Trim(' ', ',', '.', '\n').Replace("\n", ", "))), " ");
        return new(new TextSpan(code.Index, code.Length), name, line, country, street >= 0, lead);
    }

    private static (string? Name, string? Lead) NameOf(string? part)
    {
        if (part is null)
            return (null, null);
        var lead = LeadIn().Match(part);
        var name = part[(lead.Success ? lead.Index + lead.Length : 0)..].Trim(' ', ':', '.', '-', '–', '©');
        return (name.Length is > 1 and <= 60 && name.Any(char.IsLetter) ? name : null, lead.Success ? lead.Groups["lead"].Value : null);
    }

    // "Responsible person: Example Ltd 2 Example Quay": nothing parts the name from the street.
    private static (string? Name, string? Lead) NameInside(string part) => NameOf(StreetNumber().Match(part) is { Success: true, Index: > 2 } at ? part[..at.Index] : null);

    [GeneratedRegex(@"(?<![\w-])(?:(?<gb>[A-Z]{1,2}\d[A-Z\d]?\s?\d[A-Z]{2})|(?<ca>[A-Z]\d[A-Z][ -]?\d[A-Z]\d)|(?<ie>(?:[AC-FHKNPRTV-Y]\d{2}|D6W)\s?[0-9AC-FHKNPRTV-Y]{4})|(?<nl>[1-9]\d{3}\s?[A-Z]{2}(?=\s+\p{Lu}\p{Ll}))|(?<pl>\d{2}-\d{3}(?=\s+\p{Lu}))|(?<us>(?:A[LKZR]|C[AOT]|D[CE]|FL|GA|HI|I[DLNA]|K[SY]|LA|M[EDAINSOT]|N[EVHJMYCD]|O[HKR]|P[AR]|RI|S[CD]|T[NX]|UT|V[TAI]|W[AVIY])[ ,]{1,2}\d{5}(?:-\d{4})?)|(?<digits>(?:[A-Z]{1,2}-)?\d{4,5}|\d{3}\s\d{2}|\d{4}-\d{3}))(?![\w-])")]
    private static partial Regex Code();

    // "Made in Canada" under an address is the product's country, not the address's.
    [GeneratedRegex(@"^[\s,]*(?!(?:made|manufactured|produced|product)\s+(?:in|of)\b)(?:\p{Lu}[\p{L}.'’-]+(?:[ -]\p{Lu}?[\p{L}.'’-]+){0,3}(?:[ ]\(\p{Lu}{2}\))?[\s,.–-]*)?\b(?<country>Vereinigtes\sKönigreich|Česká\srepublika|Magyarország|Niederlande|Royaume-Uni|Frankreich|Frankrijk|Allemagne|Duitsland|Slovensko|Slovenija|Irlandia|Alemania|Germania|Autriche|Pays-Bas|Danemark|Dänemark|Schweden|Hrvatska|България|Svizzera|Irlande|Irlanda|Ierland|Francia|Francja|Belgien|Espagne|Spanien|Italien|Pologne|Polonia|România|Latvija|Lietuva|Schweiz|Irland|Niemcy|België|Belgia|Spagna|Spanje|Italie|Italië|Włochy|Ελλάδα|Suisse|Polen|Suède|Česko|Eesti|Austria|Österreich|Belgium|Belgique|Bulgaria|Croatia|Cyprus|Czechia|Czech Republic|Denmark|Danmark|Estonia|Finland|Suomi|France|Germany|Deutschland|Greece|Hungary|Ireland|Éire|Italy|Italia|Latvia|Lithuania|Luxembourg|Malta|Netherlands|The Netherlands|Nederland|Poland|Polska|Portugal|Romania|Slovakia|Slovenia|Spain|España|Sweden|Sverige|Iceland|Norway|Norge|Liechtenstein|Switzerland|United Kingdom|Great Britain|England|Scotland|Wales|Northern Ireland|UK|U\.K\.|GB|Canada|USA|U\.S\.A\.|United States|China|India|Japan|Australia|New Zealand|Korea|Turkey|Mexico)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Country();

    [GeneratedRegex(@"^[ ]+\p{Lu}\p{L}{2,}(?:[ -]\p{Lu}?\p{L}+){0,3}(?=\s*(?:[\n,.(]|$))")]
    private static partial Regex CityFollows();

    [GeneratedRegex(@"[,\n|•·]+")]
    private static partial Regex Break();

    [GeneratedRegex(@"\b\d{1,5}[A-Z]?\b|\b(?:p\.?\s?o\.?\s?box|unit|suite|c\.?p\.?)\s*\d+|(?:straße|strasse|str\.|rue|via|calle|street|road|lane|quay|avenue)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Street();

    [GeneratedRegex(@"^\d{1,5}[A-Z]?(?:\s+\p{L}.*)?$", RegexOptions.IgnoreCase)]
    private static partial Regex BeginsStreet();

    [GeneratedRegex(@"\b\d{1,5}[A-Z]?\s+\p{L}", RegexOptions.IgnoreCase)]
    private static partial Regex StreetNumber();

    [GeneratedRegex(@"^.*?(?<lead>(?:EU|UK|EC)?\s*responsible\s+person(?:\s*\((?:EU|UK|RP)\))?|(?:EU|UK)\s+RP|RP|personne\s+responsable|verantwortliche\s+person|persona\s+responsabile|persona\s+responsable|verantwoordelijke\s+persoon|osoba\s+odpowiedzialna|pessoa\s+responsável|ansvarig\s+person|ansvarlig\s+person|vastuuhenkilö|odpovědná\s+osoba|zodpovedná\s+osoba|hergestellt\s+(?:von|für)|prodotto\s+da|fabricado\s+por|gemaakt\s+door|wyprodukowano\s+przez|imported\s+by(?:\s*/\s*importé\s+par)?|importé\s+par|imported\s+for|importer|importateur|distributed\s+by|manufactured\s+(?:by|for)|made\s+(?:[\p{L} ]{0,24}\s)?(?:by|for)|produced\s+(?:by|for)|fabriqué\s+(?:par|pour))\s*[:\-–]?\s*", RegexOptions.IgnoreCase)]
    private static partial Regex LeadIn();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Spaces();
}
