using System.Text.RegularExpressions;
using LabelForge.Ingredients;
using LabelForge.Tests.Ingredients;

namespace LabelForge.Tests.Declarations;

public partial class AllergenTableTests
{
    // Entries whose 0.001 % is a limit and not a threshold for naming: methyl eugenol (102), furfural (312), BHT (325).
    private static readonly string[] Limits = ["102", "312", "325"];

    // Entries that Annex III lost when the substances were prohibited (Regulations (EU) 2017/1410 and 2021/1902).
    private static readonly string[] Prohibited = ["79", "83"];

    private static readonly FragranceAllergens Table = IngredientDictionary.Shipped.Allergens;

    [Fact]
    public void The_shorter_list_has_the_twenty_six_names() =>
        Assert.Equal(26, Table.All.Count(a => a.List == AllergenList.Short));

    [Fact]
    public void Every_entry_of_annex_III_that_names_above_a_thousandth_of_a_percent_is_in_the_table_and_no_other()
    {
        var official = AnnexEntries();
        Assert.Equal(84, official.Count);
        Assert.Equal(
            official.Select(r => r[0].Trim()).Except(Limits).Order(),
            Table.All.Select(a => a.Reference).Except(Prohibited).Order());
    }

    [Fact]
    public void Every_label_name_is_one_that_annex_III_gives()
    {
        foreach (var row in AnnexEntries().Where(r => !Limits.Contains(r[0].Trim())))
        {
            var allergen = Table.All.Single(a => a.Reference == row[0].Trim());
            // "shall be indicated as 'Citral'" sets the name; else it is the common name, or the name of the substance found.
            var set = IndicatedAs().Match(row[7]);
            if (set.Success)
                Assert.Equal(Squeezed(set.Groups[1].Value), Squeezed(allergen.Name));
            else if (allergen.Reference != "368") // eugenyl acetate: the export gives the chemical name only
                Assert.Contains(Squeezed(allergen.Name), Squeezed(row[1] + "|" + row[2] + "|" + row[12] + "|" + row[13]),
                    StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Every_CAS_number_of_an_entry_is_one_that_annex_III_gives()
    {
        foreach (var row in AnnexEntries().Where(r => !Limits.Contains(r[0].Trim())))
        {
            var allergen = Table.All.Single(a => a.Reference == row[0].Trim());
            Assert.All(allergen.Cas, c => Assert.Contains(c.ToString(), row[3], StringComparison.Ordinal));
        }
    }

    [Fact]
    public void What_the_regulation_of_2023_added_or_reworded_is_told_by_its_number_in_the_source()
    {
        // The rows added in 2023 are the extended list; of the shorter list six were reworded then.
        var of2023 = AnnexEntries().Where(r => r[9].Contains("2023/1545", StringComparison.Ordinal)).Select(r => r[0].Trim()).ToHashSet();
        Assert.All(Table.All.Where(a => a.List == AllergenList.Extended), a => Assert.Contains(a.Reference, of2023));
        Assert.Equal(["45", "70", "73", "86", "88"],
            Table.All.Where(a => a.List == AllergenList.Short && of2023.Contains(a.Reference)).Select(a => a.Reference));
    }

    [Theory]
    [InlineData("d-Limonene", "Limonene")]
    [InlineData("LINALOOL", "Linalool")]
    [InlineData("Geranial", "Citral")]
    [InlineData("Neral", "Citral")]
    [InlineData("cinnamaldehyde", "Cinnamal")]
    [InlineData("alpha-Pinene", "Pinene")]
    [InlineData("trans-Anethole", "Anethole")]
    [InlineData("lavender oil", "Lavandula Oil/Extract")]
    [InlineData("Lavandula Angustifolia (Lavender) Oil", "Lavandula Oil/Extract")]
    [InlineData("sweet orange oil", "Citrus Aurantium Peel Oil")]
    [InlineData("oakmoss", "Evernia Prunastri Extract")]
    [InlineData("delta-Damascone", "Rose Ketones")]
    public void A_name_on_a_certificate_counts_towards_its_entry(string written, string name) =>
        Assert.Equal(name, Table.Find(written)?.Name);

    [Theory]
    [InlineData("Glycerin")]
    [InlineData("Fragrance")]
    [InlineData("Ethyl Linalool")]
    public void What_is_no_listed_allergen_counts_towards_none(string written) => Assert.Null(Table.Find(written));

    [Fact]
    public void Every_ingredient_that_the_dictionary_flags_as_an_allergen_has_an_entry() =>
        Assert.All(IngredientDictionary.Shipped.Entries.Where(i => i.IsAllergen), i => Assert.True(Table.Find(i) is not null, i.Us));

    private static List<string[]> AnnexEntries() =>
        [.. ReferenceTable.RowsOrSkip("eu-annex-iii-2025-12.csv")
            .Where(r => Array.Exists(r,
                c => c.Contains("0,001", StringComparison.Ordinal) || c.Contains("0.001", StringComparison.Ordinal)))];

    private static string Squeezed(string name) => Spaces().Replace(name, "").ToUpperInvariant();

    [GeneratedRegex(@"indicated\s+(?:as\s+)?‘([^’]+)’")]
    private static partial Regex IndicatedAs();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Spaces();
}
