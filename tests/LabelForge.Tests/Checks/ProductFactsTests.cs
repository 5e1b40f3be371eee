using LabelForge.Checks;
using LabelForge.Ingredients;
using LabelForge.Markets;
using LabelForge.Measures;
using LabelForge.Recipes;

namespace LabelForge.Tests.Checks;

/// <summary>What a kind does not tell is asked for, and what a maker has settled is not asked again.</summary>
public sealed class ProductFactsTests
{
    private const string Foam =
        "Foaming bath\nIngredients: Water, Sodium Laureth Sulfate.\nNet 8 fl oz (236 mL)\nExample Soapery, 1 Example Lane, Fairport, ME "
            + "00000\nLot 26R25-01E\n";
    private const string Can =
        "Body spray\nIngredients: Alcohol Denat., Water, Fragrance, Butane.\nNet Wt 4 oz (113 g)\nExample Soapery, 1 Example Lane, "
            + "Fairport, ME 00000\nLot 26R25-01E\n";

    // 21 CFR 740.17(b): not on what is labelled for adults only; asked while nobody has said.
    [Theory]
    [InlineData(null, true, true)]
    [InlineData("adults-only=no", true, false)]
    [InlineData("adults-only=yes", false, false)]
    public void A_caution_that_adults_do_not_need_is_a_must_unless(string? fact, bool found, bool asked)
    {
        var warning = Of("us", "foaming-bath", Foam, fact).FirstOrDefault(f => f.Rule == "warning.missing");
        Assert.Equal(found, warning is not null);
        Assert.Equal(asked,
            warning?.Message
                .Contains("It must, unless it is labelled as intended for use exclusively by adults.", StringComparison.Ordinal) == true);
        Assert.Equal(asked, warning?.Fix.Contains("adults-only", StringComparison.Ordinal) == true);
        Assert.Equal(asked ? 1 : 0, warning?.Unless.Length ?? 0);
    }

