using LabelForge.Markets;

namespace LabelForge.Tests.Checks;

/// <summary>Substances against Annexes II to VI of Regulation (EC) No 1223/2009 and 21 CFR 700, each by its entry.</summary>
public class SubstanceCheckTests
{
    // Annex II, entries 1721, 1396, 1386, 1670, 335, 1666, 1380.
    [Theory]
    [InlineData("Pentasodium Pentetate", "Annex II, 1721")]
    [InlineData("Sodium Borate", "Annex II, 1396")]
    [InlineData("Quaternium-15", "Annex II, 1386")]
    [InlineData("Zinc Pyrithione", "Annex II, 1670")]
    [InlineData("Boric Acid", "Annex II, 1395")]
    [InlineData("Formaldehyde", "Annex II, 1577")]
    public void What_annex_ii_prohibits_is_found_in_a_supplier_s_list_even_where_it_gives_no_figure(string name, string entry)
    {
        using var recipe = new CheckedRecipe().Add(1000, $"Aqua, Glycerin, {name}", "base");
        var finding = Assert.Single(recipe.In(Market.Eu).Findings, f => f.Rule == "substance.prohibited");
        Assert.Equal("Must", finding.Severity.ToString());
        Assert.Contains(entry + " ", finding.Source, StringComparison.Ordinal);
        Assert.DoesNotContain("substance.prohibited must", recipe.Substances(Market.Us));
    }

    // Annex II, 1666: butylphenyl methylpropional, as older certificates of fragrance oils still name it.
    [Theory]
    [InlineData("0.5 %", "substance.prohibited must")]
    [InlineData("0-0.1 %", "substance.prohibited should")]
    public void A_prohibited_part_of_a_fragrance_is_found_in_its_certificate(string share, string finding)
    {
        using var recipe = new CheckedRecipe().Add(980, "Aqua")
            .Add(20, "Parfum", "fragrance", $"allergens: {{ Butylphenyl Methylpropional: {share} }}\nlimits: {{ category 5A: 5 % }}\n");
        Assert.Equal([finding], recipe.Substances(Market.Eu));
    }

    // Annex V, 29: phenoxyethanol, 1.0 %. 11 g in 1000 g are 1.1 %.
    [Theory]
    [InlineData(11, new[] { "substance.over-limit must" })]
    [InlineData(10, new string[0])]
    public void A_preservative_may_reach_its_limit_and_not_pass_it(int grams, string[] findings)
    {
        using var recipe = new CheckedRecipe().Add(1000 - grams, "Aqua").Add(grams, "Phenoxyethanol");
        Assert.Equal(findings, recipe.Substances(Market.Eu));
    }

    // A base that is 800 g of 1000 g and lists phenoxyethanol without a figure: 1.0 % / 0.8 = 1.25 % of the base keeps the limit.
    [Fact]
    public void Where_only_the_upper_bound_is_over_the_finding_asks_for_the_figure_that_would_settle_it()
    {
        using var recipe = new CheckedRecipe().Add(800, "Aqua, Glycerin, Phenoxyethanol", "base")
            .Add(200, "Ricinus Communis Seed Oil", "oil");
        var finding = Assert.Single(recipe.In(Market.Eu).Findings, f => f.Rule == "substance.over-limit");
        Assert.Equal("Should", finding.Severity.ToString());
        Assert.Contains("Material 1", finding.Fix, StringComparison.Ordinal);
        Assert.Contains("1.25 %", finding.Fix, StringComparison.Ordinal);
    }

    // Annex V, 4: 0.6 % as sorbic acid, 112.13 g/mol of 150.22. 0.80 % of the salt are 0.597 %, 0.85 % are 0.634 %.
    [Theory]
    [InlineData("8", new string[0])]
    [InlineData("8.5", new[] { "substance.over-limit must" })]
    public void A_salt_counts_as_the_acid_in_it(string grams, string[] findings)
    {
        var salt = decimal.Parse(grams, System.Globalization.CultureInfo.InvariantCulture);
        using var recipe = new CheckedRecipe().Add(1000 - salt, "Aqua").Add(salt, "Potassium Sorbate");
        Assert.Equal(findings, recipe.Substances(Market.Eu));
    }

