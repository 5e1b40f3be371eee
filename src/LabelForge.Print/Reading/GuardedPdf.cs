using LabelForge.Measures;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Exceptions;

namespace LabelForge.Print.Reading;

/// <summary>Opens a PDF that came from anywhere: with a bound on its size, its pages, its depth and its time.</summary>
internal static class GuardedPdf
{
    /// <summary>The largest file that is taken.</summary>
    public const long MostBytes = 20_000_000;

    // Drawing and fonts alone are unpacked, no pictures. A face with all of Chinese takes 20 MB; of a drawing, each byte
    // becomes some thirty in memory.
    private const long MostOfOneStream = 24_000_000;
    private const long MostUnpackedBytes = 64_000_000;
    private const int StackBytes = 64 * 1024 * 1024;

    // A busy machine takes long over a sound file too; bombs are told by their size before.
    private static readonly TimeSpan Limit = TimeSpan.FromSeconds(30);

    /// <summary>Reads something out of a PDF.</summary>
    /// <param name="pdf">The file's bytes.</param>
    /// <param name="where">The file as the person knows it.</param>
    /// <param name="what">What it should be: "label", "certificate".</param>
    /// <param name="mostPages">The most pages that such a thing has.</param>
    /// <param name="read">Reads it.</param>
    /// <exception cref="InputException">It is no PDF that can be read.</exception>
    public static T Read<T>(byte[] pdf, string where, string what, int mostPages, Func<PdfDocument, T> read)
    {
        if (!HasHeader(pdf))
            throw Refused(where, "This is not a PDF.", $"Export the {what} as PDF, or give its words as .txt.");
        var budget = new UnpackBudget(MostOfOneStream, MostUnpackedBytes);
        T? answer = default;
        Exception? failed = null;
        // A hostile file may nest deeply or never end: it gets a stack and a time of its own.
        var reader = new Thread(() =>
        {
            try
            {
                using var document = PdfDocument.Open(pdf, new ParsingOptions { UseLenientParsing = true, SkipMissingFonts = true, FilterProvider = BoundedFilters.Of(budget) });
                if (document.NumberOfPages > mostPages)
                    throw Refused(where, $"This PDF has {document.NumberOfPages} pages; a {what} has {mostPages} at most.", $"Give the {what} alone.");
                answer = read(document);
            }
            catch (Exception e)
            {
                failed = e;
            }
        }, StackBytes)
        { IsBackground = true };
        reader.Start();
        var ended = reader.Join(Limit);
        // A reader that is still at work is not waited for, and ends at the next thing that it would unpack.
        budget.Stop();
        // A lenient reader goes on without what it was not given, and would answer with a part of the words.
        if (budget.IsExceeded)
            throw Refused(where, $"This PDF unpacks to more than any {what} holds.", $"Export the {what} anew, by itself, or give its words as .txt.");
        if (!ended)
            throw Refused(where, "This PDF cannot be read in reasonable time.", $"Export the {what} anew, by itself, with its text as text.");
        return failed switch
        {
            null => answer!,
            InputException refused => throw refused,
            PdfDocumentEncryptedException => throw Refused(where, "This PDF is locked with a password.", $"Open it with the password and save it without one, or give the {what}'s words as .txt."),
            _ => throw Refused(where, "This PDF is broken or uses something that cannot be read here.", $"Open it in a viewer and export it anew as PDF with its text as text, or give the {what}'s words as .txt."),
        };
    }

    /// <summary>Why a file cannot be used.</summary>
    public static InputException Refused(string where, string wrong, string write) => new(new Problem(where, 0, wrong, write));

    private static bool HasHeader(byte[] pdf) => pdf.AsSpan(0, Math.Min(1024, pdf.Length)).IndexOf("%PDF-"u8) >= 0;
}
