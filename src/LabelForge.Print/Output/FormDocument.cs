using LabelForge.Measures;
using LabelForge.Print.Drawing;
using LabelForge.Print.Lettering;
using LabelForge.Print.Sheets;
using PdfSharp.Drawing;
using PdfSharp.Pdf;
using SkiaSharp;

namespace LabelForge.Print.Output;

/// <summary>
/// A PDF in which each label is drawn once, by Skia, and placed any number of times as a form (ISO 32000-1, 8.10):
/// a thousand sheets are small and quick, and the letters are the same ones everywhere.
/// </summary>
internal sealed class FormDocument : IDisposable
{
    private readonly PdfDocument _document = new();
    private readonly DocumentInfo _info;
    private readonly Dictionary<object, XPdfForm> _forms = new(ReferenceEqualityComparer.Instance);

    public FormDocument(DocumentInfo info)
    {
        _info = info;
        _document.Info.Title = info.Title;
        _document.Info.Creator = PdfFile.Creator;
        _document.Info.CreationDate = info.Made.UtcDateTime;
        _document.Info.ModificationDate = info.Made.UtcDateTime;
        _document.ViewerPreferences.DisplayDocTitle = true;
    }

    public FormPage AddPage(Length width, Length height)
    {
        var page = _document.AddPage();
        page.Width = XUnit.FromPoint(Points.Of(width));
        page.Height = XUnit.FromPoint(Points.Of(height));
        return new FormPage(this, XGraphics.FromPdfPage(page));
    }

    public void Save(Stream stream)
    {
        using var whole = new MemoryStream();
        _document.Save(whole, closeStream: false);
        var written = whole.GetBuffer().AsSpan(0, (int)whole.Length);
        SettledPdf.Settle(written, _info);
        stream.Write(written);
    }

    public void Dispose()
    {
        foreach (var form in _forms.Values)
            form.Dispose();
        _document.Dispose();
    }

    /// <summary>The form of a label or a picture, drawn when it is first wanted.</summary>
    internal XPdfForm FormOf(object drawn) => _forms.TryGetValue(drawn, out var known) ? known : _forms[drawn] = drawn switch
    {
        LabelLayout label => Form(label.Design.Width, label.Design.Height, label.Lines.Select(l => l.Text), (canvas, faces) => LabelPainter.Paint(canvas, label, 0, 0, faces)),
        Picture picture => Form(picture.Width, picture.Height, picture.Lines.Select(l => l.Text), (canvas, faces) => PicturePainter.Paint(canvas, picture, faces)),
        _ => throw new ArgumentException("Neither a label nor a picture.", nameof(drawn)),
    };

    private XPdfForm Form(Length width, Length height, IEnumerable<MeasuredText> texts, Action<SKCanvas, DrawnFaces> paint)
    {
        using var faces = DrawnFaces.Of(texts);
        var page = new MemoryStream();
        PdfFile.Write(page, _info, Whole(width), Whole(height), [canvas => paint(canvas, faces)]);
        page.Position = 0;
        return XPdfForm.FromStream(page);
    }

    // Skia rounds a page to its own dots, which would cut the form's edge; in steps of 6 points nothing is rounded.
    private static double Whole(Length side) => 6 * Math.Ceiling(Points.Of(side) / 6);
}
