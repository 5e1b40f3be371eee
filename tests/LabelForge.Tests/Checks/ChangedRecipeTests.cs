using LabelForge.Checks;
using LabelForge.Declarations;
using LabelForge.Markets;
using LabelForge.Quantities;
using LabelForge.Recipes;
using LabelForge.Tests.Recipes;

namespace LabelForge.Tests.Checks;

/// <summary>A recipe and its business, changed in one place at a time: what its label would lack is found, and nothing else.</summary>
public class ChangedRecipeTests
{
    private const string Here = "place: { street: 1 Example Lane, city: Fairport, region: ME, postcode: \"00000\", country: US }";
    private const string InFrance = "place: { street: 1 Rue Exemple, city: Exempleville, postcode: \"75001\", country: FR }";

    private const string Recipe = """
        name: Tideline
        identity: Bar soap
        product: soap-bar
        sold as: cosmetic
        pieces: 2
        net: 100 g
        materials:
          - { use: base, amount: 240 g }

        """;

    [Theory]
    [InlineData("identity: Bar soap", "identity: \" \"", "identity.missing", "")]
    [InlineData("net: 100 g", "net: 121 g", "net-quantity.overstated", "121 g")]   // 240 g by two are 120 g
    [InlineData("net: 100 g", "net: 120 g", "", "")]
    [InlineData("street: 1 Example Lane, ", "", "business-place.missing", "no street")]
    [InlineData("street: 1 Example Lane, city: Fairport, ", "", "business-place.missing", "street, city are")]
    [InlineData("region: ME, ", "", "business-place.missing", "region is")]
    [InlineData("region: ME, postcode: \"00000\", ", "", "business-place.missing", "region, postcode are")]
    [InlineData("contact: { phone: \"555-0100\" }\n", "", "", "")]                  // the whole address is a contact too
    [InlineData("name: Tideline", "name: Heals rough hands", "claim.drug", "\"Heals\" says")]
    [InlineData("name: Tideline", "name: Tideline\nclaims: [ Heals rough hands. ]", "claim.drug", "\"Heals\" says")]
    [InlineData("name: Tideline", "name: Tideline\ndirections: Heals rough hands.", "claim.drug", "\"Heals\" says")]
    [InlineData("name: Tideline", "name: Tideline\nwarnings: [ Heals rough hands. ]", "claim.drug", "\"Heals\" says")]
    [InlineData("amount: 240 g }", "amount: 230 g }\n  - { use: scent, amount: 10 g }", "fragrance.limit-unknown", "")]
    [InlineData("amount: 240 g }", "amount: 230 g }\n  - { use: mild, amount: 10 g }", "fragrance.over-limit",
        "4.17 %")]   // 10 g of 240, and 3 % at most
    [InlineData("amount: 240 g }", "amount: 233 g }\n  - { use: mild, amount: 7 g }", "", "")]                               // 2.92 %
    public void In_the_united_states_what_the_label_would_lack_is_found(string from, string to, string rules, string says) =>
        Found(Market.Us, Here, from, to, rules, says);

    [Theory]
    [InlineData("identity: Bar soap", "identity: \" \"", "identity.missing", "")]
    [InlineData("street: 1 Rue Exemple, ", "", "business-place.missing", "street is")]
    [InlineData("street: 1 Rue Exemple, city: Exempleville, ", "", "business-place.missing", "street, city are")]
    [InlineData(", country: FR", "", "responsible-person.missing", "the Union")]
    [InlineData("country: FR", "country: US", "responsible-person.missing,origin.missing", "the Union")]
    [InlineData("country: FR", "country: GB", "responsible-person.missing,origin.missing", "GB")]
    [InlineData("country: FR", "country: de", "", "")]
    [InlineData("name: Tideline", "name: Tideline\nbest before: 2028-05", "-durability.missing", "")]
    [InlineData("name: Tideline", "name: Tideline\nperiod after opening: 12 months", "-durability.missing", "")]
    [InlineData("name: Tideline", "name: Tideline\ndirections: Best before 05/2028.", "-durability.missing", "")]
    [InlineData("name: Tideline", "name: Tideline\nwarnings: [ Best before 05/2028. ]", "-durability.missing,-precautions.none", "")]
    [InlineData("name: Tideline", "name: Tideline\ndirections: Use within 12M.", "-durability.missing,durability.sign", "12M")]
    [InlineData("name: Tideline", "name: Tideline\nclaims: [ Heals rough hands. ]", "claim.drug", "\"Heals\" says")]
    [InlineData("name: Tideline", "name: Tideline\nwarnings: [ Heals rough hands. ]", "-precautions.none,claim.drug", "\"Heals\" says")]
    [InlineData("amount: 240 g }", "amount: 230 g }\n  - { use: scent, amount: 10 g }", "fragrance.limit-unknown,allergen.undeclared", "")]
    public void In_the_union_what_the_label_would_lack_is_found(string from, string to, string rules, string says) =>
        Found(Market.Eu, InFrance, from, to, rules, says);

