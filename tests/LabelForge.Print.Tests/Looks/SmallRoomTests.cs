using LabelForge.Declarations;
using LabelForge.Markets;
using LabelForge.Print.Arrangements;
using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Fitting;
using LabelForge.Print.Lettering;
using LabelForge.Print.Ornaments;

namespace LabelForge.Print.Tests.Looks;

/// <summary>What gives way where there is little room, what fills it where there is much, and what is said of it.</summary>
public class SmallRoomTests
{
    private const double Rim = 1.9 * 72 / 25.4;

    // As a Code 128 of a lot: too wide for an edge, and for a strip.
    private static readonly InkBlock Wide = Samples.Block(40, 10);

    private static readonly LabelContent Balm = FrontTests.Usual(Market.Us) with
    {
        ProductName = "Salt Meadow",
        Identity = "Body balm",
        NetQuantity = "Net Wt 2 oz (56 g)",
        ScentLine = "sea lavender, samphire",
        Ingredients = ["Butyrospermum Parkii (Shea) Butter", "Cocos Nucifera (Coconut) Oil", "Fragrance"],
        Directions = "Warm between the palms and smooth over skin.",
        Warnings = ["For external use only."],
    };

    internal static readonly LabelContent Full = FrontTests.Usual(Market.Us) with
    {
        Directions = "Work up a lather with water, then rinse.",
        Warnings = ["For external use only. Keep out of eyes; rinse well if soap gets in them. Stop using it if skin becomes irritated."],
    };

    private static LabelLayout Layout(string design, string arrangement, LabelContent content, InkBlock? code = null) =>
        LabelFitter.Fit(LabelDesign.Load(design).In(FrontTests.Of(arrangement, "bookish", OrnamentFamily.All[0], null, 20)), content,
            code ?? Samples.Block()).OrRefuse();

    private static (double Left, double Top, double Width, double Height)[] Ornaments(LabelLayout label) =>
        [.. label.Drawings.Where(d => !d.IsGround && d.Clip is not null).Select(d => d.Box)];

    private static bool InPanel(LabelLayout label, string id, (double Left, double Top, double Width, double Height) box) =>
        label.Design.Panels.Single(p => p.Id == id) is var panel && box.Left >= Points.Of(panel.X) - 0.1
            && box.Left + box.Width <= Points.Of(panel.X) + Points.Of(panel.Width) + 0.1;

    [Theory]
    [InlineData("tin-lid-2in"), InlineData("jar-lid-2.5in"), InlineData("jar-lid-2in"), InlineData("front-round-2in")]
    public void An_upright_name_on_a_disc_stands_in_its_middle_and_inside_its_plate(string design)
    {
        foreach (var name in new[] { "Io", "Salt Meadow", "Peach Morning" })
        {
            var label = Layout(design, "upright", Balm with { ProductName = name });
            Assert.Equal("upright", label.Design.Look?.Arrangement);
            var box = label.Texts.Single(t => t.Role == Role.Name);
            var (left, top, high) = (Points.Of(box.X), Points.Of(box.Y), Points.Of(box.Height));
            var radius = Points.Of(label.Design.Width) / 2;
            Assert.Equal(radius, top + high / 2, 0.5);
            Assert.True(Math.Sqrt(Math.Pow(radius - left, 2) + Math.Pow(high / 2, 2)) < radius - Rim, $"{name} crosses its plate");
        }
    }

    [Fact]
    public void Beside_an_edge_that_bears_the_ornament_words_stand_and_no_window()
    {
        var label = Layout("bar-band", "split", Balm);
        var edge = label.Design.Panels.Single(p => p.Id == "edge");
        var window = Assert.Single(Ornaments(label), b => InPanel(label, "front", b));
        Assert.True(window.Left - Points.Of(edge.X) - Points.Of(edge.Width) > 20 * 72 / 25.4);
        Assert.All(label.Texts.Where(t => t.Role is Role.Name or Role.NetQuantity), t => Assert.True(Points.Of(t.X) < window.Left));
    }

