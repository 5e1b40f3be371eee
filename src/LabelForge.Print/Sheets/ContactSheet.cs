using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Lettering;
using LabelForge.Print.Output;

namespace LabelForge.Print.Sheets;

/// <summary>A label on a contact sheet, with the words under it.</summary>
public sealed record ContactLabel(LabelLayout Layout, string Caption);

/// <summary>Labels side by side at actual size, each with its outline and a caption, to look at before any is printed.</summary>
public static class ContactSheet
{
    private const double Margin = 32;
    private const double Gutter = 16;
    private const double CaptionSize = 8;
    private const double CaptionRoom = 18;

    /// <summary>Writes the sheet; it is whole or it is not there.</summary>
    /// <param name="path">The PDF.</param>
    /// <param name="title">What stands at the head of each page.</param>
    /// <param name="labels">The labels in order.</param>
    /// <param name="width">The paper's width.</param>
    /// <param name="height">The paper's height.</param>
    /// <param name="info">Title and time.</param>
    public static void WritePdf(string path, string title, IReadOnlyList<ContactLabel> labels, Length width, Length height,
        DocumentInfo info) => AtomicFile.Write(path, stream =>
    {
        var document = new FormDocument(stream, info);
        foreach (var page in Pages(labels, Points.Of(width), Points.Of(height)))
        {
            using var sheet = document.AddPage(width, height);
            sheet.Place(Words(title, page, width, height), 0, 0);
            foreach (var (label, x, y) in page)
                sheet.Place(label.Layout.OnStock(), x, y);
        }
        document.Finish();
    });

    // Rows as high as their highest label, each row centred.
    private static List<List<(ContactLabel Label, double X, double Y)>> Pages(IReadOnlyList<ContactLabel> labels, double width,
        double height)
    {
        var pages = new List<List<(ContactLabel, double, double)>> { new() };
        var (row, used, y) = (new List<ContactLabel>(), 0.0, Margin + CaptionRoom);
        foreach (var label in labels)
        {
            var wide = Points.Of(label.Layout.Design.Width);
            if (row.Count > 0 && used + Gutter + wide > width - 2 * Margin)
                EndRow();
            used += (row.Count > 0 ? Gutter : 0) + wide;
            row.Add(label);
        }
        EndRow();
        return pages;

        void EndRow()
        {
            if (row.Count == 0)
                return;
            var high = row.Max(l => Points.Of(l.Layout.Design.Height)) + CaptionRoom;
            if (y + high > height - Margin && pages[^1].Count > 0)
            {
                pages.Add([]);
                y = Margin + CaptionRoom;
            }
            var x = (width - used) / 2;
            foreach (var label in row)
            {
                pages[^1].Add((label, x, y));
                x += Points.Of(label.Layout.Design.Width) + Gutter;
            }
            y += high + Gutter / 2;
            (row, used) = ([], 0);
        }
    }

    private static Picture Words(string title, List<(ContactLabel Label, double X, double Y)> page, Length width, Length height)
    {
        MeasuredText Of(string text, TypeFace face, double size) => MeasuredText.OfWords(face, size, text.Split(' '), 0, false);
        return new Picture(width, height)
        {
            Outlines = [.. page.Select(p => Cut(p.Label.Layout.Design, p.X, p.Y))],
            Lines =
            [
                new PictureLine(Of(title, BundledFaces.SemiBold, 12), Margin, Margin),
                .. page.Select(p => new PictureLine(Of(p.Label.Caption, BundledFaces.Regular, CaptionSize), p.X,
                    p.Y + Points.Of(p.Label.Layout.Design.Height) + CaptionSize + 2)),
            ],
        };
    }

    private static Outline Cut(LabelDesign design, double x, double y) =>
        new(x, y, Points.Of(design.Width), Points.Of(design.Height), design.Round ? 0 : 3, design.Round, 0.25, Tint.Grey);
}
