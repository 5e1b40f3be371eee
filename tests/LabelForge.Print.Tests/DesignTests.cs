using System.Collections.Immutable;
using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Fitting;
using LabelForge.Print.Output;
using LabelForge.Print.Sheets;
using SkiaSharp;

namespace LabelForge.Print.Tests;

public class DesignTests
{
    private const int Dpi = 150;
    private const int MostDifference = 8;
    private const double MostPixels = 0.0005;

    public static TheoryData<string> Looks =>
    [
        .. LabelDesign.Known,
        .. new[] { "bar-2x4", "tin-lid-2in" }
            .SelectMany(d => DesignStyle.Known.SelectMany(s => new[] { $"{d}+{s}+light", $"{d}+{s}+dark" })),
    ];

    // One pair of types light and another dark: what the rest do is measured, and seen on arranged fronts.
    public static TheoryData<string> Pictures => [.. LabelDesign.Known, "bar-2x4+bookish+dark", "tin-lid-2in+round+light"];

    /// <summary>Every design with invented words, drawn and held against a picture that a person approved.</summary>
    [Theory, MemberData(nameof(Pictures))]
    public void A_design_looks_as_approved(string id)
    {
        var approved = Path.Combine(Folder(), id + ".png");
        var received = Path.Combine(Folder(), id + ".received.png");
        using (var file = File.Create(received))
            LabelFile.WritePng(file, Draw(id), Dpi);
        Assert.True(File.Exists(approved), $"{received} waits for a person's yes: look at it, and rename it to {id}.png.");
        using var was = SKBitmap.Decode(approved);
        using var now = SKBitmap.Decode(received);
        Assert.Equal((was.Width, was.Height), (now.Width, now.Height));
        var (before, after, different) = (was.Pixels, now.Pixels, 0);
        for (var i = 0; i < before.Length; i++)
            different += Differs(before[i], after[i]) ? 1 : 0;
        Assert.True(different <= MostPixels * was.Width * was.Height, $"{different} pixels of {id} differ; look at {received}.");
        File.Delete(received);
    }

    [Theory, MemberData(nameof(Looks))]
    public void Every_design_keeps_the_rules_it_is_measured_against(string id)
    {
        var layout = Draw(id);
        Assert.All(layout.Constraints, c => Assert.True(c.Kept, $"{id}: {c.Broken.Wrong}"));
        Assert.All(layout.Texts, t => Assert.True(t.Source.Length > 0));
    }

    [Theory, MemberData(nameof(Looks))]
    public void Every_design_fits_a_stock_that_ships(string id)
    {
        var design = LabelDesign.Load(id);
        Assert.Contains(LabelStock.All,
            s => (s.Shape == StockShape.Round) == design.Round
                && s.LabelWidth.CompareTo(design.Width) >= 0
                && s.LabelHeight.CompareTo(design.Height) >= 0);
    }

    [Fact] // WCAG 2.2, contrast ratio: black on white is 21, #777777 on white 4.48.
    public void Contrast_is_that_of_WCAG()
    {
        Assert.Equal(21, Colour.Contrast(Colour.Black, Colour.White), 0.001);
        Assert.Equal(4.48, Colour.Contrast(Colour.Parse("#777777")!.Value, Colour.White), 0.005);
    }

    [Fact]
    public void A_band_is_as_long_as_its_bar_is_round()
    {
        var bar = Quantities.Package.Parse("bar", "3x2x1.5 in").Value!;
        Assert.Equal(2 * 50.8m + 2 * 38.1m + 10m, LabelDesign.Load("bar-band", bar).Width.Millimetres);
        Assert.Contains("for a box",
            Assert.Throws<Measures.InputException>(() => LabelDesign.Load("bar-band",
                Quantities.Package.Parse("jar", "3x2 in").Value)).Message);
    }

    private static LabelLayout Draw(string id)
    {
        var content = Samples.Bar with
        {
            Directions = "Work up a lather with water, then rinse.",
            Warnings = ["For external use only. Keep out of eyes."],
            PeriodAfterOpening = "12M",
            BestBefore = "Best used before the end of 05/2028",
            Origin = "Made in Ruritania",
            CartonCount = "24 pieces",
        };
        if (id.StartsWith("dip-", StringComparison.Ordinal)
            || id.StartsWith("lip-", StringComparison.Ordinal)
            || id.StartsWith("tin-", StringComparison.Ordinal) || id == "bar-back-1x2.625")
            content = content with
            {
                Ingredients = content.Ingredients[..7],
                Warnings = ["Stop using it if skin is irritated."],
                Floors = Samples.Floors(Samples.ThirtySecond),
            };
        if (id == "bar-back-1x2.625")
            content = content with { Ingredients = content.Ingredients[..5] };
        var wide = Samples.Block(80m, 13m, "(01)09521321000018(10)7MQ4-K");
        var extras = new LabelExtras(ImmutableDictionary<Role, InkBlock>.Empty.Add(Role.LotBarcode, wide).Add(Role.DateBarcode, wide),
            LabelExtras.None.Art);
        return LabelFitter.Fit(LabelDesign.Load(id), content, Samples.Block(), extras).OrRefuse();
    }

    private static bool Differs(SKColor a, SKColor b) =>
        Math.Abs(a.Red - b.Red) > MostDifference
            || Math.Abs(a.Green - b.Green) > MostDifference
            || Math.Abs(a.Blue - b.Blue) > MostDifference;

    private static string Folder()
    {
        var at = new DirectoryInfo(AppContext.BaseDirectory);
        while (at is not null && !File.Exists(Path.Combine(at.FullName, "LabelForge.sln")))
            at = at.Parent;
        return Path.Combine(at!.FullName, "tests", "approved");
    }
}
