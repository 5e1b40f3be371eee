using PdfSharp.Drawing;
using PdfSharp.Fonts;
using PdfSharp.Pdf;

namespace LabelForge.Benchmarks.Floor;

/// <summary>The same loop through PDFsharp: for each label every rectangle and every line of text again.</summary>
public static class PdfSharpLoop
{
    /// <summary>So many full sheets.</summary>
    public static void WriteSheets(Ink ink, int sheets, string path)
    {
        GlobalFontSettings.FontResolver ??= new Files(ink.Fonts);
        using var document = new PdfDocument();
        XFont[] fonts = [.. ink.Lines
            .Select(l => new XFont($"{l.Font}", l.Size, XFontStyleEx.Regular, new XPdfFontOptions(PdfFontEncoding.Unicode)))];
        for (var sheet = 0; sheet < sheets; sheet++)
        {
            var page = document.AddPage();
            (page.Width, page.Height) = (XUnit.FromPoint(ink.PageWidth), XUnit.FromPoint(ink.PageHeight));
            using var graphics = XGraphics.FromPdfPage(page);
            foreach (var (x, y) in ink.Corners)
            {
                foreach (var bar in ink.Bars)
                    graphics.DrawRectangle(XBrushes.Black, x + bar.X, y + bar.Y, bar.Width, bar.Height);
                for (var i = 0; i < fonts.Length; i++)
                    graphics.DrawString(ink.Lines[i].Text, fonts[i], XBrushes.Black, x + ink.Lines[i].X, y + ink.Lines[i].Y);
            }
        }
        document.Save(path);
    }

    private sealed class Files(IReadOnlyList<string> fonts) : IFontResolver
    {
        public byte[]? GetFont(string faceName) => File.ReadAllBytes(fonts[int.Parse(faceName)]);

        public FontResolverInfo? ResolveTypeface(string familyName, bool bold, bool italic) => new(familyName);
    }
}
