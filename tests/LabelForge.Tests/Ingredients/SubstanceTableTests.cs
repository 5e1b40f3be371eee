using System.Text.RegularExpressions;
using LabelForge.Ingredients;
using LabelForge.Markets;
using LabelForge.Measures;

namespace LabelForge.Tests.Ingredients;

/// <summary>The excerpts of the annexes against the European Commission's own exports (CosIng, December 2025 and February 2024).</summary>
public partial class SubstanceTableTests
{
    private static readonly SubstanceTable Eu = IngredientDictionary.Shipped.SubstancesIn(Market.Eu)!;

    private static readonly Dictionary<string, string> Files = new()
    {
        ["II"] = "eu-annex-ii-2025-12.csv",
        ["III"] = "eu-annex-iii-2025-12.csv",
        ["IV"] = "eu-annex-iv-2024-02.csv",
        ["V"] = "eu-annex-v-2024-02.csv",
        ["VI"] = "eu-annex-vi-2024-02.csv",
    };

    [Theory]
    [InlineData("II", 60)]
    [InlineData("III", 60)]
    [InlineData("IV", 60)]
    [InlineData("V", 45)]
    [InlineData("VI", 11)]
    public void Every_entry_of_an_annex_stands_in_the_official_export_under_that_number_and_instrument(string annex, int atLeast)
    {
        var official = Official(annex);
        var ours = Eu.All.Where(r => r.List == annex && r.Reference != "-" && InExports(r)).ToArray();
        Assert.True(ours.Length >= atLeast, $"only {ours.Length} rows");
        Assert.Empty(
            ours.Where(r => !official.TryGetValue(r.Reference, out var row) || !row.Contains(r.Instrument, StringComparison.Ordinal))
                .Select(r => $"{annex} {r.Reference}"));
        Assert.All(ours, r => Assert.Contains(r.Export, Files[annex], StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("II")]
    [InlineData("III")]
    [InlineData("IV")]
    [InlineData("V")]
    [InlineData("VI")]
    public void Each_entry_names_one_of_its_ingredients_by_name_cas_number_or_colour_index_number(string annex)
    {
        // Entries for whole families, or where the annex names a part of the plant or the nano form: settled by reading them.
        string[] read = ["II 300", "II 1726", "II 335", "II 1136", "II 359", "III 286", "III 287"];
        var official = Official(annex);
        var strays = Eu.All.Where(r => r.List == annex && r.Reference != "-" && InExports(r) && !read.Contains($"{annex} {r.Reference}"))
            .Where(r => !Identifiers(r).Any(i => official[r.Reference].Contains(i, StringComparison.OrdinalIgnoreCase)))
            .Select(r => $"{annex} {r.Reference} {string.Join(';', r.Ingredients)}");
        Assert.Empty(strays);
    }

    [Fact]
    public void Every_share_stands_in_the_official_entry()
    {
        var strays = Eu.All.Where(r => r.Most is not null && InExports(r))
            .Where(r => !Figures(Official(r.List)[r.Reference]).Contains(r.Most!.Value.Percent))
            .Select(r => $"{r.List} {r.Reference}: {r.Most!.Value.Percent} %");
        Assert.Empty(strays);
    }

    [Fact]
    public void Every_colour_of_the_dictionary_is_permitted_somewhere_or_said_not_to_be_listed()
    {
        // Silver nitrate dyes lashes and brows by an entry of Annex III.
        var judged = Eu.All.Where(r => r.List == "IV" || r is { List: "III", Verdict: SubstanceVerdict.Only })
            .SelectMany(r => r.Ingredients).ToHashSet();
        Assert.Empty(IngredientDictionary.Shipped.Entries.Where(e => e.IsColourant && !judged.Contains(e.Key)).Select(e => e.Key));
    }

    [Fact]
    public void A_place_where_a_colour_may_not_be_used_stands_in_the_export()
    {
        var official = Official("IV");
        foreach (var rule in Eu.All.Where(r => r.List == "IV" && r.Verdict == SubstanceVerdict.Not))
        {
            var words = rule.Groups[0] switch { "eye" => "eye products", "mucous" => "mucous membranes", _ => "inhalation" };
            Assert.Contains(words, official[rule.Reference], StringComparison.Ordinal);
        }
    }

    [Fact]
    public void No_colour_that_the_export_keeps_from_eyes_or_mucous_membranes_or_for_what_is_rinsed_off_is_free_of_it_here()
    {
        var kept = Eu.All.Where(r => r.List == "IV" && r.Verdict is SubstanceVerdict.Not or SubstanceVerdict.Only).Select(r => r.Reference)
            .ToHashSet();
        var missed = Official("IV")
            .Where(o => o.Value.Contains("Not to be used in", StringComparison.OrdinalIgnoreCase)
                || o.Value.Contains("Rinse-off", StringComparison.Ordinal))
            .Select(o => o.Key)
            .Where(reference => !kept.Contains(reference) && reference is not ("126a" or "143"));
        Assert.Empty(missed);
    }

    [Fact]
    public void Figures_taken_from_the_exports_of_february_2024_say_that_later_changes_were_not_looked_for() =>
        Assert.All(Eu.All.Where(r => r.Export == "2024-02"),
            r => Assert.EndsWith("not checked for later changes)", r.Citation, StringComparison.Ordinal));

    // 21 CFR 700.11 to 700.35 and 250.250, by paragraph.
    [Theory]
    [InlineData("Bithionol", "21 CFR 700.11")]
    [InlineData("Thimerosal", "21 CFR 700.13")]
    [InlineData("Vinyl Chloride", "21 CFR 700.14")]
    [InlineData("Tribromsalan", "21 CFR 700.15")]
    [InlineData("Chloroform", "21 CFR 700.18")]
    [InlineData("Dichloromethane", "21 CFR 700.19")]
    [InlineData("Trichlorofluoromethane", "21 CFR 700.23")]
    [InlineData("Hexachlorophene", "21 CFR 250.250")]
    public void A_substance_restricted_in_the_united_states_is_found_by_its_name(string name, string paragraph)
    {
        var rules = IngredientDictionary.Shipped.SubstancesIn(Market.Us)!.Of(name, IngredientDictionary.Shipped.Find(name)).ToArray();
        Assert.NotEmpty(rules);
        Assert.All(rules, r => Assert.StartsWith(paragraph, r.Citation, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("II,1,X,Unheard Of,,,prohibited,all,,,,,,x,2025-12,memory,,", "dictionary")]
    [InlineData("II,1,X,,Aqua,,prohibited,all,,,,,,x,2025-12,memory,,", "under ingredients")]
    [InlineData("II,1,X,,,,prohibited,all,,,,,,x,2025-12,memory,,", "touches nothing")]
    [InlineData("II,1,X,Coal Tar,,,forbidden,all,,,,,,x,2025-12,memory,,", "forbidden")]
    [InlineData("V,1,X,Coal Tar,,,at-most,all,,,,,,x,2025-12,memory,,", "no share")]
    [InlineData("V,1,X,Coal Tar,,,at-most,all,101,,,,,x,2025-12,memory,,", "percent")]
    [InlineData("V,1,X,Coal Tar,,,at-most,noses,1,,,,,x,2025-12,memory,,", "noses")]
    [InlineData("V,1,X,Coal Tar,,,condition,all,,,,,,x,2025-12,memory,,", "no words")]
    [InlineData("II,1,X,,Benzene,71-43-3,prohibited,all,,,,,,x,2025-12,memory,,", "check digit")]
    public void A_row_that_cannot_be_used_is_refused_with_its_line(string row, string says)
    {
        const string Heading =
            "list,ref,substance,ingredients,names,cas,rule,groups,max,as,counted,words,from,instrument,export,basis,read,markets\n";
        var refused = Assert.Throws<InputException>(() => SubstanceTable.Read(DataTable.Of("bench.csv", Heading + row + "\n"),
            IngredientDictionary.Shipped));
        Assert.Contains(says, refused.Message, StringComparison.Ordinal);
        Assert.Equal(2, refused.Problem.Line);
    }

    // Entries of 2026 and Great Britain's own are in no export that is held.
    private static bool InExports(SubstanceRule rule) =>
        Files.TryGetValue(rule.List, out var file) && file.Contains(rule.Export, StringComparison.Ordinal);

    // The limits as the Commission's export of August 2026 and the notes on it give them.
    [Theory]
    [InlineData("Hexyl Salicylate", "soap-bar", "0.5")]
    [InlineData("Hexyl Salicylate", "body-lotion", "0.3")]
    [InlineData("Citral", "soap-bar", "1.2")]
    [InlineData("Citral", "body-lotion", "0.15")]
    [InlineData("Citral", "deodorant", "0.032")]
    [InlineData("Citral", "lip-balm", "0.11")]
    [InlineData("Citral", "blusher", "0.65")]
    [InlineData("Citral", "hair-leave-in", "1.2")]
    [InlineData("Citral", "perfume-oil", "0.6")]
    [InlineData("Benzyl Salicylate", "soap-bar", "0.5")]
    [InlineData("Benzyl Salicylate", "body-wash", "1.3")]
    [InlineData("Benzyl Salicylate", "bath-bomb", "1.3")]
    [InlineData("Benzyl Salicylate", "body-lotion", "0.7")]
    [InlineData("Benzyl Salicylate", "face-powder", "0.2")]
    [InlineData("Benzyl Salicylate", "solid-perfume", "4")]
    [InlineData("Potassium Alum", "soap-bar", "4")]
    [InlineData("Potassium Alum", "deodorant", "7.73")]
    [InlineData("Potassium Alum", "hand-cream", "0.86")]
    [InlineData("Bentonite", "clay-mask", "0.89")]
    [InlineData("Bentonite", "face-cream", "10.59")]
    [InlineData("Mica (CI 77019)", "lipstick", "14.62")]
    [InlineData("Mica (CI 77019)", "eye-shadow", "43.31")]
    [InlineData("Mica (CI 77019)", "blusher", "23")]
    [InlineData("Silver (CI 77820)", "lipstick", "0.2")]
    public void A_limit_of_2026_binds_the_products_that_its_line_names(string ingredient, string kind, string most)
    {
        var product = ProductKinds.Find(kind).Value!;
        var first = IngredientDictionary.Shipped.SubstancesIn(MarketBook.Shipped.Find("eu").OrRefuse())!
            .Of(ingredient, IngredientDictionary.Shipped.Entries.First(e => e.Key == ingredient))
            .First(r => r.Verdict == SubstanceVerdict.AtMost
                && r.From >= new DateOnly(2026, 5, 1)
                && ProductGroup.Covers(product, r.Groups) == Applies.Yes);
        Assert.Equal(decimal.Parse(most, System.Globalization.CultureInfo.InvariantCulture), first.Most?.Percent);
    }

    // Instruments that amend Regulation (EC) No 1223/2009 in Great Britain, as far as they were found.
    [Theory]
    [InlineData("Retinol", "eu", true)]
    [InlineData("Retinol", "uk", false)]
    [InlineData("Arbutin", "uk", false)]
    [InlineData("Homosalate", "uk", false)]
    [InlineData("Pentetic Acid", "eu", true)]
    [InlineData("Pentetic Acid", "uk", false)]
    [InlineData("Hexyl Salicylate", "uk", false)]
    [InlineData("Potassium Alum", "uk", false)]
    [InlineData("Kojic Acid", "uk", true)]
    [InlineData("BHT", "uk", true)]
    [InlineData("Methyl Salicylate", "uk", true)]
    public void Great_Britain_has_its_own_amendments_and_none_of_the_unions_since_2021(string ingredient, string market, bool listed) =>
        Assert.Equal(listed,
            IngredientDictionary.Shipped.SubstancesIn(Market.Named(market))!
                .Of(ingredient, IngredientDictionary.Shipped.Find(ingredient)).Any());

    private static Dictionary<string, string> Official(string annex) => ReferenceTable.RowsOrSkip(Files[annex])
        .Where(r => r.Length > 8 && r[0].Length > 0 && char.IsDigit(r[0][0]))
        .GroupBy(r => r[0].Trim())
        .ToDictionary(g => g.Key, g => string.Join(" | ", g.SelectMany(r => r)));

    private static IEnumerable<string> Identifiers(SubstanceRule rule) =>
        rule.Ingredients.Select(i => IngredientDictionary.Shipped.Entries.First(e => e.Key == i))
            .SelectMany(e => e.Cas.Select(c => c.ToString()).Concat(e.ColourIndex.Select(c => c.ToString())).Concat([e.Us, e.Eu]))
            .Concat(rule.Names).Concat(rule.Cas.Select(c => c.ToString()));

    private static IEnumerable<decimal> Figures(string text) => Percent().Matches(text)
        .Select(m => decimal.Parse(m.Groups[1].Value.Replace(',', '.'), System.Globalization.CultureInfo.InvariantCulture)
            / (m.Groups[2].Value == "ppm" ? PartsPerMillionInAPercent : 1));

    private const decimal PartsPerMillionInAPercent = 10_000;

    [GeneratedRegex(@"(\d+(?:[.,]\d+)?)\s*(%|ppm)")]
    private static partial Regex Percent();
}
