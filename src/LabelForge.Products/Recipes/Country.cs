using System.Collections.Immutable;
using LabelForge.Ingredients;

namespace LabelForge.Recipes;

/// <summary>A country, as an address names it.</summary>
/// <param name="Code">Its two letters (ISO 3166-1).</param>
/// <param name="Name">Its short name in English.</param>
/// <param name="Currency">What is paid with there (ISO 4217).</param>
public sealed record Country(string Code, string Name, string Currency)
{
    private static readonly Lazy<ImmutableArray<Country>> Read = new(() => [.. DataTable.Shipped("places/countries")
        .SelectMany(t => t.Rows(["code", "name", "currency", "source"])).Select(r => new Country(r["code"], r["name"], r["currency"])).OrderBy(c => c.Name, StringComparer.Ordinal)]);

    // What people write besides the short name and the code.
    private static readonly Dictionary<string, string> Other = new(StringComparer.OrdinalIgnoreCase)
    {
        ["USA"] = "US",
        ["U.S.A."] = "US",
        ["United States of America"] = "US",
        ["UK"] = "GB",
        ["Great Britain"] = "GB",
        ["England"] = "GB",
        ["Scotland"] = "GB",
        ["Wales"] = "GB",
        ["Northern Ireland"] = "GB",
        ["Deutschland"] = "DE",
        ["Österreich"] = "AT",
        ["Schweiz"] = "CH",
        ["Suisse"] = "CH",
        ["Belgique"] = "BE",
        ["België"] = "BE",
        ["Nederland"] = "NL",
        ["España"] = "ES",
        ["Italia"] = "IT",
        ["Polska"] = "PL",
        ["Éire"] = "IE",
        ["Holland"] = "NL",
    };

    /// <summary>All, by name.</summary>
    public static ImmutableArray<Country> All => Read.Value;

    /// <summary>The currencies in use, in the order of their letters.</summary>
    public static ImmutableArray<string> Currencies => [.. All.Select(c => c.Currency).Distinct().Order(StringComparer.Ordinal)];

    /// <summary>The country that a person wrote: by its name or its code; null where none is meant.</summary>
    public static Country? Find(string written)
    {
        var text = written.Trim().TrimEnd('.');
        var code = Other.GetValueOrDefault(written.Trim()) ?? Other.GetValueOrDefault(text) ?? text;
        return All.FirstOrDefault(c => string.Equals(c.Code, code, StringComparison.OrdinalIgnoreCase) || string.Equals(c.Name, code, StringComparison.OrdinalIgnoreCase));
    }
}
