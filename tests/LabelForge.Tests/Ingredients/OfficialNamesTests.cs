using System.Text.RegularExpressions;
using LabelForge.Ingredients;

namespace LabelForge.Tests.Ingredients;

/// <summary>
/// The dictionary against the European Commission's own tables: CosIng inventory (December 2020), Annex III
/// (December 2025) and Annex IV (February 2024) of Regulation (EC) No 1223/2009.
/// </summary>
public partial class OfficialNamesTests
{
    private static readonly IngredientDictionary Dictionary = IngredientDictionary.Shipped;

    [Fact]
    public void Names_said_to_be_from_the_inventory_stand_in_it()
    {
        var inventory = Inventory();
        var claimed = Dictionary.Entries.Where(i => i.Source.Contains("CosIng inventory", StringComparison.Ordinal)).ToArray();
        Assert.InRange(claimed.Length, 300, 2000);
        Assert.Empty(
            claimed.Select(i => i.Source.StartsWith("US name", StringComparison.Ordinal) ? [i.Us] : new[] { i.Eu, i.Us, i.Inci ?? i.Us })
            .Where(names => !names.Any(inventory.ContainsKey)).Select(names => names[0]));
    }

    [Fact]
    public void First_cas_numbers_said_to_be_from_the_inventory_are_those_it_gives()
    {
        var inventory = Inventory();
        var strays =
            from i in Dictionary.Entries
            where i.Source.StartsWith("name, CAS and EC: CosIng inventory", StringComparison.Ordinal)
                || i.Source.StartsWith("name, first CAS and EC: CosIng inventory", StringComparison.Ordinal)
            where !i.Cas.IsEmpty && !inventory[i.Eu].Contains(i.Cas[0].ToString(), StringComparison.Ordinal)
            select $"{i.Eu}: {i.Cas[0]} is not {inventory[i.Eu]}";
        Assert.Empty(strays);
    }

    [Fact]
    public void Colour_index_numbers_stand_in_annex_iv_save_those_named_here()
    {
        // Mica: its note in the reference says CI 77019 is not in Annex IV as such. The others are listed in the United States only.
        string[] elsewhere = ["CI 77019", "CI 20170", "CI 45425"];
        var listed = ReferenceTable.RowsOrSkip("eu-annex-iv-2024-02.csv")
            .SelectMany(r => ColourIndex().Matches(string.Join(' ', r)).Select(m => $"CI {m.Groups[1].Value}"))
            .ToHashSet();
        Assert.Equal(
            elsewhere.Order(),
            Dictionary.Entries.SelectMany(i => i.ColourIndex).Select(c => c.ToString()).Distinct().Where(c => !listed.Contains(c))
                .Order());
    }

    [Fact]
    public void Cas_numbers_of_named_allergens_agree_with_annex_iii()
    {
        var rows = ReferenceTable.RowsOrSkip("eu-annex-iii-2025-12.csv").Where(r => r.Length > 7).ToArray();
        // Two have moved to Annex II; entry 353, lemon peel oil, gives no CAS number.
        string[] elsewhere = ["Hydroxyisohexyl 3-Cyclohexene Carboxaldehyde", "Butylphenyl Methylpropional",
            "Citrus Limon (Lemon) Peel Oil"];
        var inAnnex = string.Join(' ', rows.Select(r => r[3]));
        var strays = Dictionary.Entries
            .Where(i => i.IsAllergen && !elsewhere.Contains(i.Us))
            .Where(i => !i.Cas.Any(c => inAnnex.Contains(c.ToString(), StringComparison.Ordinal)))
            .Select(i => i.Us);
        Assert.Empty(strays);
    }

    [Fact]
    public void What_annex_iii_wants_named_above_a_thousandth_of_a_percent_is_flagged()
    {
        var named = ReferenceTable.RowsOrSkip("eu-annex-iii-2025-12.csv")
            .Where(r => r.Length > 7 && r[7].Replace(',', '.').Contains("0.001", StringComparison.Ordinal))
            .SelectMany(r => r[2].Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
            .ToHashSet(StringComparer.OrdinalIgnoreCase);
        var known = Dictionary.Entries.Where(i => named.Contains(i.Eu)).ToArray();
        Assert.InRange(known.Length, 70, 200);
        Assert.Empty(known.Where(i => !i.IsAllergen).Select(i => i.Eu));
    }

    private static Dictionary<string, string> Inventory()
    {
        var names = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase);
        foreach (var row in ReferenceTable.RowsOrSkip("eu-inventory-2020-excerpt.csv").Skip(1).Where(r => r.Length >= 2))
            names.TryAdd(row[0].Trim(), row[1]);
        return names;
    }

    [GeneratedRegex(@"CI\s*(\d{5})")]
    private static partial Regex ColourIndex();
}
