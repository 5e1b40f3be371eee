namespace LabelForge.Print.Lettering;

/// <summary>A part of a paragraph that is never broken: a word, or words that stay together.</summary>
/// <param name="Face">Its face.</param>
/// <param name="Text">Its text, without a space at either end.</param>
/// <param name="Tracking">Space after each letter, in em.</param>
public sealed record ParagraphItem(TypeFace Face, string Text, double Tracking = 0)
{
    /// <summary>Whether a name goes on in the next item: a line ends here only where it would else stay too empty.</summary>
    public bool GoesOn { get; init; }

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

    // A last line shorter than this share counts the worse the shorter it is.
    private const double ShortEnd = 0.35;

    // A name is broken where its line would else stay emptier than this share, and costs as much as that where it is.
    private const double EmptyEnd = 1 / 8d;

    /// <summary>The items of a list of names: their words, each but a name's last marked as going
    /// on; a comma never leaves its name.</summary>
    /// <param name="names">The names in order.</param>
    public static IEnumerable<ParagraphItem> OfNames(IReadOnlyList<string> names, TypeFace face) => names.SelectMany((name, at) =>
    {
        var words = OfWords(at == names.Count - 1 ? name : name + ",", face).ToArray();
        return words.Select((word, i) => i == words.Length - 1 ? word : word with { GoesOn = true });
    });

    /// <summary>Items that each stay whole, save that one alone wider than a line is given as its words.</summary>
    public static IEnumerable<ParagraphItem> OfChunks(IEnumerable<string> chunks, TypeFace face, double lineWidth) =>
        chunks.Select(chunk => new ParagraphItem(face, chunk))
            .SelectMany(item => item.Width > lineWidth ? OfWords(item.Text, face, item.Tracking) : [item]);

    /// <summary>Amounts that each stay whole; one alone wider than a line parts between words, but never a figure from its unit.</summary>
    public static IEnumerable<ParagraphItem> OfAmounts(IEnumerable<string> amounts, TypeFace face, double lineWidth)
    {
        foreach (var whole in amounts.Select(amount => new ParagraphItem(face, amount)))
        {
            if (whole.Width <= lineWidth)
            {
                yield return whole;
                continue;
            }
            var words = whole.Text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
            bool IsFigure(int at) => at >= 0 && words[at].TrimStart('(') is [>= '0' and <= '9', ..];
            // A unit may be two words: "8 fl oz".
            for (int from = 0, at = 1; at <= words.Length; at++)
            {
                if (at < words.Length && !IsFigure(at) && (IsFigure(at - 1) || IsFigure(at - 2)))
                    continue;
                yield return whole with { Text = string.Join(' ', words[from..at]) };
                from = at;
            }
        }
    }

    /// <summary>Items that each stay whole, letters spaced; one alone wider than a line is given as its words.</summary>
    public static IEnumerable<ParagraphItem> OfPieces(IEnumerable<string> pieces, TypeFace face, double lineWidth, double tracking) =>
        pieces.Select(piece => new ParagraphItem(face, piece, tracking))
            .SelectMany(item => item.Width > lineWidth ? OfWords(item.Text, face, tracking) : [item]);

    /// <summary>The items of running text: its words; a stroke between two languages stays with what stands before it.</summary>
    public static IEnumerable<ParagraphItem> OfWords(string text, TypeFace face, double tracking = 0)
    {
        var words = text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);
        for (var at = 0; at < words.Length; at++)
            yield return new ParagraphItem(face, at + 1 < words.Length && words[at + 1] == "/" ? $"{words[at++]} /" : words[at], tracking);
    }

    /// <summary>A word that no line can hold, in pieces that each fill a line as far as may be,
    /// hyphens at their ends; as it was where no break helps.</summary>
    /// <param name="item">The word.</param>
    /// <param name="lineWidth">The width of a line, in em.</param>
    /// <param name="languages">The languages that it may be of.</param>
    public static IEnumerable<ParagraphItem> Hyphenated(ParagraphItem item, double lineWidth, IReadOnlyCollection<string> languages)
    {
        while (item.Width > lineWidth)
        {
            var breaks = Hyphenation.For(item.Text, languages).BreaksIn(item.Text);
            if (breaks.Select(at => (At: at, Piece: item with { Text = item.Text[..at] + "-", GoesOn = false })).Reverse()
                .FirstOrDefault(p => p.Piece.Width <= lineWidth) is not { At: > 0 } found)
                break;
            yield return found.Piece;
            item = item with { Text = item.Text[found.At..] };
        }
        yield return item;
    }

    /// <summary>Breaks items into lines.</summary>
    /// <param name="lineWidth">The width of a line, in em.</param>
    /// <param name="balanced">Whether the last line counts too, as for a centred heading.</param>
    /// <param name="noLoneWord">Whether a word alone on the last line counts as badly as a line
    /// left mostly empty, as in running text.</param>
    public static BrokenParagraph Break(IReadOnlyList<ParagraphItem> items, double lineWidth, bool balanced = false,
        bool noLoneWord = false)
    {
        if (items.FirstOrDefault(i => i.Width > lineWidth) is { } tooWide)
            return new BrokenParagraph([], tooWide);
        // best[i]: the fewest lines, then the least sum of squared slack, that set the items from i on.
        var best = new (int Lines, double Ragged, int Next)[items.Count + 1];
        for (var start = items.Count - 1; start >= 0; start--)
        {
            best[start] = (int.MaxValue, double.MaxValue, 0);
            double width = 0;
            // The width of the line as far as it would go without a name broken.
            double whole = 0;
            for (var end = start; end < items.Count; end++)
            {
                width += items[end].Width;
                if (width > lineWidth)
                    break;
                var last = end == items.Count - 1;
                var broken = items[end].GoesOn && !last;
                if (!broken)
                    whole = width;
                else if (lineWidth - WholeEnd(items, end, width, lineWidth, whole) <= lineWidth * EmptyEnd)
                {
                    width += items[end].Space;
                    continue;
                }
                var slack = last && !balanced ? 0 : lineWidth - width;
                // A word alone on the last line of several looks lost, and two short ones nearly so.
                if (noLoneWord && last && start > 0 && items.Count > 3 && (end == start || width < lineWidth * ShortEnd))
                    slack = Math.Max(slack, lineWidth * LoneWord * (end == start ? 1 : 1 - width / (lineWidth * ShortEnd)));
                var (lines, ragged) = (best[end + 1].Lines + 1,
                    best[end + 1].Ragged + slack * slack + (broken ? lineWidth * lineWidth * EmptyEnd * EmptyEnd : 0));
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

    // Where the line would end without a break inside the name that is broken at an item: after the whole name if that has room.
    private static double WholeEnd(IReadOnlyList<ParagraphItem> items, int at, double width, double lineWidth, double before)
    {
        for (var i = at; i + 1 < items.Count && items[i].GoesOn; i++)
            width += items[i].Space + items[i + 1].Width;
        return width <= lineWidth ? width : before;
    }
}
