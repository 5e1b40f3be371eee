using UglyToad.PdfPig.Content;

namespace LabelForge.Print.Reading;

/// <summary>Measures the letters of a word as the law does: from the baseline up, the lower-case
/// o and the capitals apart (21 CFR 701.13(h)(2)).</summary>
internal static class LetterHeights
{
    // Round letters stand as high as the o by which the law measures; flat ones (x, z) a hair less, so they serve only
    // where there is no round one. What reaches below the baseline does not count.
    private const string Round = "aceogqs";
    private const string Flat = "mnpruvwxyz";
    private const string Upper = "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789";

    /// <summary>The median height of each sort in the word; null where the word has none, or the font gives no outlines.</summary>
    public static (Length? Lower, Length? Upper) Of(IReadOnlyList<Letter> word) =>
        (Median(word, Round) ?? Median(word, Flat), Median(word, Upper));

    private static Length? Median(IReadOnlyList<Letter> word, string sort)
    {
        var heights = word.Where(l => l.Value.Length == 1 && sort.Contains(l.Value[0])).Select(Height).Where(h => h > 0.1).Order()
            .ToArray();
        return heights.Length == 0 ? null : Length.FromInches((decimal)heights[heights.Length / 2] / 72m);
    }

    // Turned text is measured along its own upright: the distance of the glyph's top edge from the baseline.
    private static double Height(Letter letter)
    {
        var (from, to, top) = (letter.StartBaseLine, letter.EndBaseLine, letter.BoundingBox.TopLeft);
        var (dx, dy) = (to.X - from.X, to.Y - from.Y);
        var along = Math.Sqrt((dx * dx) + (dy * dy));
        return along < 1e-9 ? 0 : Math.Abs((dx * (top.Y - from.Y)) - (dy * (top.X - from.X))) / along;
    }
}
