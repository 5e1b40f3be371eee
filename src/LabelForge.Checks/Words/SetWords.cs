using LabelForge.Checks.Reading;

namespace LabelForge.Checks.Words;

/// <summary>The words of a label one after the other, to find in them words that a law sets: letters and figures count, no stops,
/// capitals, accents or line ends.</summary>
public sealed class SetWords(string text)
{
    // What stands between the pieces of one sentence, in characters.
    private const int LongestBetween = 80;

    private static readonly Lazy<ILookup<string, string[]>> InOthers = new(Load);

    private readonly string words = Plain(text);

    /// <summary>Whether the label has these words, each and in their order, with none between.</summary>
    public bool Have(string set) => words.Contains(Plain(set), StringComparison.Ordinal);

    /// <summary>Whether the label has these words, or says the same in another official language of the Union.</summary>
    public bool HaveInAnyLanguage(string set) => Have(set) || InOthers.Value[Plain(set)].Any(HavePieces);

    private bool HavePieces(string[] pieces)
    {
        for (var first = words.IndexOf(pieces[0], StringComparison.Ordinal); first >= 0;
            first = words.IndexOf(pieces[0], first + 1, StringComparison.Ordinal))
        {
            var at = first + pieces[0].Length;
            if (pieces.Skip(1).All(p => (at = After(p, at)) >= 0))
                return true;
        }
        return false;
    }

    private int After(string piece, int at) =>
        words.IndexOf(piece, at, Math.Min(words.Length - at, LongestBetween + piece.Length), StringComparison.Ordinal) is var found
            && found < 0 ? -1 : found + piece.Length;

    private static ILookup<string, string[]> Load() =>
        YamlRecord.Embedded("markets/Words/set-words.yaml")
            .SelectMany(r => LabelWords.Languages.Where(r.Has)
                .Select(l => (Set: Plain(r.Text("words", "Contains")), Said: r.Text(l, "a ... b"))))
            .ToLookup(r => r.Set, r => r.Said.Split("...").Select(p => Plain(p).TrimEnd()).ToArray());

    private static string Plain(string text)
    {
        var folded = FoldedText.Of(text);
        return $" {string.Join(' ', new string([.. folded.Select(c => char.IsLetterOrDigit(c) ? c : ' ')]).Split(' ', StringSplitOptions.RemoveEmptyEntries))} ";
    }
}
