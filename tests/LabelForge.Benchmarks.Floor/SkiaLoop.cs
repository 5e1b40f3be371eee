using SkiaSharp;

namespace LabelForge.Benchmarks.Floor;

/// <summary>The bare loop: for each label every primitive again, straight to Skia's PDF document.</summary>
public sealed class SkiaLoop : IDisposable
{
    private readonly Ink _ink;
    private readonly SKTypeface[] _faces;
    private readonly (SKTextBlob Blob, float X, float Y)[] _texts;
    private readonly SKRect[] _bars;
    private readonly SKPaint _letters = new() { Color = SKColors.Black, IsAntialias = true };
    private readonly SKPaint _solid = new() { Color = SKColors.Black };

    private SkiaLoop(Ink ink)
    {
        _ink = ink;
        _faces = [.. ink.Fonts.Select(f => SKTypeface.FromFile(f))];
        _texts = [.. ink.Lines.Select(l => (Blob(l), l.X, l.Y))];
        _bars = [.. ink.Bars.Select(b => SKRect.Create(b.X, b.Y, b.Width, b.Height))];
    }

    /// <summary>One label on a page of its own size.</summary>
    public static void WriteLabel(Ink ink, string path)
    {
        using var loop = new SkiaLoop(ink);
        using var file = File.Create(path);
        using var document = SKDocument.CreatePdf(file);
        loop.Draw(document.BeginPage(ink.Width, ink.Height));
        document.EndPage();
        document.Close();
    }

    /// <summary>So many full sheets.</summary>
    public static void WriteSheets(Ink ink, int sheets, string path)
    {
        using var loop = new SkiaLoop(ink);
        using var file = File.Create(path);
        using var document = SKDocument.CreatePdf(file);
        for (var sheet = 0; sheet < sheets; sheet++)
        {
            var canvas = document.BeginPage(ink.PageWidth, ink.PageHeight);
            foreach (var (x, y) in ink.Corners)
            {
                canvas.Save();
                canvas.Translate(x, y);
                loop.Draw(canvas);
                canvas.Restore();
            }
            document.EndPage();
        }
        document.Close();
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        foreach (var (blob, _, _) in _texts)
            blob.Dispose();
        foreach (var face in _faces)
            face.Dispose();
        _letters.Dispose();
        _solid.Dispose();
    }

    private void Draw(SKCanvas canvas)
    {
        foreach (var bar in _bars)
            canvas.DrawRect(bar, _solid);
        foreach (var (blob, x, y) in _texts)
            canvas.DrawText(blob, x, y, _letters);
    }

    private SKTextBlob Blob(InkLine line)
    {
        using var font = new SKFont(_faces[line.Font], line.Size) { Hinting = SKFontHinting.None, Subpixel = true, LinearMetrics = true };
        using var builder = new SKTextBlobBuilder();
        builder.AddPositionedRun([.. line.Glyphs], font, [.. line.Offsets.Select(o => new SKPoint(o, 0))]);
        return builder.Build()!;
    }
}
