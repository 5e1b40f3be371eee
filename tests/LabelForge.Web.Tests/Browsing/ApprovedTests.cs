using SkiaSharp;

namespace LabelForge.Web.Tests.Browsing;

/// <summary>The comparison of pictures sees what a person would see, and nothing less.</summary>
public sealed class ApprovedTests
{
    private const string Name = "workshop-wide";

    [Fact]
    public void A_page_compared_with_itself_is_as_approved() => Assert.Null(Approved.Differs(Name, Changed((_, _) => { })));

    [Fact]
    public void A_button_in_another_colour_is_seen() =>
        Assert.NotNull(Approved.Differs(Name, Changed((canvas, paint) => canvas.DrawRect(500, 300, 160, 44, paint))));

    [Fact]
    public void A_line_of_text_that_is_missing_is_seen() =>
        Assert.NotNull(Approved.Differs(Name,
            Changed((canvas, paint) => canvas.DrawRect(220, 100, 700, 60, new SKPaint { Color = SKColors.White }))));

    private static byte[] Changed(Action<SKCanvas, SKPaint> change)
    {
        using var bitmap = SKBitmap.Decode(Path.Combine(Approved.Folder, Name + ".png"));
        using var canvas = new SKCanvas(bitmap);
        using var paint = new SKPaint { Color = SKColors.DarkOrange };
        change(canvas, paint);
        canvas.Flush();
        return bitmap.Encode(SKEncodedImageFormat.Png, 100).ToArray();
    }
}
