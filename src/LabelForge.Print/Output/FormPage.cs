using LabelForge.Print.Drawing;
using LabelForge.Print.Sheets;
using PdfSharp.Drawing;

namespace LabelForge.Print.Output;

/// <summary>A page of a <see cref="FormDocument"/>; points from its top left corner, down.</summary>
internal sealed class FormPage(FormDocument document, XGraphics graphics) : IDisposable
{
    /// <summary>Places a label or a picture with its top left corner at a point.</summary>
    /// <param name="drawn">The label or picture; the same one is drawn once in the document.</param>
    /// <param name="x">From the left.</param>
    /// <param name="y">From the top.</param>
    /// <param name="correction">How the page is moved and stretched.</param>
    /// <param name="scale">How much larger than it is.</param>
    public void Place(object drawn, double x, double y, Correction correction, double scale = 1)
    {
        var form = document.FormOf(drawn);
        var (left, top) = correction.Apply(x, y);
        graphics.DrawImage(form, left, top, form.PointWidth * scale * correction.FactorX, form.PointHeight * scale * correction.FactorY);
    }

    /// <summary>Draws a straight line.</summary>
    public void Draw(Stroke stroke, Correction correction)
    {
        var (x1, y1) = correction.Apply(stroke.X1, stroke.Y1);
        var (x2, y2) = correction.Apply(stroke.X2, stroke.Y2);
        graphics.DrawLine(new XPen(stroke.Tint == Tint.Grey ? XColors.Gray : XColors.Black, stroke.Thickness), x1, y1, x2, y2);
    }

    /// <inheritdoc/>
    public void Dispose() => graphics.Dispose();
}
