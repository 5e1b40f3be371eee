using LabelForge.Declarations;
using LabelForge.Markets;
using LabelForge.Measures;
using LabelForge.Print.Arrangements;
using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Fitting;
using LabelForge.Print.Lettering;
using LabelForge.Print.Ornaments;

namespace LabelForge.Print.Tests.Looks;

/// <summary>What a buyer's eye stumbles over: uneven gaps, broken lines, names too small for their disc, empty edges.</summary>
public class EvenSettingTests
{
    // From a baseline to the top of what follows, in millimetres: by eye, half a millimetre is not seen at a glance.
    private const double Unseen = 0.3;

    private static readonly string[] Small = ["lip-tube-wrap", "dip-tin-lid-1.5in", "front-round-2in"];

    private static LabelLayout Layout(string design, string arrangement = "stack", string types = "bookish", int names = 30) =>
        LabelFitter.Fit(LabelDesign.Load(design).In(FrontTests.Of(arrangement, types, OrnamentFamily.All[0], null, 20)),
            FrontTests.Usual(Market.Us) with
            {
                Directions = "Work up a lather with water, then rinse.",
                Ingredients = [.. Samples.Bar.Ingredients.Take(names)],
            }, Samples.Block()).OrRefuse();

    private static IEnumerable<LabelLayout> OfSmallLabels() =>
        from small in Small
        let content = small == "lip-tube-wrap"
            ? FrontTests.LipBalm with { NetQuantity = "Net Wt 0.155 oz (4.55 g)" }
            : FrontTests.Usual(Market.Us)
        from arrangement in ArrangementFile.Known
        let look = FrontTests.Of(arrangement, "deco", OrnamentFamily.All[0], null, 20)
        let fits = LabelFitter.Fit(LabelDesign.Load(small).In(look), content) as Fit.Fits
        where fits is not null
        select fits.Layout;

    [Theory]
    [InlineData("bar-2x4"), InlineData("bar-57x99.1mm"), InlineData("bar-back-2x2.625"), InlineData("bottle-back-2x2.625")]
    [InlineData("bottle-wrap-3.333x4"), InlineData("hang-tag-fold"), InlineData("bar-bilingual-4x3")]
    public void The_parts_of_a_back_stand_evenly_and_warnings_clear_of_the_address(string design)
    {
        var label = Layout(design);
        double Gap(Role above, Role below)
        {
            var (end, begin) = (label.Lines.Last(l => l.Role == above), label.Lines.First(l => l.Role == below));
            var top = begin.Text.Face.CapitalHeight * begin.Text.Size;
            return (double)Points.ToLength(begin.Turned ? end.Y - (begin.Y + top) : begin.Y - top - end.Y).Millimetres;
        }
        var gaps = new[] { Gap(Role.Ingredients, Role.Directions), Gap(Role.Directions, Role.Warnings) };
        Assert.True(Math.Abs(gaps[0] - gaps[1]) < Unseen, $"{gaps[0]:0.00} and {gaps[1]:0.00} mm");
        var address = Gap(Role.Warnings, Role.Responsible);
        Assert.True(address > gaps.Average() - Unseen, $"{address:0.00} after {gaps[0]:0.00} mm");
    }

    [Fact]
    public void Letters_do_not_grow_into_the_air_between_the_parts_of_a_back()
    {
        var label = Layout("bottle-wrap-3.333x4", names: 15);
        var list = label.Lines.Where(l => l.Role == Role.Ingredients).Select(l => l.Y).Distinct().ToList();
        var line = list[1] - list[0];
        foreach (var (above, below) in new[] { (Role.Ingredients, Role.Directions), (Role.Directions, Role.Warnings) })
            Assert.True(label.Lines.First(l => l.Role == below).Y - label.Lines.Last(l => l.Role == above).Y > 1.25 * line, $"{below}");
    }

    [Fact]
    public void What_a_short_list_leaves_empty_is_filled_with_the_ornament_and_no_word_stands_in_it()
    {
        var label = Layout("bottle-back-2x2.625", names: 6);
        var band = Assert.Single(label.Drawings, d => !d.IsGround).Box;
        Assert.True(band.Height > 8 * 72 / 25.4);
        Assert.All(label.Texts,
            t => Assert.False(Points.Of(t.Y) < band.Top + band.Height && Points.Of(t.Y) + Points.Of(t.Height) > band.Top, t.Text));
    }

