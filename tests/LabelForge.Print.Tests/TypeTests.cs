using LabelForge.Measures;
using LabelForge.Print.Lettering;
using SkiaSharp;

namespace LabelForge.Print.Tests;

public class TypeTests
{
    // Shares of the em, from the font file's own OS/2 table (sxHeight 506, sCapHeight 700 of 1000); the round letter o
    // overshoots the flat x by a little at top and bottom.
    [Fact]
    public void Letters_are_measured_from_their_outlines_and_agree_with_the_fonts_own_table()
    {
        var face = BundledFaces.Regular;
        Assert.Equal(0.506, face.InkHeight('x'), 0.003);
        Assert.InRange(face.SmallLetterHeight, 0.506, 0.506 * 1.06);
        Assert.Equal(0.700, face.CapitalHeight, 0.003);
    }

    [Theory]
    [InlineData("Net Wt 4 oz (113 g)")]
    [InlineData("INGREDIENTS")]
    [InlineData("NET WT 113 G")]
    [InlineData("mineral oil")]
    public void The_letter_that_the_law_measures_is_never_lower_than_asked_for(string text)
    {
        foreach (var floor in new[] { 1m / 32, 1m / 16, 1m / 8, 3m / 16 }.Select(Length.FromInches))
        {
            var measured = MeasuredText.WithLetterHeight(BundledFaces.Regular, text, floor).LetterHeight;
            Assert.InRange(measured.Millimetres, floor.Millimetres - 0.0001m, floor.Millimetres + 0.002m);
        }
    }

    [Fact]
    public void Capitals_need_smaller_type_than_mixed_case_for_the_same_legal_height()
    {
        var face = BundledFaces.Regular;
        var height = Length.FromInches(1m / 16);
        Assert.True(face.SizeFor("NET", height) < face.SizeFor("Net", height));
    }

    [Theory] // 21 CFR 701.13(h)(1): no letter more than three times as high as wide; i, l, I, 1 and punctuation are narrow in any type.
    [InlineData("regular")]
    [InlineData("medium")]
    [InlineData("semibold")]
    [InlineData("bold")]
    public void Letters_are_no_more_than_three_times_as_high_as_wide(string weight)
    {
        var face = BundledFaces.Named(weight)!;
        foreach (var letter in "abcdeghmnopqsuvwxyzABCDEFGHKLMNOPQRSTUVWXYZ023456789")
            Assert.True(face.InkHeight(letter) <= 3 * face.Shape(letter.ToString()).Width, $"{letter} in {weight}");
    }

    [Fact]
    public void Kerning_brings_A_and_V_together()
    {
        var face = BundledFaces.Regular;
        Assert.True(face.Shape("AV").Width < face.Shape("A").Width + face.Shape("V").Width - 0.005);
    }

    [Theory]
    [InlineData("石鹸", "U+77F3")]
    [InlineData("soap 🧼", "U+1F9FC")]
    public void A_letter_that_the_type_lacks_is_refused_by_name_rather_than_printed_as_a_box(string text, string code) =>
        Assert.Contains(code, Assert.Throws<InputException>(() => BundledFaces.Regular.Shape(text)).Message);

    [Fact] // A font read from memory that may move lost its letters at random.
    public void A_face_keeps_its_letters_while_memory_is_tidied()
    {
        var face = TypeFace.FromFile("test", Print.Templates.Bytes("fonts/BarlowCondensed-Regular.ttf"));
        var others = new List<byte[]>();
        for (var round = 0; round < 20; round++)
        {
            GC.Collect(2, GCCollectionMode.Forced, blocking: true, compacting: true);
            // Arrays as large as the font file take the room that was set free, and overwrite it.
            others.AddRange(Enumerable.Range(0, 20).Select(_ => Enumerable.Repeat((byte)0xFF, 98_000).ToArray()));
            Assert.Equal(6, face.Shape($"7MQ4-{(char)('A' + round)}").Glyphs.Length);
        }
        GC.KeepAlive(others);
    }

    [Fact]
    public void Letters_of_French_and_Polish_are_there() =>
        Assert.Equal(35, BundledFaces.Regular.Shape("àâæçéèêëîïôœùûüÿ ąćęłńóśźż ÉÈÀÇŁŻŹ « »"[..35]).Glyphs.Length);

    [Theory] // The same curves as the engine draws on paper, said again in fewer characters: their ink is the same to a quarter unit.
    [InlineData("BarlowCondensed-Regular")]
    [InlineData("Alegreya-Medium")]
    [InlineData("DMSerifDisplay-Regular")]
    [InlineData("CaveatBrush-Regular")]
    public void Letters_of_an_svg_are_the_outlines_that_are_printed(string file)
    {
        var face = BundledFaces.OfFile(file);
        using var font = new SKFont(face.Typeface, face.UnitsPerEm)
        {
            Hinting = SKFontHinting.None,
            Subpixel = true,
            LinearMetrics = true,
        };
        foreach (var letter in "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789&%@éßø½")
        {
            var glyph = font.GetGlyph(letter);
            using var printed = font.GetGlyphPath(glyph);
            using var drawn = SKPath.ParseSvgPathData(face.Outline(glyph)!.At(100));
            Assert.Equal(printed.PointCount, drawn.PointCount);
            Assert.All(printed.Points.Zip(drawn.Points), p =>
            {
                Assert.Equal(p.First.X + 100, p.Second.X, 0.26f);
                Assert.Equal(p.First.Y, p.Second.Y, 0.26f);
            });
        }
        Assert.Null(face.Outline(font.GetGlyph(' ')));
    }
}
