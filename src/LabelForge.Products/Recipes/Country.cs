using System.Collections.Frozen;
using LabelForge.Checks.Reading;
using LabelForge.Ingredients;

namespace LabelForge.Recipes;

/// <summary>A country, as an address names it.</summary>
/// <param name="Code">Its two letters (ISO 3166-1).</param>
/// <param name="Name">Its short name in English.</param>
/// <param name="French">Its short name in French.</param>
/// <param name="Currency">What is paid with there (ISO 4217).</param>
public sealed partial record Country(string Code, string Name, string French, string Currency)
{
    private static readonly Lazy<ImmutableArray<Country>> Read = new(() => [.. DataTable.Embedded("places/countries")
        .SelectMany(t => t.Rows(["code", "name", "french", "currency", "source"]))
        .Select(r => new Country(r["code"], r["name"], r["french"], r["currency"]))
        .OrderBy(c => c.Name, StringComparer.Ordinal)]);

    private static readonly Lazy<FrozenDictionary<string, Country>> OnLabels = new(Listed);

    /// <summary>All, by name.</summary>
    public static ImmutableArray<Country> All => Read.Value;

    /// <summary>The currencies in use, in the order of their letters.</summary>
    public static ImmutableArray<string> Currencies => [.. All.Select(c => c.Currency).Distinct().Order(StringComparer.Ordinal)];

    /// <summary>The country that a person wrote: by its code, its name, or its name in another
    /// language; null where none is meant.</summary>
    public static Country? Find(string written)
    {
        var text = written.Trim().TrimEnd('.');
        return All.FirstOrDefault(c => string.Equals(c.Code, text, StringComparison.OrdinalIgnoreCase)
            || string.Equals(c.Name, text, StringComparison.OrdinalIgnoreCase))
            ?? OnLabel(written);
    }

    /// <summary>
    /// The country that words on a label name, in the official languages of the European Union and a few more; null where none is
    /// meant. Countries that labels seldom name are not among them, so that no other word is taken for one.
    /// </summary>
    public static Country? OnLabel(string words) => OnLabels.Value.GetValueOrDefault(Key(words));

    /// <summary>Whether a country's name on labels begins with these folded letters, and is not longer than so many.</summary>
    public static bool AnyOnLabelBeginsWith(string letters, int longest) =>
        OnLabels.Value.Keys.Any(k => k.Length <= longest && k.StartsWith(letters, StringComparison.Ordinal));

    private static FrozenDictionary<string, Country> Listed()
    {
        var (named, found) = (All.ToDictionary(c => c.Code, StringComparer.Ordinal),
            new Dictionary<string, Country>(StringComparer.Ordinal));
        foreach (var record in YamlRecord.Embedded("markets/Words/countries.yaml"))
        {
            var country = named[record.Text("id", "AT")];
            foreach (var name in record.Texts("names", "[Austria, Österreich]").Prepend(country.Name))
                found.TryAdd(Key(name), country);
        }
        return found.ToFrozenDictionary(StringComparer.Ordinal);
    }

    private static string Key(string name) =>
        Between().Replace(FoldedText.Of(name.Trim()).Replace(".", "", StringComparison.Ordinal), " ");

    [GeneratedRegex(@"[\s'-]+")]
    private static partial Regex Between();
}
