using System.Collections.Immutable;

namespace LabelForge.Print.Lettering;

/// <summary>A part of a paragraph that is never broken: a word, or the whole name of an ingredient with its comma.</summary>
/// <param name="Face">Its face.</param>
/// <param name="Text">Its text, without a space at either end.</param>
/// <param name="Tracking">Space after each letter, in em.</param>
public sealed record ParagraphItem(TypeFace Face, string Text, double Tracking = 0)
{
    /// <summary>Its width in em.</summary>
    public double Width => Face.Shape(Text, Tracking).Width;

    /// <summary>The width in em of the space after it.</summary>
    public double Space => MeasuredText.SpaceWidth(Face, Tracking);
}

/// <summary>What came of breaking a paragraph: its lines, or the item that is wider than a line.</summary>
/// <param name="Lines">The lines as ranges of items; empty where an item is too wide.</param>
/// <param name="TooWide">The item that no line can hold, or null.</param>
public sealed record BrokenParagraph(ImmutableArray<Range> Lines, ParagraphItem? TooWide);

/// <summary>Breaks paragraphs: fewest lines first, and among those the least ragged over the whole paragraph.</summary>
public static class Paragraph
{
    // Ragged lines are better than a lone word up to this share of a line, each.
    private const double LoneWord = 0.6;

    /// <summary>
    /// The items of a list of names: each name with its comma is one item, so that no name is broken and no comma
    /// leaves its name; one that ends with a semicolon, as the last of one list among several, has none. A name alone wider
    /// than a line is given as its words.
    /// </summary>
    /// <param name="names">The names in order.</param>
    /// <param name="face">The face.</param>
    /// <param name="lineWidth">The width of a line in em.</param>
    public static IEnumerable<ParagraphItem> OfNames(IReadOnlyList<string> names, TypeFace face, double lineWidth) =>
        OfChunks(names.Select((name, i) => i == names.Count - 1 || name.EndsWith(';') ? name : name + ","), face, lineWidth);

    /// <summary>Items that each stay whole, save that one alone wider than a line is given as its words.</summary>
    public static IEnumerable<ParagraphItem> OfChunks(IEnumerable<string> chunks, TypeFace face, double lineWidth) =>
        chunks.Select(chunk => new ParagraphItem(face, chunk))
            .SelectMany(item => item.Width > lineWidth ? OfWords(item.Text, face, item.Tracking) : [item]);

    /// <summary>Items that each stay whole, letters spaced; one alone wider than a line is given as its words.</summary>
    public static IEnumerable<ParagraphItem> OfPieces(IEnumerable<string> pieces, TypeFace face, double lineWidth, double tracking) =>
        pieces.Select(piece => new ParagraphItem(face, piece, tracking)).SelectMany(item => item.Width > lineWidth ? OfWords(item.Text, face, tracking) : [item]);

    /// <summary>The items of running text: its words; a stroke between two languages stays with what stands before it.</summary>
    public static IEnumerable<ParagraphItem> OfWords(string text, TypeFace face, double tracking = 0)
    {
        var words = text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);
        for (var at = 0; at < words.Length; at++)
            yield return new ParagraphItem(face, at + 1 < words.Length && words[at + 1] == "/" ? $"{words[at++]} /" : words[at], tracking);
    }

    /// <summary>Breaks items into lines.</summary>
    /// <param name="items">The items.</param>
    /// <param name="lineWidth">The width of a line, in em.</param>
    /// <param name="balanced">Whether the last line counts too, as for a centred heading.</param>
    /// <param name="noLoneWord">Whether a word alone on the last line counts as badly as a line left mostly empty, as in running text.</param>
    public static BrokenParagraph Break(IReadOnlyList<ParagraphItem> items, double lineWidth, bool balanced = false, bool noLoneWord = false)
    {
        if (items.FirstOrDefault(i => i.Width > lineWidth) is { } tooWide)
            return new BrokenParagraph([], tooWide);
        // best[i]: the fewest lines, then the least sum of squared slack, that set the items from i on.
        var best = new (int Lines, double Ragged, int Next)[items.Count + 1];
        for (var start = items.Count - 1; start >= 0; start--)
        {
            best[start] = (int.MaxValue, double.MaxValue, 0);
            double width = 0;
            for (var end = start; end < items.Count; end++)
            {
                width += items[end].Width;
                if (width > lineWidth)
                    break;
                var last = end == items.Count - 1;
                var slack = last && !balanced ? 0 : lineWidth - width;
                // A word alone on the last line of several looks lost.
                if (noLoneWord && last && end == start && start > 0 && items.Count > 3)
                    slack = Math.Max(slack, lineWidth * LoneWord);
                var (lines, ragged) = (best[end + 1].Lines + 1, best[end + 1].Ragged + slack * slack);
                if (lines < best[start].Lines || (lines == best[start].Lines && ragged < best[start].Ragged))
                    best[start] = (lines, ragged, end + 1);
                width += items[end].Space;
            }
        }
        var found = ImmutableArray.CreateBuilder<Range>();
        for (var at = 0; at < items.Count; at = best[at].Next)
            found.Add(at..best[at].Next);
        return new BrokenParagraph(found.ToImmutable(), null);
    }
}
