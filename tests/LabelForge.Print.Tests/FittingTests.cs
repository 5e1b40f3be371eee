using CsCheck;
using LabelForge.Measures;
using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Fitting;

namespace LabelForge.Print.Tests;

public class FittingTests
{
    private static readonly LabelDesign Bar = LabelDesign.Load("bar-2x4");

    public static TheoryData<string> Designs => [.. LabelDesign.Known];

    [Fact]
    public void An_everyday_bar_fits_with_its_barcode_and_nothing_is_left_out()
    {
        var layout = LabelFitter.Fit(Bar, Samples.Bar, Samples.Block()).OrRefuse();
        Assert.Empty(layout.LeftOut);
        Assert.Contains("Butyrospermum Parkii (Shea) Butter, ", layout.Texts.Single(t => t.Role == Role.Ingredients).Text);
    }

    [Theory, MemberData(nameof(Designs))]
    public void No_letter_falls_below_its_floor_and_nothing_leaves_the_label_however_long_the_list(string id) =>
        Gen.Int[1, 40].Sample(count =>
        {
            var names = Enumerable.Range(0, count).Select(i => Samples.Bar.Ingredients[i % Samples.Bar.Ingredients.Length]);
            var fit = LabelFitter.Fit(LabelDesign.Load(id), Samples.Bar with { Ingredients = [.. names] }, Samples.Block());
            if (fit is Fit.DoesNotFit not)
            {
                Assert.True(not.Excess.Millimetres > 0);
                Assert.True(count > 3, not.Wrong);
                return;
            }
            var layout = fit.OrRefuse();
            Assert.All(layout.Texts, t => Assert.True(t.LetterHeight.Millimetres >= t.RequiredFloor.Millimetres - 0.0001m, t.ToString()));
            Assert.All(layout.Texts, t => Assert.True(Inside(t, layout), t.ToString()));
            Assert.All(Pairs(layout.Texts), p => Assert.False(Overlap(p.Item1, p.Item2), $"{p.Item1} {p.Item2}"));
        }, iter: 40, threads: 1);

    [Fact]
    public void Text_that_cannot_fit_is_refused_with_the_room_that_is_missing_and_what_to_do()
    {
        var content = Samples.Bar with { Ingredients = [.. Enumerable.Repeat(Samples.Bar.Ingredients, 3).SelectMany(i => i)] };
        var not = Assert.IsType<Fit.DoesNotFit>(LabelFitter.Fit(Bar, content));
        Assert.Equal("back", not.Panel);
        Assert.InRange(not.Excess.Millimetres, 10m, 80m);
        Assert.Contains("ingredients", not.Wrong);
        Assert.Contains("larger label", not.Write);
    }

    [Fact]
    public void A_word_wider_than_its_panel_is_refused_by_its_role()
    {
        var not = Assert.IsType<Fit.DoesNotFit>(LabelFitter.Fit(Bar, Samples.Bar with { ProductName = new string('W', 40) }));
        Assert.Equal(Role.Name, not.Role);
    }

    [Fact]
    public void A_barcode_without_room_is_left_out_and_said_so()
    {
        var layout = LabelFitter.Fit(LabelDesign.Load("bar-back-1x2.625"),
            Samples.Bar with { Floors = Samples.Floors(Samples.ThirtySecond) }, Samples.Block(60m, 15m)).OrRefuse();
        Assert.Contains(layout.LeftOut, l => l.StartsWith("The barcode", StringComparison.Ordinal));
        Assert.DoesNotContain(layout.Bars, b => b.Height > 20);
    }

    [Fact]
    public void What_a_design_has_no_place_for_is_reported()
    {
        var layout = LabelFitter.Fit(LabelDesign.Load("bar-back-1x2.625"),
            Samples.Bar with { Floors = Samples.Floors(Samples.ThirtySecond), Directions = "Lather." }).OrRefuse();
        Assert.Contains(layout.LeftOut, l => l.Contains("directions", StringComparison.Ordinal));
    }

    [Fact] // 21 CFR 701.13(f): at least the height of its lettering above and below.
    public void The_net_quantity_has_clear_space_above_it()
    {
        var layout = LabelFitter.Fit(Bar, Samples.Bar with { Identity = "A very long statement of identity that needs two lines" })
            .OrRefuse();
        var net = layout.Texts.Single(t => t.Role == Role.NetQuantity);
        var above = layout.Texts.Where(t => t != net && t.X.Millimetres < Bar.Panels.Single(p => p.Principal).Width.Millimetres)
            .Max(t => t.Y.Millimetres + t.Height.Millimetres);
        Assert.True(net.Y.Millimetres - above >= net.LetterHeight.Millimetres);
    }

    [Fact] // 21 CFR 701.13(f): within the bottom 30 % where the panel is larger than 5 sq in.
    public void A_net_quantity_at_the_top_of_a_large_panel_is_refused_and_of_a_small_one_not()
    {
        Assert.IsType<Fit.DoesNotFit>(LabelFitter.Fit(OnePanel("3 in", "top"), Samples.Bar));
        Assert.IsType<Fit.Fits>(LabelFitter.Fit(OnePanel("3 in", "bottom"), Samples.Bar));
        Assert.IsType<Fit.Fits>(LabelFitter.Fit(OnePanel("2 in", "top"), Samples.Bar));
    }

    [Theory]
    [InlineData("role: nmae", "line 5")]
    [InlineData("role: name, most: 3", "line 5")]
    [InlineData("role: name, least: 3 mm, most: 2 mm", "line 5")]
    [InlineData("role: name, sise: 2 mm", "\"sise\"")]
    public void A_design_that_cannot_be_used_is_refused_at_its_line(string element, string told)
    {
        var path = Path.GetTempFileName();
        File.WriteAllText(path,
            $"name: Mine\nwidth: 2 in\nheight: 2 in\npanels:\n  front: {{ width: 2 in, height: 2 in, elements: [{{ {element} }}] }}\n");
        Assert.Contains(told, Assert.Throws<InputException>(() => LabelDesign.LoadFile(path, "mine.yaml")).Message);
        File.Delete(path);
    }

    private static LabelDesign OnePanel(string side, string place)
    {
        var path = Path.GetTempFileName();
        File.WriteAllText(path,
            $"name: Mine\nwidth: {side}\nheight: {side}\npanels:\n  front:\n    width: {side}\n    height: {side}\n    padding: 3 mm\n    "
                + $"elements:\n      - {{ role: net-quantity, place: {place} }}\n");
        var design = LabelDesign.LoadFile(path, "mine.yaml");
        File.Delete(path);
        return design;
    }

    private static bool Inside(PlacedText t, LabelLayout l) =>
        t.X.Millimetres + t.Width.Millimetres <= l.Design.Width.Millimetres
            && t.Y.Millimetres + t.Height.Millimetres <= l.Design.Height.Millimetres;

    private static IEnumerable<(PlacedText, PlacedText)> Pairs(IEnumerable<PlacedText> texts) =>
        texts.SelectMany((a, i) => texts.Skip(i + 1).Select(b => (a, b)));

    private static bool Overlap(PlacedText a, PlacedText b) =>
        a.X.Millimetres < b.X.Millimetres + b.Width.Millimetres && b.X.Millimetres < a.X.Millimetres + a.Width.Millimetres
        && a.Y.Millimetres < b.Y.Millimetres + b.Height.Millimetres && b.Y.Millimetres < a.Y.Millimetres + a.Height.Millimetres;
}
