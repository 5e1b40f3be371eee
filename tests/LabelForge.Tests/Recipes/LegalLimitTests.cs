using LabelForge.Markets;
using LabelForge.Measures;
using LabelForge.Tests.Declarations;

namespace LabelForge.Tests.Recipes;

/// <summary>Limits of the law as bounds of a supplier's list: only where the maker trusts them. Annex V, 29: phenoxyethanol 1 %; Annex V,
/// 1: benzoic acid 2.5 % in rinse-off, 0.5 % in leave-on products.</summary>
public sealed class LegalLimitTests
{
    private const string List = "\n  - Water\n  - Phenoxyethanol\n  - Glycerin\n";

    [Theory]
    [InlineData("", 50)]
    [InlineData("trust: legal limits of eu\n", 1)]
    public void A_limit_bounds_only_where_it_is_trusted(string trust, int most)
    {
        using var bench = new MakerBench().Material("base", "base", List, trust).Recipe("soap-bar", "", ("base", "100 g"));
        var declaration = bench.Declare(Market.Eu);
        Assert.Equal(most, declaration.Ingredients.Single(i => i.Name == "Phenoxyethanol").High);
        Assert.Equal(trust.Length > 0,
            declaration.Findings
                .Any(f => f.Rule == "ingredients.legal-limits"
                    && f.Message.Contains("Phenoxyethanol at most 1 %", StringComparison.Ordinal)));
    }

    [Theory]
    [InlineData("us", 50)]
    [InlineData("eu", 1)]
    public void Without_a_market_the_limits_are_those_where_the_workshop_sells(string market, int most)
    {
        using var bench = new MakerBench()
            .Write("workshop.yaml",
                $"business: Test Bench\nplace: {{ street: 1 Example Lane, city: Fairport, region: ME, postcode: \"00000\", country: US "
                    + $"}}\ncontact: {{ phone: \"555-0100\" }}\nmarket: {market}\n")
            .Material("base", "base", List, "trust: legal limits\n").Recipe("soap-bar", "", ("base", "100 g"));
        Assert.Equal(most, bench.Declare(Market.Us).Ingredients.Single(i => i.Name == "Phenoxyethanol").High);
    }

    // What a paper says is not made to say less, and what one kind of product may hold without limit is not bounded.
    [Theory]
    [InlineData("\n  - Water\n  - Phenoxyethanol: 2-3 %\n  - Glycerin\n", "Phenoxyethanol", 3)]
    [InlineData("\n  - Water\n  - Phenoxyethanol: 0.2-3 %\n  - Glycerin\n", "Phenoxyethanol", 1)]
    [InlineData("\n  - Water\n  - Ethoxydiglycol: <= 30 %\n  - Glycerin\n", "Ethoxydiglycol", 10)]
    [InlineData("\n  - Water\n  - Methyl Salicylate\n  - Glycerin\n", "Methyl Salicylate", 50)]
    public void A_bound_is_the_most_that_any_product_may_hold(string list, string name, int most)
    {
        using var bench = new MakerBench().Material("base", "base", list, "trust: legal limits of eu\n")
            .Recipe("soap-bar", "", ("base", "100 g"));
        Assert.Equal(most, bench.Declare(Market.Eu).Ingredients.Single(i => i.Name == name).High);
    }

    [Theory]
    [InlineData("trust: me")]
    [InlineData("trust: legal limits of atlantis")]
    public void Nothing_else_is_trusted(string trust)
    {
        using var bench = new MakerBench().Material("base", "base", List, trust + "\n").Recipe("soap-bar", "", ("base", "100 g"));
        Assert.Contains("trust: legal limits", Assert.Throws<InputException>(() => bench.Declare(Market.Us)).Problem.Write,
            StringComparison.Ordinal);
    }
}
