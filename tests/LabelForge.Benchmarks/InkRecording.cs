using LabelForge.Benchmarks.Floor;
using LabelForge.Print.Drawing;
using LabelForge.Print.Lettering;
using LabelForge.Print.Sheets;

namespace LabelForge.Benchmarks;

/// <summary>Records a laid-out label as the plain primitives that the floor draws.</summary>
internal static class InkRecording
{
    /// <summary>The label's ink and the places of a sheet.</summary>
    public static Ink Of(LabelLayout label, LabelStock stock)
    {
        var faces = label.Lines.Select(l => l.Text.Face).Distinct().ToList();
        return new Ink(
            (float)Points.Of(stock.PageWidth), (float)Points.Of(stock.PageHeight), (float)Points.Of(label.Design.Width),
            (float)Points.Of(label.Design.Height), [.. faces.Select(f => FontFile(f))],
            [.. label.Bars.Select(b => ((float)b.X, (float)b.Y, (float)b.Width, (float)b.Height))],
            [.. label.Lines
                .Select(l => new InkLine(faces.IndexOf(l.Text.Face), (float)l.Text.Size, (float)l.X, (float)l.Y, [.. l.Text.Shape.Glyphs],
                    [.. l.Text.Shape.Offsets.Select(o => (float)(o * l.Text.Size))], l.Text.Text))],
            [.. Enumerable.Range(1, stock.PerSheet).Select(stock.CornerOf).Select(c => ((float)Points.Of(c.X), (float)Points.Of(c.Y)))]);
    }

    private static string FontFile(TypeFace face) => Directory.EnumerateFiles(Repository.File("templates/fonts"), "*.ttf")
        .First(f => ReferenceEquals(BundledFaces.OfFile(Path.GetFileNameWithoutExtension(f)), face));
}
