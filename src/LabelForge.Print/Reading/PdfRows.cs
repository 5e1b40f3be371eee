using UglyToad.PdfPig.Content;
using UglyToad.PdfPig.DocumentLayoutAnalysis.WordExtractor;

namespace LabelForge.Print.Reading;

/// <summary>Reads a PDF row by row, as a table is read: what stands on one height is one line, from left to right.</summary>
public static class PdfRows
{
    // Certificates of a mixture with many constituents run over several pages; common practice.
    private const int MostPages = 30;
    private const int MostLetters = 200_000;

    /// <summary>The rows as text, one a line.</summary>
    /// <param name="pdf">The file's bytes, 20 MB at most.</param>
    /// <param name="where">The file as the person knows it.</param>
    /// <exception cref="InputException">It is no PDF that can be read, or too large for a certificate.</exception>
    public static string Read(byte[] pdf, string where) => GuardedPdf.Read(pdf, where, "certificate", MostPages, document =>
    {
        var text = new StringBuilder();
        foreach (var page in document.GetPages())
        {
            if (page.Letters.Count > MostLetters)
                throw GuardedPdf.Refused(where, "pdf.too-many-letters-for-a-certificate", ("number", page.Number),
                    ("count", $"{page.Letters.Count:N0}"));
            foreach (var row in Rows(page))
                text.AppendJoin(' ', row.Select(w => w.Text)).Append('\n');
        }
        return text.ToString();
    });

    // Words whose heights overlap by half stand on one row, whatever their sizes.
    private static IEnumerable<IReadOnlyList<Word>> Rows(Page page)
    {
        var row = new List<Word>();
        double middle = 0, half = 0;
        foreach (var word in NearestNeighbourWordExtractor.Instance.GetWords(page.Letters).Where(w => !string.IsNullOrWhiteSpace(w.Text))
            .OrderByDescending(Middle).ThenBy(w => w.BoundingBox.Left))
        {
            if (row.Count > 0 && Math.Abs(Middle(word) - middle) > half)
            {
                yield return [.. row.OrderBy(w => w.BoundingBox.Left)];
                row = [];
            }
            if (row.Count == 0)
                (middle, half) = (Middle(word), Math.Max(1, Math.Abs(word.BoundingBox.Height) / 2));
            row.Add(word);
        }
        if (row.Count > 0)
            yield return [.. row.OrderBy(w => w.BoundingBox.Left)];
    }

    private static double Middle(Word word) => (word.BoundingBox.Top + word.BoundingBox.Bottom) / 2;
}
