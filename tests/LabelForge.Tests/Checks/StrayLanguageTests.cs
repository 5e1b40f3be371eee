using LabelForge.Ingredients;
using LabelForge.Markets;

namespace LabelForge.Tests.Checks;

/// <summary>A sentence in a language whose claims are not judged is shown, with the language's name, so that somebody reads it.</summary>
public sealed class StrayLanguageTests
{
    // "We make this soap by hand in our small workshop by the sea", in our own words.
    [Theory]
    [InlineData("Bulgarian", "Правим този сапун на ръка в нашата малка работилница до морето.")]
    [InlineData("Czech", "Toto mýdlo vyrábíme ručně v naší malé dílně, kde voní dřevo a vosk.")]
    [InlineData("Danish", "Vi laver denne sæbe i hånden i vores lille værksted ved havet.")]
    [InlineData("Greek", "Φτιάχνουμε αυτό το σαπούνι με το χέρι στο μικρό μας εργαστήριο δίπλα στη θάλασσα.")]
    [InlineData("Estonian", "Me valmistame seda seepi käsitsi oma väikeses töökojas mere ääres.")]
    [InlineData("Hungarian", "Ezt a szappant kézzel készítjük kis műhelyünkben a tenger mellett.")]
    [InlineData("Lithuanian", "Šį muilą gaminame rankomis savo mažose dirbtuvėse prie jūros.")]
    [InlineData("Portuguese", "Fazemos este sabonete à mão na nossa pequena oficina junto ao mar.")]
    [InlineData("Romanian", "Facem acest săpun de mână în micul nostru atelier de lângă mare.")]
    [InlineData("Slovak", "Toto mydlo vyrábame ručne v našej malej dielni pri mori.")]
    [InlineData("Slovene", "To milo izdelujemo ročno v naši majhni delavnici ob morju.")]
    [InlineData("Swedish", "Vi gör den här tvålen för hand i vår lilla verkstad vid havet.")]
    public void A_sentence_is_shown_with_the_name_of_its_language(string language, string sentence)
    {
        var text = $"Bar soap\nNet Wt 4 oz (113 g)\nIngredients: Sodium Palmate, Water.\n\n{sentence}\n\nExample Works, 12 Mill Road, "
            + "Fairport, ME 04999\nLot 1\n";
        var told = CheckedLabel.Found(text, Market.Us)
            .Where(f => f.Rule.StartsWith("reading.", StringComparison.Ordinal)
                && f.Message.Contains(sentence[..12], StringComparison.Ordinal))
            .ToArray();
        Assert.True(told.Any(f => f.Message.Contains(language, StringComparison.Ordinal)), string.Join("\n", told.Select(f => f.Message)));
    }

    // A product that is three times listed, and one whose list belongs to nothing, are not passed over.
    [Fact]
    public void Lists_beside_the_first_are_counted_and_judged()
    {
        const string Text =
            "Bar soap\nNet Wt 4 oz (113 g)\nIngredients: Sodium Palmate, Water.\nExample Works, 12 Mill Road, Fairport, ME 04999\n"
                + "Lot 1\n\nLip balm\nIngredients: Beeswax, Ultramarines, Chloroform.\n\nBody lotion\n"
                + "Ingredients: Aqua, Cetyl Alcohol, Glycrin, Phenoxyethanol.\n";
        var found = CheckedLabel.Found(Text, Market.Us);
        Assert.Contains(found, f => f.Rule == "reading.several-labels" && f.Message.Contains('3', StringComparison.Ordinal));
        Assert.Contains(found, f => f.Rule == "substance.prohibited" && f.Message.Contains("Chloroform", StringComparison.Ordinal));
        Assert.Contains(found, f => f.Rule == "colour.not-permitted" && f.Message.Contains("on the lips", StringComparison.Ordinal));
        Assert.Contains(found, f => f.Rule == "ingredients.name-unknown" && f.Message.Contains("Glycrin", StringComparison.Ordinal));
    }
}
