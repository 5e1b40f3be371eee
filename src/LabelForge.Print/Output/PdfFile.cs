using SkiaSharp;

namespace LabelForge.Print.Output;

/// <summary>What a document says about itself; the time is given, so that the same input makes the same bytes.</summary>
/// <param name="Title">The title that readers show.</param>
/// <param name="Made">When it counts as made.</param>
public sealed record DocumentInfo(string Title, DateTimeOffset Made)
{
    /// <summary>A document of a day, so that what is written twice on it is the same bytes.</summary>
    public DocumentInfo(string title, DateOnly on) : this(title, new DateTimeOffset(on.ToDateTime(TimeOnly.MinValue), TimeSpan.Zero))
    {
    }
}

/// <summary>Writes PDF through Skia; the unit is the point and the origin the top left corner.</summary>
internal static class PdfFile
{
    // Skia's default; only images would be affected, and there are none.
    private const float RasterDpi = 300;

    /// <summary>The name that documents give as the program that made them.</summary>
    public const string Creator = "LabelForge";

    public static void Write(Stream stream, DocumentInfo info, double width, double height, IEnumerable<Action<SKCanvas>> pages)
    {
        var metadata = new SKDocumentPdfMetadata(RasterDpi)
        {
            Title = info.Title,
            Creator = Creator,
            Creation = info.Made.UtcDateTime,
            Modified = info.Made.UtcDateTime,
        };
        using var document = SKDocument.CreatePdf(stream, metadata);
        foreach (var page in pages)
        {
            page(document.BeginPage((float)width, (float)height));
            document.EndPage();
        }
        document.Close();
    }
}
