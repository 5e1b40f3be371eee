using System.Collections.Frozen;

namespace LabelForge.Recipes;

/// <summary>The states of the United States with what is addressed like one, and the provinces and territories of Canada.</summary>
/// <remarks>USPS, Publication 28, appendix B; Canada Post's addressing guidelines; both from
/// memory. Constants, so that patterns are made of them.</remarks>
public static class Region
{
    /// <summary>The letters of the states, parted by upright strokes.</summary>
    public const string StateCodes =
        "AL|AK|AZ|AR|CA|CO|CT|DE|DC|FL|GA|HI|ID|IL|IN|IA|KS|KY|LA|ME|MD|MA|MI|MN|MS|MO|MT|NE|NV|NH|NJ|NM|NY|NC|ND|OH|OK|OR|PA|RI|SC|SD|TN|TX|UT|VT|VA|WA|WV|WI|WY|PR|GU|AS|MP|VI";

    /// <summary>Their names, in the same order.</summary>
    public const string StateNames =
        "Alabama|Alaska|Arizona|Arkansas|California|Colorado|Connecticut|Delaware|District of "
            + "Columbia|Florida|Georgia|Hawaii|Idaho|Illinois|Indiana|Iowa|Kansas|"
        + "Kentucky|Louisiana|Maine|Maryland|Massachusetts|Michigan|Minnesota|Mississippi|Missouri|Montana|Nebraska|Nevada|New "
        + "Hampshire|New Jersey|New Mexico|"
        + "New York|North Carolina|North Dakota|Ohio|Oklahoma|Oregon|Pennsylvania|Rhode Island|South Carolina|South "
        + "Dakota|Tennessee|Texas|Utah|Vermont|Virginia|"
        + "Washington|West Virginia|Wisconsin|Wyoming|Puerto Rico|Guam|American Samoa|Northern Mariana Islands|Virgin Islands";

    /// <summary>How the names of states were shortened before they had two letters, and often are; only before a ZIP code are they told
    /// from words. From memory of the usual lists.</summary>
    public const string StatesShortened =
        @"(?:Ala|Ariz|Ark|Calif|Colo|Conn|Del|Fla|Ill|Ind|Kan|Kans|Ky|Mass|Mich|Minn|Miss|Mont|Neb|Nebr|Nev|N\.\s?H|N\.\s?J|N\.\s?M|N\.\s?Mex"
            + @"|N\.\s?Y|N\.\s?C|N\.\s?D|N\.\s?Dak|Okla|Ore|Oreg|Penna|Penn|R\.\s?I|S\.\s?C|S\.\s?D|S\.\s?Dak|Tenn|Tex|Vt|Va|Wash|W\.\s?Va|Wis|Wisc|Wyo|"
            + @"D\.\s?C|Md|La|Mo|Pa|Ga|Me)(?=\.?,?\s{1,3}[0-9]{5})";

    /// <summary>The letters of the provinces and territories, parted by upright strokes.</summary>
    public const string ProvinceCodes = "AB|BC|MB|NB|NL|NS|NT|NU|ON|PE|QC|SK|YT";

    /// <summary>Their names, in the same order.</summary>
    public const string ProvinceNames =
        "Alberta|British Columbia|Manitoba|New Brunswick|Newfoundland and Labrador|Nova Scotia|Northwest "
            + "Territories|Nunavut|Ontario|Prince Edward Island|Quebec|Saskatchewan|Yukon";

    /// <summary>The names of the states by their letters.</summary>
    public static FrozenDictionary<string, string> States { get; } = Table(StateCodes, StateNames);

    /// <summary>The names of the provinces by their letters.</summary>
    public static FrozenDictionary<string, string> Provinces { get; } = Table(ProvinceCodes, ProvinceNames);

    /// <summary>The name of a state or province by its letters; the letters themselves where they are not known.</summary>
    public static string Name(string letters) => States.GetValueOrDefault(letters) ?? Provinces.GetValueOrDefault(letters) ?? letters;

    private static FrozenDictionary<string, string> Table(string codes, string names) =>
        codes.Split('|').Zip(names.Split('|')).ToFrozenDictionary(r => r.First, r => r.Second, StringComparer.Ordinal);
}
