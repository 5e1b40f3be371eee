using LabelForge.Checks.Reading;

namespace LabelForge.Checks.Subjects;

/// <summary>Whether a label speaks another language too, where the market then wants all that is
/// required in it (21 CFR 701.2(b)(2)).</summary>
internal static class LanguageChecks
{
    // One word may be a name; two that head parts of a label are a language. Common practice.
    private const int FewestWords = 2;

    private const int FewestOfSentence = 5;

    private static readonly LabelWord[] Heads = [LabelWord.Ingredients, LabelWord.Directions, LabelWord.Warnings, LabelWord.MadeIn,
        LabelWord.Responsible, LabelWord.BestBefore];

    private static readonly Lazy<(string Language, Regex Words)[]> Foreign = new(() =>
    {
        var english = Heads.SelectMany(h => LabelWords.Of(h, "en")).Select(FoldedText.Of).ToHashSet();
        return [.. LabelWords.Languages.Where(l => l != "en")
            .Select(l => (l,
                Heads.SelectMany(h => LabelWords.Of(h, l)).Where(w => w.Length > 5 && !english.Contains(FoldedText.Of(w))).ToArray()))
            .Where(w => w.Item2.Length > 0)
            .Select(w => (w.l,
                new Regex($@"(?<![\p{{L}}0-9])(?:{LabelWords.Alternatives(w.Item2)})(?![\p{{L}}])", RegexOptions.CultureInvariant,
                    TimeSpan.FromSeconds(5))))];
    });

    public static void Check(CheckCase label)
    {
        if (label.Label.Own is not null || label.Binding("language.foreign") is null)
            return;
        var text = FoldedText.Of(label.Label.Text.Text);
        var found = Foreign.Value.Select(f => (f.Language, Words: f.Words.Matches(text).Select(m => m.Value).Distinct().ToArray()))
            .Where(f => f.Words.Length >= FewestWords).ToArray();
        if (found.Length > 0)
            label.Tell("language.foreign", label.Where, string.Join(", ", found.MaxBy(f => f.Words.Length).Words));
        else if (SentenceOf(label.Label.Rest) is { } sentence)
            label.Tell("language.foreign", label.Where, sentence);
    }

    // A sentence in another language, whether it says what the product is or anything else; two or three words, as
    // "Savon de Marseille", may be a name.
    private static string? SentenceOf(string text) =>
        text.Split('\n').SelectMany(l => LanguageOf.SentencesAt(l).Select(s => l[s.Start..s.End].Trim()))
            .FirstOrDefault(s => LanguageOf.Words(s).Count() >= FewestOfSentence
                && !LanguageOf.IsMostlyEnglish(s)
                && (IdentityReader.Read(s, null) is not null ? !IdentityReader.IsInEnglish(s) : IsForeign(s)));

    // Names have few of the small words of a language; a sentence that says anything has some.
    private static bool IsForeign(string sentence) =>
        LanguageOf.Find(sentence) is { Language: not "en", Share: >= LeastKnown };

    private const double LeastKnown = 0.3;
}
