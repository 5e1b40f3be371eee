using LabelForge.Checks.Words;

namespace LabelForge.Tests.Checks;

/// <summary>
/// What the annexes of Regulation (EC) No 1223/2009 want word for word, on labels in other official languages. The sentences are
/// ours, after the English text.
/// </summary>
public sealed class SetWordsInLanguagesTests
{
    private const string VitaminA = "Contains Vitamin A. Consider your daily intake before use";
    private const string UnderThree = "Not to be used for children under 3 years of age";
    private const string Nappies = "Do not use on the nappy area";
    private const string Eyes = "Avoid contact with eyes";

    [Theory]
    [InlineData(VitaminA, "Contains vitamin A.\nConsider your daily intake before use!")]
    [InlineData(VitaminA, "Enthält Vitamin A. Vor der Anwendung die tägliche Aufnahme bedenken.")]
    [InlineData(VitaminA, "Contient de la vitamine A. Tenez compte de votre apport journalier avant l'utilisation.")]
    [InlineData(VitaminA, "Obsahuje vitamin A. Před použitím zvažte svůj denní příjem.")]
    [InlineData(UnderThree, "Nicht bei Kindern unter drei Jahren anwenden.")]
    [InlineData(UnderThree, "Non usare nei bambini di età inferiore a tre anni.")]
    [InlineData(Nappies, "Nie stosować w okolicy pieluchy.")]
    [InlineData(Eyes, "Avoid direct contact with the eyes.")]
    [InlineData(Eyes, "Evite el contacto con los ojos.")]
    public void A_set_warning_is_known_in_the_language_of_the_label(string set, string label) =>
        Assert.True(new SetWords(label).HaveInAnyLanguage(set));

    [Theory]
    [InlineData(VitaminA, "Contains vitamin E. Consider your daily intake before use.")]
    [InlineData(VitaminA, "Enthält Vitamin A.")]
    [InlineData(VitaminA, "Vor der Anwendung die tägliche Aufnahme bedenken.")]
    [InlineData(UnderThree, "Für Kinder unter drei Jahren.")]
    [InlineData(Eyes, "Evite el sol en los ojos.")]
    public void Half_of_it_is_not_it(string set, string label) => Assert.False(new SetWords(label).HaveInAnyLanguage(set));
}
