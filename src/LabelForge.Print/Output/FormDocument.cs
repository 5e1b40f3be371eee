using LabelForge.Measures;
using LabelForge.Print.Drawing;
using LabelForge.Print.Lettering;
using LabelForge.Print.Sheets;
using PdfSharp.Drawing;
using PdfSharp.Pdf;

namespace LabelForge.Print.Output;

/// <summary>
/// A PDF in which each label is drawn once, by Skia, and placed any number of times as a form (ISO 32000-1, 8.10):
/// a thousand sheets are small and quick, and the letters are the same ones everywhere.
/// </summary>
internal sealed class FormDocument : IDisposable
{
    private readonly PdfDocument _document = new();
    private readonly DocumentInfo _info;
    private readonly Dictionary<LabelLayout, XPdfForm> _forms = new(ReferenceEqualityComparer.Instance);

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
        return new FormPage(XGraphics.FromPdfPage(page), FormOf);
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

    private XPdfForm FormOf(LabelLayout label)
    {
        if (_forms.TryGetValue(label, out var known))
            return known;
        var drawn = new MemoryStream();
        PdfFile.Write(drawn, _info, WholePage(label.Design.Width), WholePage(label.Design.Height), [canvas => LabelPainter.Paint(canvas, label, 0, 0)]);
        drawn.Position = 0;
        return _forms[label] = XPdfForm.FromStream(drawn);
    }

    // Skia rounds a page to its own dots, which would cut the form's edge; in steps of 6 points nothing is rounded.
    private static double WholePage(Length side) => 6 * Math.Ceiling(Points.Of(side) / 6);
}

/// <summary>A page that labels are placed on.</summary>
internal sealed class FormPage(XGraphics graphics, Func<LabelLayout, XPdfForm> formOf) : IDisposable
{
    public void Place(LabelLayout label, double x, double y, Correction correction)
    {
        var form = formOf(label);
        var (left, top) = correction.Apply(x, y);
        graphics.DrawImage(form, left, top, form.PointWidth * correction.FactorX, form.PointHeight * correction.FactorY);
    }

    public void Draw(Stroke stroke, Correction correction)
    {
        var (x1, y1) = correction.Apply(stroke.X1, stroke.Y1);
        var (x2, y2) = correction.Apply(stroke.X2, stroke.Y2);
        graphics.DrawLine(new XPen(stroke.Tint == Tint.Grey ? XColors.Gray : XColors.Black, stroke.Thickness), x1, y1, x2, y2);
    }

    public void Dispose() => graphics.Dispose();
}
