using LabelForge.Declarations;
using LabelForge.Markets;
using LabelForge.Measures;
using LabelForge.Quantities;
using LabelForge.Recipes;

namespace LabelForge.Tests.Declarations;

/// <summary>The words of a label beside its ingredients, in the languages that a market asks for.</summary>
public class LocalWordsTests
{
    private const string Words = """
        directions: Wash with it.
        warnings: [ For the bath only. ]
        best before: 2028-05
        origin: Examplia
        in:
          fr: { identity: Savon, directions: Laver avec. }

        """;

    [Fact]
    public void In_Canada_english_and_french_stand_side_by_side()
    {
        var label = Label(Market.Ca, Words);
        Assert.Equal("Bar / Savon", label.Identity);
        Assert.Equal("Wash with it. / Laver avec.", label.Directions);
        Assert.Equal("Best used before the end of 05/2028 / À utiliser de préférence avant fin 05/2028", label.BestBefore);
        Assert.Equal("Made in Examplia / Fabriqué en : Examplia", label.Origin);
        // No French warning was given, so the English one stands once.
        Assert.Equal(["For the bath only."], label.Warnings);
    }

    [Fact]
    public void Elsewhere_one_language_stands_alone()
    {
        var label = Label(Market.Us, Words);
        Assert.Equal(("Bar", "Wash with it.", "Best used before the end of 05/2028", "Made in Examplia"),
            (label.Identity, label.Directions, label.BestBefore, label.Origin));
        label = Label(Market.Eu, Words, "language: fr\n");
        Assert.Equal(("Savon", "Laver avec.", "À utiliser de préférence avant fin 05/2028", "Fabriqué en : Examplia"),
            (label.Identity, label.Directions, label.BestBefore, label.Origin));
    }

    [Fact]
    public void What_is_not_said_does_not_stand_there()
    {
        var label = Label(Market.Ca, "");
        Assert.Equal(("Bar", null, null, null), (label.Identity, label.Directions, label.BestBefore, label.Origin));
        Assert.Empty(label.Warnings);
    }

    [Fact]
    public void A_translated_warning_stands_in_its_language_and_a_standard_one_in_every()
    {
        Assert.Equal(["For the bath only.", "Pour le bain seulement."],
            Label(Market.Ca, "warnings: [ For the bath only. ]\nin: { fr: { warnings: [ Pour le bain seulement. ] } }\n").Warnings);
        Assert.Equal(["For external use only.", "Pour usage externe seulement."],
            Label(Market.Ca, "warnings: [ \"standard: external-only\" ]\n").Warnings);
    }

    [Fact]
    public void A_standard_phrase_that_is_not_there_is_refused_with_those_that_are()
    {
        var problem = Assert.Throws<InputException>(() => Label(Market.Us, "warnings: [ \"standard: beware\" ]\n")).Problem;
        Assert.Equal(("recipes/bar.yaml", "No standard phrase is named \"beware\"."), (problem.File, problem.Wrong));
        Assert.Contains("external-only", problem.Write, StringComparison.Ordinal);
    }

    // 21 CFR 701.12: name and place of the business; Regulation (EC) No 1223/2009, Article
    // 19(1)(a): the responsible person where another is.
    [Fact]
    public void The_business_answers_unless_another_is_responsible_in_that_market()
    {
        Assert.Equal("Test Bench, 1 Example Lane, Fairport, ME 00000", Label(Market.Us, "").Responsible);
        const string Another = "responsible: { eu: \"Example Import, 2 Rue Exemple, 1000 Exempleville\" }\n";
        Assert.Equal("Example Import, 2 Rue Exemple, 1000 Exempleville", Label(Market.Eu, "", Another).Responsible);
        Assert.Equal("Test Bench, 1 Example Lane, Fairport, ME 00000", Label(Market.Us, "", Another).Responsible);
    }

    [Theory]
    [InlineData(1, "1 piece")]
    [InlineData(12, "12 pieces")]
    public void A_carton_says_how_many_pieces_it_holds(int pieces, string says) =>
        Assert.Equal(says, Label(Market.Us, "", pieces: pieces).CartonCount);

    [Theory]
    [InlineData("market", NameStyle.Market)]
    [InlineData(" Dual ", NameStyle.Dual)]
    public void A_way_to_name_ingredients_is_read(string text, NameStyle style) => Assert.Equal(style, NameStyleText.Parse(text).Value);

    [Fact]
    public void Another_way_is_refused_with_the_two_there_are()
    {
        var refused = NameStyleText.Parse("latin ");
        Assert.Equal(("\"latin\" is not a way to name ingredients.", "Write market or dual."), (refused.Wrong, refused.Write));
    }

    private static LabelContent Label(Market market, string words, string business = "", int pieces = 1)
    {
        using var bench = new MakerBench().Material("oil", "oil", "Castor Oil").Recipe("soap-bar", words, ("oil", "100 g"));
        bench.Write("workshop.yaml",
            "business: Test Bench\nplace: { street: 1 Example Lane, city: Fairport, region: ME, postcode: \"00000\", country: US "
                + "}\ncontact: { phone: \"555-0100\" }\n" + business);
        var workshop = bench.Workshop;
        var recipe = workshop.Recipe("bar") with { Pieces = pieces };
        var batch = BatchFormula.Of(workshop, recipe);
        return LabelContentBuilder.Build(workshop, batch, ProductKindOf.Recipe(batch.Recipe), bench.Declare(market),
            Panel.Parse("2x2in").Value!, null, new DateOnly(2026, 11, 25));
    }
}