    // Annex V, 12 and 12a, as 4-hydroxybenzoic acid: each of methyl and ethyl 0.4 %, butyl and propyl together 0.14 %, all together 0.8 %.
    // 0.40 g/100 g of methylparaben are 0.363 %, of ethylparaben 0.332 %; with 0.15 of propylparaben (0.115 %) together 0.810 %.
    [Theory]
    [InlineData(4, 0, 0, new string[0])]
    [InlineData(5, 0, 0, new[] { "substance.over-limit must" })]
    [InlineData(4, 4, 1, new string[0])]
    [InlineData(0, 0, 2, new[] { "substance.over-limit must" })]
    public void Parabens_count_each_and_together(int methyl, int ethyl, int propyl, string[] findings)
    {
        using var recipe = new CheckedRecipe().Add(1000 - methyl - ethyl - propyl, "Aqua");
        foreach (var (grams, name) in new[] { (methyl, "Methylparaben"), (ethyl, "Ethylparaben"), (propyl, "Propylparaben") }
            .Where(p => p.Item1 > 0))
            recipe.Add(grams, name);
        Assert.Equal(findings, recipe.Substances(Market.Eu));
    }

    // 4 g, 4.4 g and 1.5 g in 1000 g: 0.3631 + 0.3657 + 0.1150 = 0.8438 %, each within its own limit.
    [Fact]
    public void Parabens_within_their_own_limits_may_be_too_many_together()
    {
        using var recipe = new CheckedRecipe().Add(990.1m, "Aqua").Add(4, "Methylparaben").Add(4.4m, "Ethylparaben")
            .Add(1.5m, "Propylparaben");
        var finding = Assert.Single(recipe.In(Market.Eu).Findings, f => f.Rule == "substance.over-limit");
        Assert.Contains("0.8438 %", finding.Message, StringComparison.Ordinal);
    }

    // Annex V, 57: methylisothiazolinone in rinse-off products only, 0.0015 %.
    [Theory]
    [InlineData("shampoo", new string[0])]
    [InlineData("body-lotion", new[] { "substance.prohibited must" })]
    public void Some_preservatives_are_for_rinse_off_products_only(string kind, string[] findings)
    {
        using var recipe = new CheckedRecipe { Kind = kind }.Add(999.99m, "Aqua").Add(0.01m, "Methylisothiazolinone");
        Assert.Equal(findings, recipe.Substances(Market.Eu));
    }

    // Annex V, 44: 0.1 % as a preservative. Annex III, 286: for another purpose 2.5 % in rinse-off and 1 % in leave-on hair products.
    [Theory]
    [InlineData("conditioner", 20, new string[0])]
    [InlineData("conditioner", 26, new[] { "substance.over-limit must" })]
    [InlineData("hair-leave-in", 20, new[] { "substance.over-limit must" })]
    [InlineData("body-lotion", 20, new[] { "substance.over-limit should" })]
    public void What_serves_two_purposes_is_judged_by_the_one_that_covers_the_product(string kind, int grams, string[] findings)
    {
        using var recipe = new CheckedRecipe { Kind = kind }.Add(1000 - grams, "Aqua").Add(grams, "Cetrimonium Chloride");
        Assert.Equal(findings, recipe.Substances(Market.Eu));
    }

    // Annex III, 376 (Regulation (EU) 2024/996): from 1 November 2025 at most 0.05 % retinol equivalent in body lotion. Retinyl
    // palmitate counts 286.46 of 524.87: 0.10 % are 0.0546 %.
    [Theory]
    [InlineData("2025-10-31", new string[0])]
    [InlineData("2025-11-01", new[] { "warning.missing must", "substance.over-limit must" })]
    public void A_limit_holds_from_its_day_on(string day, string[] findings)
    {
        using var recipe = new CheckedRecipe { On = DateOnly.Parse(day, System.Globalization.CultureInfo.InvariantCulture) }
            .Add(999, "Aqua").Add(1, "Retinyl Palmitate");
        Assert.Equal(findings, recipe.Found(Market.Eu, "substance.over-limit", "warning.missing"));
    }

    [Fact]
    public void A_warning_that_stands_on_the_label_is_not_missed()
    {
        using var recipe = new CheckedRecipe { More = "warnings: [\"Contains Vitamin A. Consider your daily intake before use.\"]\n" }
            .Add(999.9m, "Aqua").Add(0.1m, "Retinol");
        Assert.Empty(recipe.Found(Market.Eu, "substance.over-limit", "warning.missing"));
    }

