namespace LabelForge.Checks.Reading;

/// <summary>Countries as labels name them, to two letters (ISO 3166-1 alpha-2; from memory).</summary>
public static class Countries
{
    private static readonly Dictionary<string, string> Codes = new(StringComparer.OrdinalIgnoreCase)
    {
        ["Austria"] = "AT",
        ["Österreich"] = "AT",
        ["Belgium"] = "BE",
        ["Belgique"] = "BE",
        ["Bulgaria"] = "BG",
        ["Croatia"] = "HR",
        ["Cyprus"] = "CY",
        ["Czechia"] = "CZ",
        ["Czech Republic"] = "CZ",
        ["Denmark"] = "DK",
        ["Danmark"] = "DK",
        ["Estonia"] = "EE",
        ["Finland"] = "FI",
        ["Suomi"] = "FI",
        ["France"] = "FR",
        ["Germany"] = "DE",
        ["Deutschland"] = "DE",
        ["Greece"] = "GR",
        ["Hungary"] = "HU",
        ["Ireland"] = "IE",
        ["Éire"] = "IE",
        ["Italy"] = "IT",
        ["Italia"] = "IT",
        ["Latvia"] = "LV",
        ["Lithuania"] = "LT",
        ["Luxembourg"] = "LU",
        ["Malta"] = "MT",
        ["Netherlands"] = "NL",
        ["The Netherlands"] = "NL",
        ["Nederland"] = "NL",
        ["Poland"] = "PL",
        ["Polska"] = "PL",
        ["Portugal"] = "PT",
        ["Romania"] = "RO",
        ["Slovakia"] = "SK",
        ["Slovenia"] = "SI",
        ["Spain"] = "ES",
        ["España"] = "ES",
        ["Sweden"] = "SE",
        ["Sverige"] = "SE",
        ["Iceland"] = "IS",
        ["Norway"] = "NO",
        ["Norge"] = "NO",
        ["Liechtenstein"] = "LI",
        ["Switzerland"] = "CH",
        ["United Kingdom"] = "GB",
        ["Great Britain"] = "GB",
        ["England"] = "GB",
        ["Scotland"] = "GB",
        ["Wales"] = "GB",
        ["Northern Ireland"] = "GB",
        ["UK"] = "GB",
        ["U.K."] = "GB",
        ["GB"] = "GB",
        ["Canada"] = "CA",
        ["USA"] = "US",
        ["U.S.A."] = "US",
        ["United States"] = "US",
        ["China"] = "CN",
        ["India"] = "IN",
        ["Japan"] = "JP",
        ["Australia"] = "AU",
        ["New Zealand"] = "NZ",
        ["Korea"] = "KR",
        ["Turkey"] = "TR",
        ["Mexico"] = "MX",
    };

    /// <summary>A country's English name for a sentence; the letters where it is not known.</summary>
    public static string Name(string code) => code switch
    {
        "US" => "the USA",
        "GB" => "the United Kingdom",
        "NL" => "the Netherlands",
        _ => Codes.FirstOrDefault(c => c.Value == code).Key ?? code,
    };

    /// <summary>The two letters of a country, or null.</summary>
    public static string? Code(string name) => Codes.GetValueOrDefault(name.Trim());
}