    // 21 CFR 740.11(b)(2) and (a)(4), 740.12(b).
    [Theory]
    [InlineData("barrier-pack")]
    [InlineData("foam-under-10-percent")]
    [InlineData("metered-under-2-oz")]
    [InlineData("under-half-ounce")]
    public void Each_of_four_exemptions_frees_a_propellant_of_its_warning(string fact)
    {
        Assert.Contains(Of("us", "body-spray", Can, null),
            f => f.Message.Contains("harmful or fatal", StringComparison.Ordinal) && f.Unless.Length == 4);
        Assert.Contains(Of("us", "body-spray", Can, fact + "=no"),
            f => f.Message.Contains("harmful or fatal", StringComparison.Ordinal) && f.Unless.Length == 3);
        Assert.DoesNotContain(Of("us", "body-spray", Can, fact + "=yes"),
            f => f.Message.Contains("harmful or fatal", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("spray=no", false)]
    [InlineData("spray=yes", true)]
    [InlineData(null, true)]
    public void What_is_not_expelled_as_a_spray_says_nothing_of_eyes(string? fact, bool asked) =>
        Assert.Equal(asked, Of("us", "body-spray", Can, fact).Any(f => f.Message.Contains("spraying in eyes", StringComparison.Ordinal)));

    // C.R.C., c. 869, s. 25: disposable metal containers; s. 20(b): unless the identity is obvious; s. 21.5.
    [Theory]
    [InlineData("warning.missing", "metal-container=no")]
    [InlineData("identity.missing", "identity-obvious")]
    [InlineData("ingredients.missing", "list-on-website")]
    public void Canada_frees_what_its_sections_free(string rule, string fact)
    {
        const string Label = "113 g\nContents under pressure.\nExample Works, Exampleton, ON K0A 0A0\n";
        Assert.Contains(Of("ca", "body-spray", Label, null), f => f.Rule == rule && f.Severity == Severity.Must && !f.Unless.IsEmpty);
        Assert.DoesNotContain(Of("ca", "body-spray", Label, fact), f => f.Rule == rule);
    }

    // Regulation (EC) No 1223/2009, Article 19(1)(b), (2) and (3); 21 CFR 701.3(b), (i).
    [Theory]
    [InlineData("eu", "net-quantity.missing", "sold-by-number")]
    [InlineData("eu", "net-quantity.missing", "sold-singly")]
    [InlineData("eu", "ingredients.missing", "outer-package")]
    [InlineData("eu", "ingredients.missing", "notice-beside")]
    [InlineData("us", "ingredients.missing", "list-on-tag")]
    [InlineData("us", "ingredients.missing", "rack-display")]
    [InlineData("us", "net-quantity.missing", "tag-panel")]
    public void What_may_stand_elsewhere_is_asked_for_and_not_ignored(string market, string rule, string fact)
    {
        const string Label = "Lip balm\nExample Soapery, Fairport\n";
        var open = Of(market, "lip-balm", Label, null).Single(f => f.Rule == rule);
        Assert.Equal(Severity.Must, open.Severity);
        Assert.Contains(fact, open.Fix, StringComparison.Ordinal);
        Assert.DoesNotContain(Of(market, "lip-balm", Label, fact), f => f.Rule == rule);
    }

    // Annex III, 98: not under 3 years, not inhaled; 0.5 % in a roll-on deodorant, 2 % in another. Annex V, 13, 56.
    [Theory]
    [InlineData("body-lotion", 0.3, "Salicylic Acid", "", "")]
    [InlineData("body-lotion", 0.3, "Salicylic Acid", "under-three: yes", "substance.prohibited must")]
    [InlineData("deodorant", 1.0, "Salicylic Acid", "roll-on: yes", "substance.over-limit must")]
    [InlineData("deodorant", 1.0, "Salicylic Acid", "roll-on: no", "")]
    [InlineData("body-oil", 0.5, "Dehydroacetic Acid", "spray: no", "")]
    [InlineData("body-oil", 0.5, "Dehydroacetic Acid", "", "substance.prohibited should")]
    [InlineData("body-oil", 0.5, "Dehydroacetic Acid", "spray: yes", "substance.prohibited must")]
    [InlineData("face-cream", 0.005, "Iodopropynyl Butylcarbamate", "", "")]
    [InlineData("face-cream", 0.005, "Iodopropynyl Butylcarbamate", "under-three: yes", "substance.prohibited must")]
    [InlineData("body-lotion", 0.2, "Hexyl Salicylate", "", "")]
    [InlineData("body-lotion", 0.2, "Hexyl Salicylate", "under-three: yes", "substance.over-limit must")]
    public void A_limit_that_hangs_on_a_fact_binds_where_the_maker_says_so(string kind, double grams, string substance, string facts,
        string found)
    {
        using var recipe = new CheckedRecipe { Kind = kind, More = facts.Length == 0 ? "" : $"facts: {{ {facts} }}\n" };
        recipe.Add(100m - (decimal)grams, "Glycerin").Add((decimal)grams, substance);
        Assert.Equal(found.Length == 0 ? [] : [found], recipe.Substances(Market.Eu));
    }

    [Theory]
    [InlineData("Soothing baby lotion", true)]
    [InlineData("Soothing lotion", false)]
    public void A_product_whose_words_speak_of_babies_is_asked_about(string claim, bool asked)
    {
        using var recipe = new CheckedRecipe { More = $"claims: [{claim}]\n" };
        recipe.Add(99.7m, "Glycerin").Add(0.3m, "Salicylic Acid");
        Assert.Equal(asked,
            recipe.In(Market.Eu).Findings
                .Any(f => f.Rule == "substance.prohibited"
                    && f.Severity == Severity.Should
                    && f.Fix.Contains("under-three", StringComparison.Ordinal)));
    }

    // 21 CFR 73.2550: silver nitrate is for professional use.
    [Theory]
    [InlineData("professional-use: yes", false)]
    [InlineData("professional-use: no", true)]
    public void A_colour_for_professionals_is_for_them_alone(string fact, bool refused)
    {
        using var recipe = new CheckedRecipe { Kind = "eye-shadow", More = $"facts: {{ {fact} }}\n" };
        recipe.Add(97m, "Glycerin").Add(3m, "Silver Nitrate", "colourant");
        Assert.Equal(refused, recipe.In(Market.Us).Findings.Any(f => f.Rule == "colour.not-permitted"));
    }

    [Theory]
    [InlineData("facts: { sprayed: no }", "\"sprayed\" is not a fact that a rule asks for.")]
    [InlineData("facts: { spray: sometimes }", "This is no answer to: Is it sprayed?")]
    public void An_answer_that_is_none_is_refused_with_its_line(string more, string wrong)
    {
        using var recipe = new CheckedRecipe { More = more + "\n" };
        var problem = Assert.Throws<InputException>(() => recipe.Add(100, "Glycerin").In(Market.Eu)).Problem;
        Assert.Equal((wrong, 6), (problem.Wrong, problem.Line));
    }

    // A fact that nothing asks for would be a question to no end.
    [Fact]
    public void Every_fact_is_asked_for_by_a_rule_a_table_or_a_kind()
    {
        var rules = MarketBook.Shipped.All.SelectMany(m => m.Rules).SelectMany(r => r.Unless).Select(e => e.Fact.Id);
        var tables = Market.All.Select(IngredientDictionary.Shipped.SubstancesIn).OfType<SubstanceTable>().SelectMany(t => t.All)
            .SelectMany(r => r.Groups).SelectMany(g => g.Split('+'));
        var kinds = ProductKinds.All.SelectMany(k => k.Groups).Where(g => !g.Sure).Select(g => g.Name);
        var parts = LabelForge.Checks.Words.SafetyLists.WarningsOf(Market.Us).SelectMany(w => w.Parts).SelectMany(p => p.Facts)
            .Select(e => e.Fact.Id);
        var colours = IngredientDictionary.Shipped.Colours.All.SelectMany(c => c.Only.Concat(c.Most?.Groups ?? []));
        // How viscous a product is decides between weight and volume in Canada, by its kind.
        Assert.Empty(ProductFact.All.Keys.Except(["viscous", .. rules.Concat(tables).Concat(kinds).Concat(parts).Concat(colours)]));
    }

    private static Finding[] Of(string market, string kind, string text, string? fact)
    {
        var facts = fact is null
            ? ProductFacts.None
            : ProductFacts.Parse(fact) is var f && f.IsValue
            ? ProductFacts.None.With(f.Value.Fact, f.Value.So)
            : throw new ArgumentException(fact);
        return CheckedLabel.Found(text, Market.Named(market), kind, SoldAs.Cosmetic, facts: facts);
    }
}
