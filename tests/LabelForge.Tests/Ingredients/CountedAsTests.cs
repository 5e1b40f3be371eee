using System.Globalization;
using System.Text.RegularExpressions;
using CsvHelper;
using LabelForge.Ingredients;
using LabelForge.Markets;

namespace LabelForge.Tests.Ingredients;

public partial class CountedAsTests
{
    // IUPAC, abridged standard atomic weights (2021).
    private static readonly Dictionary<string, decimal> Weights = new()
    {
        ["H"] = 1.008m,
        ["C"] = 12.011m,
        ["N"] = 14.007m,
        ["O"] = 15.999m,
        ["Na"] = 22.990m,
        ["Al"] = 26.982m,
        ["Si"] = 28.085m,
        ["P"] = 30.974m,
        ["S"] = 32.06m,
        ["Cl"] = 35.45m,
        ["K"] = 39.098m,
        ["Ca"] = 40.078m,
    };

    [Fact]
    public void Every_share_follows_from_the_formulas_beside_it()
    {
        using var reader = CsvReader.Create(new StreamReader(Path.Combine(Repository.Folder, "ingredients", "tables", "counted-as.csv")),
            new CsvReaderOptions { Separator = ',', HasHeader = true });
        var rows = 0;
        while (reader.Read())
        {
            rows++;
            var share = decimal.Parse(reader.GetString(5),
                CultureInfo.InvariantCulture) * Mass(reader.GetString(4)) / Mass(reader.GetString(3));
            Assert.InRange(decimal.Parse(reader.GetString(2), CultureInfo.InvariantCulture), share - 0.0001m, share + 0.0001m);
        }
        Assert.InRange(rows, 15, 100);
    }

    [Fact]
    public void What_a_limit_counts_and_what_is_in_the_table_are_the_same_words() =>
        Assert.Empty(IngredientDictionary.Shipped.SubstancesIn(Market.Eu)!.All.Where(r => r.CountedAs is not null && r.CountedAs != "zinc")
            .SelectMany(r => r.Ingredients
                .Where(i => CountedAs.Share(IngredientDictionary.Shipped.Entries.First(e => e.Key == i).Us, r.CountedAs) is null)
                .Select(i => $"{i} as {r.CountedAs}")));

    // 0.8 g of potassium sorbate, 150.22 g/mol, hold 0.8 * 112.13 / 150.22 = 0.597 g of sorbic acid.
    [Fact]
    public void Potassium_sorbate_counts_as_the_sorbic_acid_in_it() =>
        Assert.InRange(0.8m * CountedAs.Share("Potassium Sorbate", "sorbic acid")!.Value, 0.5965m, 0.5975m);

    private static decimal Mass(string formula) => Element().Matches(formula)
        .Sum(m => Weights[m.Groups[1].Value] * (m.Groups[2].Value.Length == 0
            ? 1
            : int.Parse(m.Groups[2].Value, CultureInfo.InvariantCulture)));

    [GeneratedRegex("([A-Z][a-z]?)([0-9]*)")]
    private static partial Regex Element();
}
