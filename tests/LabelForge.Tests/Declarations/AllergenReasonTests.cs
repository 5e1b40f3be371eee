using LabelForge.Declarations;
using LabelForge.Ingredients;
using LabelForge.Markets;
using LabelForge.Measures;

namespace LabelForge.Tests.Declarations;

/// <summary>Why an allergen is named, what it adds up from, and what is left in doubt.</summary>
public class AllergenReasonTests
{
    private const string Base = "[ Glycerin: 60 %, Water: 40 % ]";
    private static readonly AllergenRule Long = new(AllergenList.Extended, Share.FromPercent(0.01m), "long");
    private static readonly AllergenRule Short = new(AllergenList.Short, Share.FromPercent(0.001m), "short");

    [Fact]
    public void Of_two_rules_the_longer_list_and_the_lower_threshold_bind()
    {
        Assert.Equal(new AllergenRule(AllergenList.Extended, Share.FromPercent(0.001m), "long"), Long.Stricter(Short));
        Assert.Equal(new AllergenRule(AllergenList.Extended, Share.FromPercent(0.001m), "long"), Short.Stricter(Long));
        Assert.Equal(Long with { Threshold = Share.FromPercent(0.001m) }, Long.Stricter(Short with { List = AllergenList.Extended }));
    }

    [Theory]
    [InlineData("5 %", "allergen.named", "it comes to 0.05 % of the product, above 0.01 %. It comes from: scent 0.05 %.")]
    [InlineData("1-5 %", "allergen.named-for-its-bound",
        "it may come to 0.05 % of the product, above 0.01 %. It comes from: scent 0.01 % to 0.05 %.")]   // 0.01 % is not above it
    [InlineData("1.1-5 %", "allergen.named", "it comes to 0.05 % of the product, above 0.01 %. It comes from: scent 0.011 % to 0.05 %.")]
    [InlineData("1.23456 %", "allergen.named", "it comes to 0.0123 % of the product, above 0.01 %. It comes from: scent 0.0123 %.")]
    public void The_reason_gives_the_sum_the_threshold_and_the_sources(string share, string rule, string says)
    {
        using var bench = Scented($"allergens: {{ Linalool: {share} }}\n", "1 g");
        var finding = Assert.Single(bench.Declare(Market.Eu).Findings);
        Assert.Equal(rule, finding.Rule);
        Assert.EndsWith(says, finding.Message, StringComparison.Ordinal);
        Assert.Contains("2023/1545", finding.Source, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("40 %", "12 %")]         // 30 g of perfume in 100 g
    [InlineData("41.152 %", "12.35 %")]  // from one percent on, two decimals will do
    [InlineData("3.3333 %", "1 %")]
    public void A_large_share_is_told_to_two_decimals(string share, string told)
    {
        using var bench = Scented($"allergens: {{ Linalool: {share} }}\n", "30 g", "70 g", "perfume-oil");
        Assert.Contains($"it comes to {told} of the product", Assert.Single(bench.Declare(Market.Eu).Findings).Message,
            StringComparison.Ordinal);
    }

    [Fact]
    public void An_unknown_allergen_is_told_with_every_material_that_brings_it()
    {
        using var bench = Scented("allergens: { Linalol: 4 % }\n", "1 g")
            .Material("other", "fragrance", "Fragrance", "allergens: { Linalol: 5 % }\n")
            .Recipe("soap-bar", "", ("plain", "98 g"), ("scent", "1 g"), ("other", "1 g"));
        var finding = Assert.Single(bench.Declare(Market.Eu).Findings);
        Assert.StartsWith("The certificate of other, scent names Linalol as an allergen", finding.Message, StringComparison.Ordinal);
        Assert.Contains("2023/1545", finding.Source, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Linalol: 1 %")]            // 0.01 % of the product: even if it were one, it would not be named
    [InlineData("Triethyl Citrate: 50 %")]  // known, and none of Annex III's
    [InlineData("Linalool: 0 %")]
    public void What_need_not_be_named_in_any_case_is_not_told(string allergen)
    {
        using var bench = Scented($"allergens: {{ {allergen} }}\n", "1 g");
        Assert.Empty(bench.Declare(Market.Eu).Findings);
    }

    [Fact]
    public void Two_names_of_one_entry_add_up_at_both_ends()
    {
        using var bench = Scented("allergens: { Geranial: 7-8 %, Neral: 4-5 % }\n", "1 g", "999 g");
        var citral = bench.Declare(Market.Eu).Ingredients.Single(i => i.Name == "Citral");
        Assert.Equal((0.011m, 0.013m, 0.012m), (citral.Low, citral.High, citral.Estimate));
    }

    // The list says 1 to 2 % and the certificate 4: one of them is wrong, so both ends stand.
    [Theory]
    [InlineData("1-2 %", "4 %", 0.01, 0.04)]
    [InlineData("1-5 %", "4-9 %", 0.04, 0.05)]
    [InlineData("1-4 %", "4 %", 0.04, 0.04)]
    public void A_list_and_a_certificate_are_taken_as_narrowly_as_they_agree_and_as_widely_as_they_differ(string listed, string certified,
        double low, double high)
    {
        using var bench = new MakerBench()
            .Material("plain", "base", Base)
            .Material("scent", "fragrance", $"[ Fragrance, Limonene: {listed} ]", $"allergens: {{ Limonene: {certified} }}\n")
            .Recipe("soap-bar", "", ("plain", "99 g"), ("scent", "1 g"));
        var limonene = bench.Declare(Market.Eu).Ingredients.Single(i => i.Name == "Limonene");
        Assert.Equal(((decimal)low, (decimal)high), (limonene.Low, limonene.High));
    }

    [Fact]
    public void A_pure_aroma_substance_is_all_of_its_bottle()
    {
        using var bench = new MakerBench()
            .Material("plain", "base", Base)
            .Material("scent", "fragrance", "Linalool")
            .Recipe("soap-bar", "", ("plain", "99 g"), ("scent", "1 g"));
        var linalool = bench.Declare(Market.Eu).Ingredients.Single(i => i.Name == "Linalool");
        Assert.Equal((1m, 1m), (linalool.Low, linalool.High));
    }

    // 100 g of perfume oil: 20 g of scent with 30 to 60 % Limonene is 6 to 12 g.
    [Theory]
    [InlineData("11.99 g", "68.01 g", true)]   // Limonene can weigh more
    [InlineData("12 g", "68 g", false)]        // at the most as much
    [InlineData("30 g", "50 g", false)]
    [InlineData("6.01 g", "73.99 g", true)]    // and here it can weigh less
    [InlineData("6 g", "74 g", false)]
    public void A_large_allergens_place_is_in_doubt_only_where_it_can_weigh_more_and_less(string castor, string carrier, bool doubt)
    {
        using var bench = Perfume("allergens: { Limonene: 30-60 % }\n", ("carrier", carrier), ("castor", castor), ("scent", "20 g"));
        var declaration = bench.Declare(Market.Eu);
        Assert.Equal(doubt ? 1 : 0, declaration.Unsettled.Length);
        Assert.All(declaration.Unsettled,
            u => Assert.StartsWith("Ask the supplier of scent for the share of Limonene: above ", u.Ask, StringComparison.Ordinal));
    }

    // It is a part of the scent, all of it at the most, so after the scent its place is sure; before what varies it is not.
    [Fact]
    public void An_allergen_after_the_fragrance_that_brings_it_is_in_no_doubt()
    {
        using var bench = Perfume("allergens: { Limonene: 90-100 % }\n", ("carrier", "80 g"), ("castor", "0 g"), ("scent", "20 g"));
        var declaration = bench.Declare(Market.Eu);
        Assert.EndsWith("Parfum, Limonene.", declaration.Statement, StringComparison.Ordinal);
        Assert.True(declaration.IsProved);
    }

    [Fact]
    public void Two_large_allergens_of_one_scent_may_stand_the_wrong_way_round()
    {
        using var bench = Perfume("allergens: { Limonene: 30-60 %, Linalool: 20-40 % }\n", ("carrier", "80 g"), ("castor", "0 g"),
            ("scent", "20 g"));
        var pair = Assert.Single(bench.Declare(Market.Eu).Unsettled);
        Assert.Equal(("Limonene", "Linalool"), (pair.First, pair.Second));
    }

    private static MakerBench Perfume(string certificate, params (string, string)[] uses) => new MakerBench()
        .Material("carrier", "oil", "Caprylic/Capric Triglyceride")
        .Material("castor", "oil", "Castor Oil")
        .Material("scent", "fragrance", "Fragrance", certificate)
        .Recipe("perfume-oil", "", [.. uses.Where(u => u.Item2 != "0 g")]);

    private static MakerBench Scented(string certificate, string amount, string plain = "99 g", string product = "soap-bar") =>
        new MakerBench()
            .Material("plain", "base", Base)
            .Material("scent", "fragrance", "Fragrance", certificate)
            .Recipe(product, "", ("plain", plain), ("scent", amount));
}
