using LabelForge.Checks;
using LabelForge.Tests.Checks.FreshLabels;

namespace LabelForge.Tests.Checks.UnknownWords;

/// <summary>
/// Sentences that nobody can understand, or that are in a language of nobody's market, planted anywhere in right labels: something is
/// told of the label. A line of three words beside a name, an address or directions may still pass for a part of these. The same
/// ones every time; LABELFORGE_PLANTED says how many, for a longer look.
/// </summary>
public sealed class PlantedSentenceTests
{
    private const int Usual = 120;

    private static readonly string[] Onsets = "b br d dr f fl g gr k kl m pl skr spl tr v zw".Split(' ');
    private static readonly string[] Vowels = ["a", "e", "i", "o", "u", "oo", "ai"];
    private static readonly string[] Ends = ["mp", "nk", "rf", "lt", "sk", "zz", "xt", "gg"];

    // Of languages that no market here speaks: Swahili, Welsh, Basque, Indonesian, Turkish; written for this.
    private static readonly string[] Foreign =
    [
        "Paka kwenye ngozi kila asubuhi na jioni.", "Rhwbiwch ar groen sych bob nos.", "Igurtzi azala gauero eta itxaron pixka bat.",
        "Oleskan pada kulit yang kering setiap malam.", "Her gece kuru cilde sürünüz ve bekleyiniz.",
    ];

    [Fact]
    public void Of_a_hundred_labels_with_a_sentence_that_was_not_understood_ninety_nine_are_told()
    {
        var random = new Random(20261127);
        var times = int.TryParse(Environment.GetEnvironmentVariable("LABELFORGE_PLANTED"), out var given) ? given : Usual;
        var missed = Enumerable.Range(0, times).Select(_ => Planted(random)).OfType<string>().ToArray();
        Assert.True(missed.Length * 100 <= times, $"{missed.Length} of {times}\n{string.Join("\n\n", missed.Take(5))}");
    }

    private static string? Planted(Random random)
    {
        var label = FreshLabel.All[random.Next(FreshLabel.All.Count)];
        var words = string.Join(' ', Enumerable.Range(0, random.Next(3, 8)).Select(_ => Word(random)));
        var sentence = random.Next(5) == 0 ? Of(random, Foreign) : $"{char.ToUpperInvariant(words[0])}{words[1..]}.";
        var lines = label.Text.TrimEnd('\n').Split('\n');
        var at = random.Next(lines.Length + 1);
        var text = string.Join('\n', [.. lines[..at], sentence, .. lines[at..]]);
        // Told as not understood, or as a name of the list that is not known, or by what it breaks where it stands.
        var told = label.Judge(text).Where(f => f.Severity == Severity.Must
            || (f.Severity == Severity.Should && f.Rule is "reading.not-understood" or "ingredients.name-unknown"));
        return told.Any() ? null : $"{label.Id}: \"{sentence}\" as line {at + 1} is not told:\n{text}";
    }

    private static string Word(Random random) =>
        Of(random, Onsets) + Of(random, Vowels) + Of(random, Onsets) + Of(random, Vowels) + Of(random, Ends);

    private static string Of(Random random, string[] any) => any[random.Next(any.Length)];
}