    [Fact]
    public void A_code_wider_than_an_edge_stands_there_turned_and_beside_the_plate()
    {
        var label = Layout("bar-band", "stack", Full, Wide);
        Assert.Equal(Wide.Bars.Length, label.Bars.Length);
        Assert.All(label.Bars, b => Assert.True(b.Width > b.Height));
        Assert.DoesNotContain(label.LeftOut, l => l.Contains("barcode", StringComparison.Ordinal));
        var plate = label.Drawings.Where(d => d.IsGround && InPanel(label, "other edge", d.Box)).Select(d => d.Box).Single();
        Assert.All(label.Bars, b => Assert.True(b.X >= plate.Left + plate.Width));
    }

    [Fact]
    public void A_wide_code_that_would_leave_a_hole_beside_it_stands_turned_beside_the_words()
    {
        var label = Layout("bar-back-2x2.625", "stack", Full, Wide);
        Assert.Equal(Wide.Bars.Length, label.Bars.Length);
        Assert.All(label.Bars, b => Assert.True(b.Width > b.Height));
        Assert.All(label.Texts, t => Assert.True(Points.Of(t.X) + Points.Of(t.Width) < label.Bars.Min(b => b.X)));
    }

    [Fact]
    public void A_code_without_room_is_told_with_what_would_have_room()
    {
        var label = Layout("bar-2x4", "stack", Full, Wide);
        Assert.Empty(label.Bars);
        Assert.Contains(label.LeftOut,
            l => l.Contains("barcode", StringComparison.Ordinal) && l.Contains("Data Matrix", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("stack"), InlineData("split")]
    public void On_a_small_tin_the_line_of_scent_gives_way_to_the_ornament_and_that_is_told(string arrangement)
    {
        var label = Layout("dip-tin-lid-1.5in", arrangement, Balm);
        Assert.NotEmpty(Ornaments(label));
        Assert.DoesNotContain(label.Texts, t => t.Role == Role.ScentLine);
        Assert.Contains(label.LeftOut, l => l.Contains("line of scent", StringComparison.Ordinal));
        var roomy = Layout("tin-lid-2in", arrangement, Balm);
        Assert.Contains(roomy.Texts, t => t.Role == Role.ScentLine);
    }

    [Theory]
    [InlineData("jar-side-2x8"), InlineData("jar-side-1.25x8in")]
    public void A_very_short_list_has_the_ornament_below_it_and_no_hole(string design)
    {
        var label = Layout(design, "stack", Balm with { ScentLine = null, Directions = null });
        var band = Assert.Single(Ornaments(label), b => InPanel(label, "ingredients", b));
        Assert.True(band.Width > 4 * band.Height || band.Width > 50 * 72 / 25.4, "It goes across.");
        var panel = label.Design.Panels.Single(p => p.Id == "ingredients");
        Assert.Equal(Points.Of(panel.Height) - Points.Of(panel.Padding), band.Top + band.Height, 0.5);
        var foot = label.Lines.Where(l => l.Role is Role.Ingredients or Role.Directions).Max(l => l.Y);
        Assert.InRange(band.Top - foot, 2 * 72 / 25.4, 0.4 * Points.Of(panel.Height));
    }

    /// <summary>Words over the cut would be cut off: each corner of each line is inside a round label.</summary>
    internal static bool IsInsideTheCut(LabelLayout label)
    {
        var (across, down) = (Points.Of(label.Design.Width) / 2, Points.Of(label.Design.Height) / 2);
        bool Inside(double x, double y) => Math.Pow((x - across) / (across - 2), 2) + Math.Pow((y - down) / (down - 2), 2) <= 1;
        return !label.Design.Round || label.Design.Look is null || label.Lines.Where(l => l.Radius == 0 && !l.Upright).All(l =>
            Inside(l.X, l.Y) && Inside(l.X + l.Text.Width, l.Y)
            && Inside(l.X, l.Y - l.Text.Face.SmallLetterHeight * l.Text.Size)
            && Inside(l.X + l.Text.Width, l.Y - l.Text.Face.SmallLetterHeight * l.Text.Size));
    }
}
