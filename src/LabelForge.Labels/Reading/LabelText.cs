namespace LabelForge.Checks.Reading;

/// <summary>Where a piece of a label's text stands in it.</summary>
/// <param name="Start">The first character, counted from 0.</param>
/// <param name="Length">How many characters.</param>
public readonly record struct TextSpan(int Start, int Length)
{
    /// <summary>The first character after it.</summary>
    public int End => Start + Length;

    /// <summary>Whether the two share a character.</summary>
    public bool Overlaps(TextSpan other) => Start < other.End && other.Start < End;
}

/// <summary>The measured height of a word's letters, as the law measures them: from the baseline up.</summary>
/// <param name="Span">The word's place in the text.</param>
/// <param name="Page">The page it stands on, counted from 1.</param>
/// <param name="Lower">Height of its lower-case letters without ascenders (o, x, a, ...); null where it has none.</param>
/// <param name="Upper">Height of its capitals and digits; null where it has none.</param>
public sealed record WordHeight(TextSpan Span, int Page, Length? Lower, Length? Upper);

/// <summary>Where a word stands on a page, in points of 1/72 in from the page's top left corner, down.</summary>
public sealed record WordPlace(TextSpan Span, int Page, double X, double Y, double Width, double Height);

/// <summary>Words that are in the file and that nobody sees on the label.</summary>
/// <param name="Words">The words.</param>
/// <param name="Why">Why, to follow "they are": <c>drawn over</c>.</param>
/// <param name="Page">The page they stand on, counted from 1.</param>
public sealed record UnseenWords(string Words, string Why, int Page);

/// <summary>A label's words in reading order; heights and sizes too where it came from a drawing.</summary>
public sealed partial record LabelText
{
    /// <summary>The most characters that are taken for a label. A label of A4 in the smallest lawful letters holds fewer.</summary>
    public const int MostCharacters = 40_000;

    /// <summary>Letters that fonts join into one glyph (Unicode, Alphabetic Presentation Forms, FB00 to FB06).</summary>
    public static readonly ImmutableArray<(string Sign, string Letters)> Ligatures =
        [("\uFB00", "ff"), ("\uFB01", "fi"), ("\uFB02", "fl"), ("\uFB03", "ffi"), ("\uFB04", "ffl"), ("\uFB05", "st"), ("\uFB06", "st")];

    private LabelText(string text, string where) => (Text, Where) = (text, where);

    /// <summary>The whole text, lines parted by line feeds, an empty line where a block ends.</summary>
    public string Text { get; internal init; }

    /// <summary>The file as the person knows it.</summary>
    public string Where { get; }

    /// <summary>Measured letters; empty where the label came as plain text, so that nothing is measured.</summary>
    public ImmutableArray<WordHeight> Heights { get; init; } = [];

    /// <summary>The size of the page, where the drawing has one page of a label's size.</summary>
    public (Length Width, Length Height)? Page { get; init; }

    /// <summary>Where the words stand; empty where the label came as plain text.</summary>
    public ImmutableArray<WordPlace> Places { get; init; } = [];

    /// <summary>The sizes of the pages, in points; empty where the label came as plain text.</summary>
    public ImmutableArray<(double Width, double Height)> Pages { get; init; } = [];

    /// <summary>What is in the file and cannot be seen: it is not on the label, and not in the text.</summary>
    public ImmutableArray<UnseenWords> Unseen { get; init; } = [];

    /// <summary>A label's plain text; line endings and odd spaces are made alike.</summary>
    /// <param name="text">The words.</param>
    /// <param name="where">The file as the person knows it.</param>
    /// <param name="isMeasured">Whether what was measured of it stands beside it by its index, so that no line may be moved.</param>
    /// <exception cref="InputException">It is no text, is empty, or is more than a label holds.</exception>
    public static LabelText Of(string text, string where, bool isMeasured = false)
    {
        if (text.Length > MostCharacters)
            throw new InputException(where, 0, "reading.too-long", ("count", $"{text.Length:N0}"));
        if (text.Any(c => c == '\0'
            || (char.IsControl(c) && c is not ('\n' or '\r' or '\t' or '\f' or '\v' or '\u0085'))
            || c == '\uFFFD'))
            throw new InputException(where, 0, "reading.not-plain-text");
        var alike = text.Replace("\r\n", "\n").Replace('\r', '\n').Replace('\f', '\n').Replace('\v', '\n').Replace('\u0085', '\n')
            .Replace('\u00A0', ' ').Replace('\u2009', ' ').Replace('\u202F', ' ').Replace('\t', ' ').Replace("\uFEFF", "")
            .Replace("\u00AD", "").Replace("\u200B", "");
        if (!isMeasured)
            alike = Spaced().Replace(alike, m => m.Value.Replace("   ", "\u00A0").Replace(" ", "").Replace('\u00A0', ' '));
        alike = ComposedText.Of(Ligatures.Aggregate(alike, (t, l) => t.Replace(l.Sign, l.Letters)));
        alike = StatementSigns.Parted(EvenLines.Plain(TextColumns.Unfold(StatementSigns.WithoutTables(alike)), isMeasured));
        return alike.Any(char.IsLetterOrDigit)
            ? new LabelText(alike, where)
            : throw new InputException(where, 0, "reading.no-words");
    }

    // "S O A P": letters set apart, words by more; from a drawing their places tell.
    [GeneratedRegex(@"(?<![\p{L}0-9])(?:\p{L} {1,3}){3,}\p{L}(?![\p{L}0-9])")]
    private static partial Regex Spaced();

    /// <summary>The label that stands in a part of the text: all else is blanked, so that every place keeps its index.</summary>
    public LabelText Only(TextSpan part) => new(Without([new(0, part.Start), new(part.End, Text.Length - part.End)]), Where)
    {
        Heights = [.. Heights.Where(h => h.Span.Overlaps(part))],
        Places = [.. Places.Where(p => p.Span.Overlaps(part))],
        Pages = Pages,
        Page = Page,
    };

    /// <summary>The text with these places blanked, so that nothing read twice is misread; every other place keeps its index.</summary>
    public string Without(IEnumerable<TextSpan> spans)
    {
        var left = Text.ToCharArray();
        foreach (var span in spans)
        {
            for (var i = span.Start; i < span.End; i++)
            {
                if (left[i] != '\n')
                    left[i] = ' ';
            }
        }
        return new string(left);
    }
}