    [Theory]
    [InlineData("responsible: { eu: \"Example Import, 2 Rue Exemple, 75001 Exempleville, France\" }\n", "name: Tideline",
        "origin.missing")]
    [InlineData("responsible: { eu: \"Example Import, 2 Rue Exemple, 75001 Exempleville, France\" }\n", "name: Tideline\norigin: USA", "")]
    [InlineData("", "name: Tideline\norigin: USA", "responsible-person.missing")]
    [InlineData("", "name: Tideline\ndirections: Made in the USA. EU RP Example Import.", "")]
    public void A_maker_abroad_names_who_is_responsible_in_the_union_and_where_it_was_made(string business, string recipe, string rules) =>
        Found(Market.Eu, Here + "\n" + business, "name: Tideline", recipe, rules, "", clean: Check(Market.Eu, InFrance + "\n", Recipe));

    [Fact]
    public void Each_market_is_told_where_to_notify()
    {
        Assert.Contains(Check(Market.Uk, Here, Recipe),
            f => f.Rule == "outside.notification"
                && f.Message.Contains("United Kingdom", StringComparison.Ordinal)
                && !f.Message.Contains("CPNP", StringComparison.Ordinal));
        Assert.Contains(Check(Market.Eu, Here, Recipe),
            f => f.Rule == "outside.notification" && f.Message.Contains("CPNP", StringComparison.Ordinal));
        Assert.All(Check(Market.Uk, Here, Recipe), f => Assert.DoesNotMatch(@"1223/2009(?! as retained)", f.Source));
        Assert.DoesNotContain(Check(Market.Eu, Here, Recipe), f => f.Source.Contains("retained", StringComparison.Ordinal));
        Assert.DoesNotContain(Check(Market.Uk, Here, Recipe), f => f.Rule == "language.note");
    }

    [Theory]
    [InlineData("city: Fairport, ", "", "business-place.missing", "city is")]
    [InlineData("city: Fairport, region: ME, postcode: \"00000\", ", "", "business-place.missing", "city, postcode are")]
    [InlineData("contact: { phone: \"555-0100\" }\n", "", "contact.missing", "")]
    [InlineData("name: Tideline", "name: Tideline\norigin: USA", "-importer.missing", "")]
    [InlineData("country: US", "country: CA", "-importer.missing", "")]
    [InlineData("name: Tideline", "name: Tideline\nwarnings: [ \"Warning: keep dry.\" ]", "warning.one-language", "\"Warning\"")]
    [InlineData("name: Tideline", "name: Tideline\ndirections: \"Warning: keep dry.\"", "warning.one-language", "\"Warning\"")]
    [InlineData("name: Tideline", "name: Tideline\nwarnings: [ Heals rough hands. ]", "claim.drug", "\"Heals\" says")]
    [InlineData("identity: Bar soap", "identity: \" \"", "identity.missing,-identity.one-language", "")]
    [InlineData("identity: Bar soap", "identity: Pain de savon", "", "")]
    public void In_canada_what_the_label_would_lack_is_found(string from, string to, string rules, string says) =>
        Found(Market.Ca, Here, from, to, rules, says);

    // A rule with a minus stood before the change and stands no more.
    private static void Found(Market market, string place, string from, string to, string rules, string says, Finding[]? clean = null)
    {
        clean ??= Check(market, place, Recipe);
        var business = Business(place);
        Assert.True(Recipe.Contains(from, StringComparison.Ordinal) || business.Contains(from, StringComparison.Ordinal), from);
        var found = Check(market, null, Recipe.Replace(from, to, StringComparison.Ordinal),
            business.Replace(from, to, StringComparison.Ordinal));
        string[] come = [.. found.Select(f => f.Rule).Except(clean.Select(f => f.Rule))];
        string[] gone = [.. clean.Select(f => f.Rule).Except(found.Select(f => f.Rule))];
        Assert.Equal(rules.Split(',', StringSplitOptions.RemoveEmptyEntries).Order(), come.Concat(gone.Select(g => "-" + g)).Order());
        if (says.Length > 0)
            Assert.Contains(found.Where(f => come.Contains(f.Rule)),
                f => f.Message.Contains(says, StringComparison.Ordinal) || f.Where.Contains(says, StringComparison.Ordinal));
    }

    private static string Business(string place) => $"business: Test Bench\n{place}\ncontact: {{ phone: \"555-0100\" }}\n";

    private static Finding[] Check(Market market, string? place, string recipe, string? business = null)
    {
        using var bench = new BenchFolder()
            .Write("workshop.yaml", business ?? Business(place!))
            .Write("materials/scent.yaml", "name: Scent\nkind: fragrance\ncontains: Fragrance\n")
            .Write("materials/mild.yaml", "name: Mild\nkind: fragrance\ncontains: Fragrance\nlimits: { category 9: 3 % }\n")
            .Write("recipes/bar.yaml", recipe);
        var workshop = Workshop.Open(bench.Path);
        var batch = BatchFormula.Of(workshop, workshop.Recipe("bar"));
        var kind = ProductKindOf.Recipe(batch.Recipe);
        var on = new DateOnly(2026, 11, 25);
        var declaration = DeclarationBuilder.Build(workshop, batch, kind, market, on);
        var content = LabelContentBuilder.Build(workshop, batch, kind, declaration, Panel.Parse("2x3in").Value!, null, on);
        return [.. RecipeCheck.Run(new RecipeFacts(workshop, batch, kind, declaration, content, []) { On = on }).Findings];
    }
}
