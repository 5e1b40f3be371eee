using LabelForge.Markets;
using LabelForge.Print.Arrangements;
using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Fitting;
using LabelForge.Print.Ornaments;
using LabelForge.Print.Output;
using LabelForge.Print.Sheets;
using SkiaSharp;

namespace LabelForge.Print.Tests.Looks;

/// <summary>An arranged label in PDF, SVG and PNG.</summary>
public sealed class LookOutputTests : IDisposable
{
    private const int Dpi = 110;

    private readonly string folder = Directory.CreateTempSubdirectory("labelforge-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    public static TheoryData<string, string, string, string, string> Sample =>
    [
        ("bar-front-2x2", "stack", "bookish", "sprig", "none"), ("bar-front-2x2", "ranged-left", "round", "meadow", "none"),
        ("bar-front-2x2", "colour-block", "bookish", "moss", "none"), ("bar-front-2x2", "medallion", "soft", "spikes", "none"),
        ("bar-front-2x2", "split", "stylish", "slices", "none"), ("bar-front-2x2", "upright", "capitals", "tide", "none"),
        ("bar-front-2x2", "plaque", "brush", "dahlia", "none"), ("bar-front-2x2", "banner", "deco", "stars", "none"),
        ("bar-front-2x2", "stack", "soft", "fern", "garland"), ("front-round-2in", "medallion", "bookish", "umbels", "none"),
        ("front-round-2in", "colour-block", "round", "rain", "none"), ("front-round-2in", "stack", "bookish", "rays", "rope"),
        ("bag-seal-fold", "medallion", "bookish", "pebbles", "none"), ("lip-tube-wrap", "split", "round", "comb", "none"),
        ("bar-2x4", "colour-block", "capitals", "smoke", "none"), ("bottle-wrap-3.333x4", "plaque", "bookish", "sprig", "none"),
        ("bottle-wrap-3.333x4", "stack", "stylish", "hills", "none"), ("front-oval-40x60mm", "medallion", "soft", "leaves", "none"),
    ];

    [Theory, MemberData(nameof(Sample))]
    public void A_look_is_drawn_as_approved(string design, string arrangement, string types, string ornament, string frame)
    {
        var id = $"look-{design}-{arrangement}-{ornament}-{frame}";
        var approved = Path.Combine(Approved(), id + ".png");
        var received = Path.Combine(Approved(), id + ".received.png");
        using (var file = File.Create(received))
            LabelFile.WritePng(file, Layout(design, arrangement, types, ornament, frame), Dpi);
        Assert.True(File.Exists(approved), $"{received} waits for a person's yes: look at it, and rename it to {id}.png.");
        Assert.True(Different(approved, received, 24) <= 0.002, $"{id} differs; look at {received}.");
        File.Delete(received);
    }

    [Fact]
    public void PDF_and_PNG_show_the_same()
    {
        InstalledProgram.OrSkip("pdftoppm");
        var layout = Layout("front-round-2in", "medallion", "bookish", "umbels", "braid");
        var (pdf, png) = (Path.Combine(folder, "a.pdf"), Path.Combine(folder, "a.png"));
        LabelFile.Write(pdf, layout, Samples.Info);
        LabelFile.Write(png, layout, Samples.Info, 150);
        Poppler.Run("pdftoppm", "-r", "150", "-png", "-singlefile", pdf, Path.Combine(folder, "b"));
        // Two programs smooth edges each in its own way: what counts is what is far off.
        Assert.True(Different(png, Path.Combine(folder, "b.png"), 110) < 0.012);
    }

    [Fact]
    public void SVG_clips_and_names_its_words()
    {
        var svg = Path.Combine(folder, "a.svg");
        LabelFile.Write(svg, Layout("front-round-2in", "medallion", "bookish", "umbels", "none"), Samples.Info);
        var text = File.ReadAllText(svg);
        Assert.Contains("<clipPath id=\"c0\">", text);
        Assert.Contains("clip-path=\"url(#c0)\"", text);
        Assert.Contains("aria-label=\"THISTLEPOND BENCH\"", text);
        Assert.DoesNotContain("NaN", text);
    }

    [Fact]
    public void A_thousand_labels_share_the_drawing()
    {
        long Size(int count)
        {
            var path = Path.Combine(folder, $"{count}.pdf");
            SheetWriter.WritePdf(path, Layout("bar-2x4", "colour-block", "bookish", "moss", "none"), LabelStock.Load("us-letter-10-2x4in"),
                Samples.Info, count: count);
            return new FileInfo(path).Length;
        }
        Assert.True(Size(1000) - Size(10) < 40_000, "Each label of a sheet is the one drawing, placed again.");
    }

    private static LabelLayout Layout(string design, string arrangement, string types, string ornament, string frame)
    {
        var look = FrontTests.Of(arrangement, types, OrnamentFamily.Named(ornament)!, FrameFamily.Named(frame),
            37 * OrnamentFamily.All.IndexOf(OrnamentFamily.Named(ornament)!) % 360);
        var layout = LabelFitter.Fit(LabelDesign.Load(design).In(look),
            FrontTests.Usual(Market.Us) with { Ingredients = [.. Samples.Bar.Ingredients.Take(4)] }, Samples.Block()).OrRefuse();
        Assert.Equal(arrangement, layout.Design.Look?.Arrangement);
        return layout;
    }

    private static double Different(string one, string other, int most)
    {
        using var a = SKBitmap.Decode(one);
        using var b = SKBitmap.Decode(other);
        Assert.True(Math.Abs(a.Width - b.Width) <= 1 && Math.Abs(a.Height - b.Height) <= 1,
            $"{a.Width} x {a.Height} and {b.Width} x {b.Height}");
        var (width, height) = (Math.Min(a.Width, b.Width), Math.Min(a.Height, b.Height));
        var (first, second, count) = (a.Pixels, b.Pixels, 0);
        for (var y = 0; y < height; y++)
            for (var x = 0; x < width; x++)
                count += Far(first[y * a.Width + x], second[y * b.Width + x], most) ? 1 : 0;
        return count / (double)(width * height);
    }

    private static bool Far(SKColor a, SKColor b, int most) =>
        Math.Abs(a.Red - b.Red) > most || Math.Abs(a.Green - b.Green) > most || Math.Abs(a.Blue - b.Blue) > most;

    private static string Approved([System.Runtime.CompilerServices.CallerFilePath] string here = "") =>
        Path.GetFullPath(Path.Combine(Path.GetDirectoryName(here)!, "..", "..", "approved"));
}
