using System.Collections.Concurrent;
using System.Collections.Immutable;
using CsCheck;
using LabelForge.Declarations;
using LabelForge.Markets;
using LabelForge.Measures;
using LabelForge.Print.Arrangements;
using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Fitting;
using LabelForge.Print.Lettering;
using LabelForge.Print.Ornaments;
using LabelForge.Print.Output;
using LabelForge.Print.Palettes;
using LabelForge.Print.Proofs;
using SkiaSharp;

namespace LabelForge.Print.Tests.Looks;

/// <summary>What holds for any look, whatever is drawn by chance: contrast, clear space, which words are largest, whole lines, ink.
/// Everything is measured anew here from the letters drawn.</summary>
public class RandomLooksTests
{
    private const int Looks = 60;

    private static readonly string[] Shapes = ["bar-front-2x2", "bar-2x4", "front-round-2in", "tin-lid-2in", "bottle-front-2x2.625",
        "hang-tag-fold", "bar-band", "jar-lid-2.5in", "bag-seal-fold", "jar-side-1.25x8in", "bottle-wrap-3.333x4",
        "front-oval-40x60mm"];

    private static readonly string[] Names = ["Io", "Hayloft", "Bramble & Shea", "Peach Morning", "Elderflower, Salt & Wild Honey"];

    private static readonly string?[] Lines = [null, "kelp, lime", "blackberry, fig leaf"];

    private static readonly Gen<LabelLayout> Any = Gen.Select(Gen.Int[0, 7], Gen.Int[0, Shapes.Length - 1], Gen.Int[0, 7],
        Gen.Int[0, 30], Gen.Select(Gen.Double[0, 360], Gen.Double[0, 1.3]), Gen.Int[-16, 7],
        Gen.Select(Gen.Int[0, Names.Length - 1], Gen.Int[0, Lines.Length - 1]))
        .Select((arrangement, shape, types, ornament, colour, frame, words) =>
        {
            var look = FrontTests.Of(ArrangementFile.Known[arrangement], DesignStyle.Known[types], OrnamentFamily.All[ornament],
                frame < 0 ? null : FrameFamily.All[frame], 0) with
            { Palette = Palette.Of(colour.Item1, colour.Item2) };
            LabelContent content = FrontTests.Usual(Market.Us) with
            {
                ProductName = Names[words.Item1],
                ScentLine = Lines[words.Item2],
                Directions = "Work up a lather with water, then rinse.",
            };
            return LabelFitter.Fit(LabelDesign.Load(Shapes[shape]).In(look), content, Samples.Block());
        })
        .Where(f => f is Fit.Fits).Select(f => ((Fit.Fits)f).Layout);

    // Drawn once by chance, looked at by all.
    private static readonly Lazy<ImmutableArray<LabelLayout>> Drawn = new(() =>
    {
        var labels = new ConcurrentBag<LabelLayout>();
        Any.Sample(labels.Add, iter: Looks);
        return [.. labels];
    });

    // WCAG 2.2, relative luminance and contrast ratio, written down again.
    private static double Contrast(Colour one, Colour other)
    {
        static double Channel(byte value) => value / 255.0 is var v && v <= 0.04045 ? v / 12.92 : Math.Pow((v + 0.055) / 1.055, 2.4);
        static double Light(Colour c) => 0.2126 * Channel(c.Red) + 0.7152 * Channel(c.Green) + 0.0722 * Channel(c.Blue);
        var (a, b) = (Light(one), Light(other));
        return (Math.Max(a, b) + 0.05) / (Math.Min(a, b) + 0.05);
    }

    private static SKRect BoxOf(PlacedLine line) => line.Upright || line.Radius != 0 || line.Turned
        ? SKRect.Empty
        : new SKRect((float)line.X, (float)(line.Y - line.Text.Shape.Top * line.Text.Size), (float)(line.X + line.Text.Width),
            (float)(line.Y + line.Text.Shape.Bottom * line.Text.Size));

