using LabelForge.Print.Drawing;
using LabelForge.Print.Lettering;
using SkiaSharp;

namespace LabelForge.Print.Scans;

/// <summary>Brightness on a grid of points, so many to the millimetre; 0 black to 255 white.</summary>
internal sealed class GreyField(int width, int height, float[] values, double perMillimetre)
{
    public int Width => width;

    public int Height => height;

    /// <summary>Points to the millimetre.</summary>
    public double PerMillimetre => perMillimetre;

    public float this[int x, int y] => values[y * width + x];

    /// <summary>A point, white around the field.</summary>
    public float Around(int x, int y) => x >= 0 && y >= 0 && x < width && y < height ? values[y * width + x] : 255;

    /// <summary>A label as it is drawn, on white.</summary>
    public static GreyField Of(LabelLayout label, double perMillimetre)
    {
        var (wide, high) = ((int)Math.Ceiling((double)label.Design.Width.Millimetres * perMillimetre),
            (int)Math.Ceiling((double)label.Design.Height.Millimetres * perMillimetre));
        using var bitmap = new SKBitmap(new SKImageInfo(wide, high, SKColorType.Rgba8888, SKAlphaType.Premul));
        using (var canvas = new SKCanvas(bitmap))
        {
            canvas.Clear(SKColors.White);
            canvas.Scale((float)(perMillimetre / Points.OfMillimetres(1m)));
            LabelPainter.Paint(canvas, label, 0, 0);
        }
        var picture = ScannedPicture.Of(bitmap, null);
        return new GreyField(wide, high, Array.ConvertAll(picture.Grey, g => (float)g), perMillimetre);
    }

    /// <summary>A picture coarser, each point the mean of the dots under it.</summary>
    public static GreyField Of(ScannedPicture picture, double perMillimetre, double dotsPerMillimetre)
    {
        var step = Math.Max(1, dotsPerMillimetre / perMillimetre);
        var (wide, high) = ((int)(picture.Width / step), (int)(picture.Height / step));
        var values = new float[wide * high];
        Parallel.For(0, high, y =>
        {
            var (top, bottom) = ((int)(y * step), Math.Max((int)(y * step) + 1, (int)((y + 1) * step)));
            for (var x = 0; x < wide; x++)
            {
                var (left, right) = ((int)(x * step), Math.Max((int)(x * step) + 1, (int)((x + 1) * step)));
                long sum = 0;
                for (var row = top; row < bottom; row++)
                {
                    for (var column = left; column < right; column++)
                        sum += picture.Grey[row * picture.Width + column];
                }
                values[y * wide + x] = (float)sum / ((bottom - top) * (right - left));
            }
        });
        return new GreyField(wide, high, values, dotsPerMillimetre / step);
    }

    /// <summary>Each point the mean of itself and its eight neighbours.</summary>
    public GreyField Softened()
    {
        var soft = new float[values.Length];
        for (var y = 0; y < height; y++)
        {
            for (var x = 0; x < width; x++)
            {
                float sum = 0;
                for (var dy = -1; dy <= 1; dy++)
                {
                    for (var dx = -1; dx <= 1; dx++)
                        sum += values[Math.Clamp(y + dy, 0, height - 1) * width + Math.Clamp(x + dx, 0, width - 1)];
                }
                soft[y * width + x] = sum / 9;
            }
        }
        return new GreyField(width, height, soft, perMillimetre);
    }

    /// <summary>The brightness between points, and how it changes; null at the rim and outside.</summary>
    public (double Value, double AlongX, double AlongY)? At(double x, double y)
    {
        (x, y) = (x - 0.5, y - 0.5);
        var (left, top) = ((int)Math.Floor(x), (int)Math.Floor(y));
        if (left < 0 || top < 0 || left + 1 >= width || top + 1 >= height)
            return null;
        var (dx, dy, at) = (x - left, y - top, top * width + left);
        var (a, b, c, d) = (values[at], values[at + 1], values[at + width], values[at + width + 1]);
        return ((a * (1 - dx) + b * dx) * (1 - dy) + (c * (1 - dx) + d * dx) * dy, (b - a) * (1 - dy) + (d - c) * dy,
            (c - a) * (1 - dx) + (d - b) * dx);
    }
}