    // Annex IV: CI 10316 (3) not in eye products; CI 26100 (51) not on mucous membranes; CI 12085 (9) at most 3 %; CI 77007 (120)
    // anywhere; CI 20170 is not an entry.
    [Theory]
    [InlineData("eye-cream", "CI 10316", 1, new[] { "colour.not-permitted must" })]
    [InlineData("soap-bar", "CI 10316", 1, new string[0])]
    [InlineData("lip-balm", "CI 26100", 1, new[] { "colour.not-permitted should" })]
    [InlineData("soap-bar", "CI 26100", 1, new string[0])]
    [InlineData("lip-balm", "CI 12085", 40, new[] { "substance.over-limit must" })]
    [InlineData("lip-balm", "CI 77007", 1, new string[0])]
    [InlineData("soap-bar", "CI 20170", 1, new[] { "colour.not-permitted must" })]
    public void A_colour_is_permitted_where_annex_iv_lets_it_be(string kind, string colour, int grams, string[] findings)
    {
        using var recipe = new CheckedRecipe { Kind = kind }.Add(1000 - grams, "Glycerin").Add(grams, colour, "colourant");
        Assert.Equal(findings, recipe.Substances(Market.Eu));
    }

    // Annex III, 98 and 53; Annex V, 56.
    [Theory]
    [InlineData("shampoo", "Salicylic Acid", 25, new string[0])]
    [InlineData("face-cream", "Salicylic Acid", 25, new[] { "substance.over-limit must" })]
    [InlineData("body-lotion", "Salicylic Acid", 6, new[] { "substance.over-limit must" })]
    [InlineData("soap-bar", "Tetrasodium Etidronate", 2, new string[0])]
    [InlineData("soap-bar", "Tetrasodium Etidronate", 3, new[] { "substance.over-limit must" })]
    [InlineData("face-cream", "Tetrasodium Etidronate", 1, new[] { "substance.prohibited must" })]
    [InlineData("lip-balm", "Iodopropynyl Butylcarbamate", 0, new[] { "substance.prohibited must" })]
    public void A_limit_depends_on_the_kind_of_product(string kind, string name, int grams, string[] findings)
    {
        var mass = grams == 0 ? 0.05m : grams;
        using var recipe = new CheckedRecipe { Kind = kind }.Add(1000 - mass, "Glycerin").Add(mass, name);
        Assert.Equal(findings, recipe.Substances(Market.Eu));
    }

    // 21 CFR 700.11, 700.18, 700.19.
    [Theory]
    [InlineData("Bithionol", "21 CFR 700.11")]
    [InlineData("Chloroform", "21 CFR 700.18")]
    [InlineData("Methylene Chloride", "21 CFR 700.19")]
    public void What_21_cfr_700_prohibits_is_found(string name, string paragraph)
    {
        using var recipe = new CheckedRecipe().Add(999, "Aqua").Add(1, name);
        var finding = Assert.Single(recipe.In(Market.Us).Findings, f => f.Rule == "substance.prohibited");
        Assert.Equal("Must", finding.Severity.ToString());
        Assert.StartsWith(paragraph, finding.Source, StringComparison.Ordinal);
    }

    // 21 CFR 700.27: tallow is a note, soap made of it is not touched.
    [Fact]
    public void Tallow_is_a_note_in_the_united_states_and_its_soap_is_none()
    {
        using var tallow = new CheckedRecipe { Kind = "body-butter" }.Add(1000, "Tallow", "oil");
        Assert.Equal(["substance.condition note"], tallow.Found(Market.Us, "substance.condition"));
        using var soap = new CheckedRecipe { Kind = "soap-bar" }.Add(1000, "Sodium Tallowate", "base");
        Assert.Empty(soap.Found(Market.Us, "substance.condition"));
    }

    [Fact]
    public void In_the_united_kingdom_every_finding_says_that_differences_were_not_checked()
    {
        using var recipe = new CheckedRecipe().Add(999, "Aqua").Add(1, "Sodium Borate");
        var finding = Assert.Single(recipe.In(Market.Uk).Findings, f => f.Rule == "substance.prohibited");
        Assert.Contains("as retained in the UK (judged by the EU text; differences not checked)", finding.Source,
            StringComparison.Ordinal);
    }
}
