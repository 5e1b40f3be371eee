using LabelForge.Checks.Reading;

namespace LabelForge.Checks.Words;

/// <summary>The words of a label one after the other, to find in them words that a law sets: letters and figures count, no stops,
/// capitals, accents or line ends.</summary>
public sealed class SetWords(string text)
{
    private readonly string words = Plain(text);

    /// <summary>Whether the label has these words, each and in their order, with none between.</summary>
    public bool Have(string set) => words.Contains(Plain(set), StringComparison.Ordinal);

    private static string Plain(string text)
    {
        var folded = FoldedText.Of(text);
        return $" {string.Join(' ', new string([.. folded.Select(c => char.IsLetterOrDigit(c) ? c : ' ')]).Split(' ', StringSplitOptions.RemoveEmptyEntries))} ";
    }
}
