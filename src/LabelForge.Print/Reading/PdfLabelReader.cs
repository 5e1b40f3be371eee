using LabelForge.Checks.Reading;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;

namespace LabelForge.Print.Reading;

/// <summary>Reads the words of a label out of a PDF: in reading order, with the heights of their letters.</summary>
/// <remarks>
/// PDF counts in points of 1/72 in from the lower left corner (ISO 32000-1, 8.3.2.3). Heights come from the outlines of the
/// glyphs, from the baseline up; where a font gives no outline, none is measured.
/// </remarks>
public static class PdfLabelReader
{
    /// <summary>The largest file that is taken for a label.</summary>
    public const long MostBytes = GuardedPdf.MostBytes;

    private const int MostPages = 4;

    // Of a usual face's size, how much stands above the baseline; only for the picture. Common practice.
    private const double Ascent = 0.8;
    private const int MostLetters = LabelText.MostCharacters;

    // A page up to this size on its longer side is one label; a larger one is a sheet, whose panels are not known.
    private const double LongestLabelPoints = 9 * 72;

    /// <summary>Reads a label.</summary>
    /// <param name="pdf">The file's bytes.</param>
    /// <param name="where">The file as the person knows it.</param>
    /// <exception cref="InputException">It is no PDF that can be read, or there are no words in it.</exception>
    public static LabelText Read(byte[] pdf, string where) =>
        GuardedPdf.Read(pdf, where, "label", MostPages, document => Parse(document, where));

    private static LabelText Parse(PdfDocument document, string where)
    {
        var text = new StringBuilder();
        var heights = ImmutableArray.CreateBuilder<WordHeight>();
        var places = ImmutableArray.CreateBuilder<WordPlace>();
        var pages = ImmutableArray.CreateBuilder<(double, double)>();
        (double Width, double Height)? size = null;
        var unseen = ImmutableArray.CreateBuilder<UnseenWords>();
        document.AddPageFactory<PaintedLetters, SeenLettersFactory>();
        var layers = PdfLayers.Of(document);
        for (var number = 1; number <= document.NumberOfPages; number++)
        {
            var page = document.GetPage(number);
            if (page.Letters.Count > MostLetters)
                throw GuardedPdf.Refused(where, "pdf.too-many-letters", ("number", number), ("count", $"{page.Letters.Count:N0}"));
            size = number == 1 ? (page.Width, page.Height) : size;
            pages.Add((Math.Clamp(page.Width, 1, 14_400), Math.Clamp(page.Height, 1, 14_400)));
            var seen = document.GetPage<PaintedLetters>(number).Where(layers);
            foreach (var words in PdfWords.Of(page.Letters.Where(l => seen.Of(l) == Unseen.No)))
            {
                foreach (var block in ReadingOrder.Blocks(words))
                    Append(block, page, text, heights, places);
            }
            unseen.AddRange(Hidden(page, seen));
            foreach (var (words, prints) in PdfNotes.Of(document, page))
            {
                if (prints)
                    text.Append(string.Join('\n', words.Split('\n').Select(Clean))).Append("\n\n");
                else
                    unseen.Add(new(Clean(words), "in a note or a field that does not print", page.Number));
            }
        }
        if (text.Length == 0 && unseen.Count > 0)
            throw GuardedPdf.Refused(where, "pdf.no-word-seen", ("why", unseen[0].Why));
        var read = LabelText.Of(text.ToString(), where, isMeasured: true);
        var isLabel = size is { } s && Math.Max(s.Width, s.Height) <= LongestLabelPoints;
        return read with
        {
            Heights = heights.ToImmutable(),
            Places = places.ToImmutable(),
            Pages = pages.ToImmutable(),
            Page = isLabel ? (Points(size!.Value.Width), Points(size!.Value.Height)) : null,
            Unseen = unseen.ToImmutable(),
        };
    }

    private static IEnumerable<UnseenWords> Hidden(Page page, SeenLetters seen)
    {
        foreach (var why in page.Letters.GroupBy(seen.Of).Where(g => g.Key != Unseen.No))
        {
            var words = PdfWords.Of(why).SelectMany(ReadingOrder.Blocks).SelectMany(b => b.SelectMany(l => l)).Select(w => Clean(w.Text))
                .Where(w => w.Any(char.IsLetterOrDigit)).ToArray();
            if (words.Length > 0)
                yield return new(string.Join(' ', words), Sentence(why.Key), page.Number);
        }
    }

    private static string Sentence(Unseen why) => why switch
    {
        Unseen.NotDrawn => "in the file without being drawn",
        Unseen.NoContrast => "in the colour of what is under them, or nearly so",
        Unseen.Layer => "in a layer that does not print",
        Unseen.Covered => "under something that is drawn over them",
        _ => "outside the page, or outside what their drawing is cut to",
    };

    private static void Append(IReadOnlyList<ImmutableArray<PdfWord>> block, Page page, StringBuilder text,
        ImmutableArray<WordHeight>.Builder heights, ImmutableArray<WordPlace>.Builder places)
    {
        foreach (var line in block)
        {
            foreach (var word in line)
            {
                var clean = Clean(word.Text);
                if (clean.Length == 0)
                    continue;
                if (text.Length > 0 && text[^1] != '\n')
                    text.Append(' ');
                if (LetterHeights.Of(word.Letters) is var (lower, upper) && (lower ?? upper) is not null)
                    heights.Add(new WordHeight(new TextSpan(text.Length, clean.Length), page.Number, lower, upper));
                places.Add(Place(word, new TextSpan(text.Length, clean.Length), page));
                text.Append(clean);
            }
            text.Append('\n');
        }
        text.Append('\n');
    }

    // A level word is placed by its baseline and size, so that "see" and "Tall" stand alike; a turned one by its box.
    private static WordPlace Place(PdfWord word, TextSpan span, Page page)
    {
        var (left, right) = (word.Letters.Min(l => Edge(l, true, true)), word.Letters.Max(l => Edge(l, true, false)));
        var (low, high) = (word.Letters.Min(l => Edge(l, false, true)), word.Letters.Max(l => Edge(l, false, false)));
        return word.Turn == 0
            ? new WordPlace(span, page.Number, word.From, page.Height - word.Letters[0].StartBaseLine.Y - (word.Size * Ascent),
                word.To - word.From, word.Size)
            : new WordPlace(span, page.Number, left, page.Height - high, right - left, high - low);
    }

    private static double Edge(Letter letter, bool across, bool least)
    {
        var box = letter.BoundingBox;
        var corners = new[] { box.TopLeft, box.TopRight, box.BottomLeft, box.BottomRight }.Select(c => across ? c.X : c.Y);
        return least ? corners.Min() : corners.Max();
    }

    // What does not print is left out; a symbol by itself of a symbol font is a bullet.
    private static string Clean(string word)
    {
        if (word is [var sign] && char.GetUnicodeCategory(sign) == UnicodeCategory.PrivateUse)
            return "•";
        var clean = new StringBuilder(word.Length);
        foreach (var c in ComposedText.Of(LabelText.Ligatures.Aggregate(word,
            (w, l) => w.Replace(l.Sign, l.Letters, StringComparison.Ordinal))))
        {
            if (!char.IsControl(c) && c is not ('\u00AD' or '\u200B' or '\uFEFF' or '\uFFFD'))
                clean.Append(char.IsWhiteSpace(c) ? ' ' : c is '\u2010' or '\u2011' ? '-' : c);
        }
        return clean.ToString().Trim();
    }

    private static Length Points(double points) => Length.FromInches((decimal)Math.Clamp(points, 0, 100_000) / 72m);
}
