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
            throw Refused(where, "pdf.not-a-pdf", ("what", what));
        var budget = new UnpackBudget(MostOfOneStream, MostUnpackedBytes);
        T? answer = default;
        Exception? failed = null;
        // A hostile file may nest deeply or never end: it gets a stack and a time of its own.
        var reader = new Thread(() =>
        {
            try
            {
                using var document = PdfDocument.Open(pdf,
                    new ParsingOptions { UseLenientParsing = true, SkipMissingFonts = true, FilterProvider = BoundedFilters.Of(budget) });
                if (document.NumberOfPages > mostPages)
                    throw Refused(where, "pdf.too-many-pages", ("number-of-pages", document.NumberOfPages), ("what", what),
                        ("most-pages", mostPages));
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
            throw Refused(where, "pdf.unpacks-too-large", ("what", what));
        if (!ended)
            throw Refused(where, "pdf.too-slow", ("what", what));
        return failed switch
        {
            null => answer!,
            InputException refused => throw refused,
            PdfDocumentEncryptedException => throw Refused(where, "pdf.locked", ("what", what)),
            _ => throw Refused(where, "pdf.broken", ("what", what)),
        };
    }

    /// <summary>Why a file cannot be used.</summary>
    public static InputException Refused(string where, string code, params ReadOnlySpan<(string Name, object? Value)> arguments) =>
        new(where, 0, code, arguments);

    private static bool HasHeader(byte[] pdf) => pdf.AsSpan(0, Math.Min(1024, pdf.Length)).IndexOf("%PDF-"u8) >= 0;
}
