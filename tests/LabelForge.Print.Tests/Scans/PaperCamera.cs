using LabelForge.Print.Output;
using LabelForge.Print.Scans;
using SkiaSharp;

namespace LabelForge.Print.Tests.Scans;

/// <summary>What happens to a print on its way to a picture: the printer moves and stretches it, the paper lies askew on something dark, a
/// lens blurs, a sensor adds noise.</summary>
internal sealed record PaperCamera
{
    public double Dpi { get; init; } = 200;

    /// <summary>What the printer makes of a length: 0.99 is one percent too small.</summary>
    public (double X, double Y) Shrink { get; init; } = (1, 1);

    public (double X, double Y) ShiftMm { get; init; }

    public double TurnDegrees { get; init; }

    /// <summary>The nearer edge is so much larger than the farther one.</summary>
    public double Tilt { get; init; }

    public float BlurDots { get; init; }

    public double Noise { get; init; }

    /// <summary>How dark ink comes out: 1 is black, 0.4 a cartridge near its end.</summary>
    public double Ink { get; init; } = 1;

    public SKColor Ground { get; init; } = new(60, 60, 64);

    public double MarginMm { get; init; } = 12;

    public ScannedPicture Scan(double widthMm, double heightMm, Registration sent, Action<SKCanvas> drawing, int seed = 1)
    {
        var dots = Dpi / 25.4;
        var (wide, high) = ((int)((widthMm + 2 * MarginMm) * dots), (int)((heightMm + 2 * MarginMm) * dots));
        using var bitmap = new SKBitmap(wide, high, SKColorType.Rgba8888, SKAlphaType.Premul);
        using (var canvas = new SKCanvas(bitmap))
        {
            canvas.Clear(Ground);
            canvas.Translate(wide / 2f, high / 2f);
            if (Tilt != 0)
            {
                var lens = SKMatrix.CreateIdentity();
                lens.Persp1 = (float)(Tilt / high);
                canvas.Concat(lens);
            }
            canvas.RotateDegrees((float)TurnDegrees);
            canvas.Scale((float)dots);
            canvas.Translate((float)(-widthMm / 2), (float)(-heightMm / 2));
            using var paper = new SKPaint { Color = new SKColor(247, 246, 242), IsAntialias = true };
            canvas.DrawRect(0, 0, (float)widthMm, (float)heightMm, paper);
            canvas.ClipRect(SKRect.Create((float)widthMm, (float)heightMm));
            using var ink = new SKPaint { Color = SKColors.White.WithAlpha((byte)Math.Round(255 * Ink)) };
            canvas.SaveLayer(ink);
            // The page as sent, and what the printer makes of it.
            canvas.Translate((float)ShiftMm.X, (float)ShiftMm.Y);
            canvas.Scale((float)Shrink.X, (float)Shrink.Y);
            canvas.Translate((float)sent.NudgeXMm, (float)sent.NudgeYMm);
            canvas.Scale((float)sent.FactorX, (float)sent.FactorY);
            canvas.Scale((float)(25.4 / 72));
            drawing(canvas);
            canvas.Restore();
        }
        using var seen = BlurDots > 0 ? Blurred(bitmap) : bitmap.Copy();
        Speckle(seen, seed);
        return ScannedPicture.Of(seen, null);
    }

    private SKBitmap Blurred(SKBitmap sharp)
    {
        var soft = new SKBitmap(sharp.Info);
        using var canvas = new SKCanvas(soft);
        using var blur = SKImageFilter.CreateBlur(BlurDots, BlurDots);
        using var paint = new SKPaint { ImageFilter = blur };
        canvas.DrawBitmap(sharp, 0, 0, new SKSamplingOptions(SKFilterMode.Nearest), paint);
        return soft;
    }

    private void Speckle(SKBitmap bitmap, int seed)
    {
        if (Noise <= 0)
            return;
        var chance = new Random(seed);
        var dots = bitmap.GetPixelSpan();
        for (var i = 0; i < dots.Length; i += 4)
        {
            // Near enough to a bell curve: the sum of four.
            var off = (chance.NextDouble() + chance.NextDouble() + chance.NextDouble() + chance.NextDouble() - 2) * 1.73 * Noise;
            for (var c = 0; c < 3; c++)
                dots[i + c] = (byte)Math.Clamp(dots[i + c] + off, 0, 255);
        }
    }
}