    // What a rule refuses is set plainly; a look that nearly always is proves nothing.
    [Fact]
    public void Nearly_every_look_has_room_and_keeps_the_rules() =>
        Assert.True(Drawn.Value.Count(l => l.Design.Look is not null) >= 0.9 * Looks);

    [Fact]
    public void What_must_be_read_stands_out_7_to_1_and_all_else_4_and_a_half() => Assert.All(Drawn.Value, label =>
    {
        foreach (var line in label.Lines)
        {
            var least = line.Role is Role.NetQuantity or Role.Identity or Role.Ingredients or Role.Warnings or Role.Responsible ? 7 : 4.5;
            var contrast = Contrast(line.Ink ?? label.Design.Ink, line.Ground ?? label.Design.Ground);
            Assert.True(contrast >= least, $"{line.Text.Text}: {contrast:0.00} in {Told(label)}");
        }
    });

    // 21 CFR 701.13(e)(2): as much above and below as the letters are high, and two widths of its N at each side.
    [Fact]
    public void Nothing_stands_in_the_clear_space_of_the_net_quantity() => Assert.All(Drawn.Value, label =>
    {
        foreach (var net in label.Lines.Where(l => l.Role == Role.NetQuantity))
        {
            var box = BoxOf(net);
            var n = (float)(net.Text.Face.WidthOfN * net.Text.Size);
            var high = (float)Points.Of(label.Texts.Single(t => t.Role == Role.NetQuantity).LetterHeight);
            box.Inflate(2 * n - 0.1f, high - 0.1f);
            Assert.All(label.Lines.Where(l => l.Role != Role.NetQuantity),
                l => Assert.False(box.IntersectsWith(BoxOf(l)), $"{l.Text.Text} is too near in {Told(label)}"));
        }
    });

    [Fact]
    public void The_name_is_the_largest_and_the_business_no_larger_than_what_it_is() => Assert.All(Drawn.Value, label =>
    {
        decimal? Height(Role role) => label.Texts.FirstOrDefault(t => t.Role == role)?.LetterHeight.Millimetres;
        var name = Height(Role.Name)!.Value;
        Assert.All(label.Texts, t => Assert.True(t.LetterHeight.Millimetres <= name + 0.001m, $"{t.Role} is larger in {Told(label)}"));
        Assert.True(Height(Role.Business) is not { } business || business <= Height(Role.Identity) + 0.001m, Told(label));
    });

    [Fact] // Murray and Davies: what is not reflected is inked. Held against the picture file, counted here.
    public void The_ink_that_is_told_is_what_the_picture_shows() => Assert.All(Drawn.Value.Take(Looks / 4), label =>
    {
        using var file = new MemoryStream();
        LabelFile.WritePng(file, label, 150);
        using var picture = SKBitmap.Decode(file.ToArray());
        static double Inked(byte v) => 1 - (v / 255.0 is var s && s <= 0.04045 ? s / 12.92 : Math.Pow((s + 0.055) / 1.055, 2.4));
        var inked = Enumerable.Range(0, 256).Select(v => Inked((byte)v)).ToArray();
        // Of three inks in equal parts, one black takes the place.
        var seen = picture.Pixels.Sum(p => inked[p.Red] + inked[p.Green] + inked[p.Blue]
            - 2 * Math.Min(inked[p.Red], Math.Min(inked[p.Green], inked[p.Blue])));
        var percent = 100 * seen / picture.Pixels.Length / (label.Design.Round ? Math.PI / 4 : 1);
        var told = InkCoverage.Of(label).Percent;
        Assert.True(Math.Abs(told - percent) < 2.5, $"{told:0.0} and {percent:0.0} in {Told(label)}");
        Assert.True(told < 140, $"{told:0.0} percent is more than any of the boards takes: {Told(label)}");
    });

    private static string Told(LabelLayout label) => $"{label.Design.Id}, {label.Design.Look?.Arrangement}, {label.Design.Look?.Types}, "
        + label.Texts.First(t => t.Role == Role.Name).Text;
}