    [Fact]
    public void A_net_quantity_never_parts_a_figure_from_its_unit()
    {
        var lines = OfSmallLabels().SelectMany(l => l.Lines).Where(l => l.Role == Role.NetQuantity).Select(l => l.Text.Text).ToList();
        Assert.Contains("0.155 oz", lines);
        Assert.All(lines, l => Assert.False(char.IsAsciiDigit(l[^1]), l));
    }

    [Fact]
    public void The_name_of_a_business_is_not_broken_at_a_hyphen_where_another_arrangement_has_room() =>
        Assert.All(OfSmallLabels().SelectMany(l => l.Lines).Where(l => l.Role == Role.Business),
            l => Assert.False(l.Text.Text.EndsWith('-'), l.Text.Text));

    // Split sets its words in the middle's height: whole, the net quantity would leave the lowest 30 percent there.
    [Fact]
    public void A_round_front_keeps_its_net_quantity_on_one_line() => Assert.All(ArrangementFile.Known.Where(k => k != "split"), a =>
    {
        var label = Layout("front-round-2in", a, "deco");
        Assert.True(label.Lines.Count(l => l.Role == Role.NetQuantity) == 1, a);
    });

    [Fact]
    public void A_name_on_a_disc_takes_two_lines_where_that_makes_it_larger()
    {
        var name = Layout("bar-front-2x2", "medallion", "soft").Texts.Single(t => t.Role == Role.Name);
        Assert.True(name.LetterHeight.Millimetres > 3.2m, name.LetterHeight.ToString());
    }

    [Fact]
    public void The_edges_of_a_band_bear_the_ornament_and_the_words_reversed_out_of_a_plate()
    {
        var label = Layout("bar-band");
        var (look, edge) = (label.Design.Look!, label.Design.Panels.Single(p => p.Id == "edge"));
        Assert.Contains(label.Drawings, d => !d.IsGround && d.Box.Left >= Points.Of(edge.X)
            && d.Box.Left + d.Box.Width <= Points.Of(edge.X) + Points.Of(edge.Width) && d.Box.Height > 100);
        Assert.All(label.Lines.Where(l => l.Role == Role.Directions),
            l => Assert.Equal((look.Palette.OnPlate, look.Palette.Plate), (l.Ink, l.Ground)));
        Assert.NotEmpty(label.Bars);
    }

    [Theory]
    [InlineData("colour-block"), InlineData("ranged-left")]
    public void A_range_has_its_kinds_and_quantities_side_by_side_in_each_or_in_none(string arrangement)
    {
        var design = LabelDesign.Load("bar-front-2x2");
        bool[] Paired(params string[] kinds)
        {
            LabelContent[] range = [.. kinds.Select((kind, i) =>
                FrontTests.Usual(Market.Us) with { ProductName = $"Hayloft {"ABC"[i]}", Identity = kind })];
            return [.. range.Select(content =>
            {
                var look = RangeFit.Over(design, FrontTests.Of(arrangement, "bookish", OrnamentFamily.All[5], null, 20), range);
                var texts = LabelFitter.Fit(design.In(look), content, null).OrRefuse().Texts;
                Length Foot(Role role) => texts.Single(t => t.Role == role) is var text
                    ? Length.FromMillimetres(text.Y.Millimetres + text.Height.Millimetres) : default;
                return Math.Abs(Foot(Role.Identity).Millimetres - Foot(Role.NetQuantity).Millimetres) < 1;
            })];
        }
        Assert.All(Paired("Bar soap", "Soap", "Bar soap"), Assert.True);
        Assert.All(Paired("Bar soap", "Soap", "Olive and coconut bar soap"), Assert.False);
    }

    [Theory]
    [InlineData("Bramble & Shea", "Bramble|& Shea")]
    [InlineData("Salt and Sea Lavender", "Salt|and Sea|Lavender")]
    [InlineData("Fleur de Sel", "Fleur|de Sel")]
    [InlineData("Hayloft", "Hayloft")]
    public void Names_are_broken_where_a_reader_pauses(string name, string pieces) =>
        Assert.Equal(pieces.Split('|'), SenseBreaks.Of(name));

    [Fact]
    public void No_dot_dangles_at_the_end_of_a_line()
    {
        var layout = LabelFitter.Fit(LabelDesign.Load("bar-back-2x2.625"),
            FrontTests.Usual(Market.Us) with
            {
                Contact = "555-0127 · a-rather-long-name-for-a-page.example · post@a-rather-long-name.example",
            }, null).OrRefuse();
        var contact = layout.Lines.Where(l => l.Role == Role.Contact).ToList();
        Assert.True(contact.Count > 1);
        Assert.All(contact, l => Assert.False(l.Text.Text.TrimEnd().EndsWith('·'), l.Text.Text));
    }
}
