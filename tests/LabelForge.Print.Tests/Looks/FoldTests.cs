using LabelForge.Print.Designs;
using LabelForge.Quantities;

namespace LabelForge.Print.Tests.Looks;

/// <summary>Designs that wrap or fold, folded: which panel faces where, which way up, and what the lap hides.</summary>
public class FoldTests
{
    [Theory]
    [InlineData("3.25x2.25x1 in")]
    [InlineData("2.2x2.2x1.4 in")]
    [InlineData("80x50x25 mm")]
    public void A_band_round_a_bar_has_each_panel_on_one_face_and_the_lap_hides_none(string size)
    {
        var bar = Package.Parse("bar", size).Value!;
        var design = LabelDesign.Load("bar-band", bar);
        var (height, depth) = (bar.Sides["height"].Millimetres, bar.Sides["depth"].Millimetres);
        // The band goes edge, front, other edge, back, and then laps over the first edge.
        var folds = new[] { 0m, depth, depth + height, 2 * depth + height, 2 * depth + 2 * height };
        int Face(DesignPanel p) =>
        Enumerable.Range(0, 4)
            .Single(i => p.X.Millimetres >= folds[i] - 0.01m && p.X.Millimetres + p.Width.Millimetres <= folds[i + 1] + 0.01m);
        var faces = design.Panels.ToDictionary(p => p.Id, Face);
        Assert.Equal(1, faces["front"]);
        Assert.Equal(3, faces["back"]);
        Assert.Equal([0, 2], new[] { faces["edge"], faces["other edge"] }.Order());
        Assert.True(design.Panels.Single(p => p.Principal).Id == "front");
        Assert.Equal(folds[4] + 10m, design.Width.Millimetres);
        Assert.DoesNotContain(design.Panels, p => p.X.Millimetres + p.Width.Millimetres > folds[4] + 0.01m);
    }

    // A new design that wraps or folds is shown folded, or this fails.
    [Fact]
    public void Every_design_that_goes_round_its_package_or_over_its_top_can_be_shown_folded()
    {
        var folding = LabelDesign.Known.Select(id => LabelDesign.Load(id))
            .Where(d => !d.Round
                && (d.Panels.Any(p => p.Turned)
                    || d.Package is { } package
                        && (package.Sides.ContainsKey("circumference") || d.Width.Millimetres > package.Sides["width"].Millimetres)))
            .ToList();
        Assert.True(folding.Count >= 8, string.Join(", ", folding.Select(d => d.Id)));
        Assert.All(folding, d => Assert.True(FoldedLabel.Of(d) is not null, d.Id));
    }

    [Theory]
    [InlineData("hang-tag-fold")]
    [InlineData("bag-seal-fold")]
    public void What_is_folded_over_the_top_stands_upright_on_both_sides(string id)
    {
        var design = LabelDesign.Load(id);
        var (front, back) = (design.Panels.Single(p => p.Id == "front"), design.Panels.Single(p => p.Id == "back"));
        var fold = design.Height.Millimetres / 2;
        // Above the fold a panel comes to stand upside down behind the front, so it is printed upside down.
        Assert.True(back.Turned && !front.Turned);
        Assert.True(back.Y.Millimetres + back.Height.Millimetres <= fold + 0.01m);
        Assert.True(front.Y.Millimetres >= fold - 0.01m);
        // Folded, the back's foot is as far from the fold as the front's.
        Assert.Equal((double)(design.Height.Millimetres - front.Y.Millimetres - front.Height.Millimetres), (double)back.Y.Millimetres,
            0.05);
    }

    [Theory]
    [InlineData("lip-tube-wrap", "tube", "16.5x52 mm")]
    [InlineData("tin-side", "tin", "2.25x0.75 in")]
    public void What_goes_round_a_tube_or_a_tin_covers_it_once_and_the_lap_hides_no_word(string id, string shape, string size)
    {
        var package = Package.Parse(shape, size).Value!;
        var design = LabelDesign.Load(id, package);
        var round = package.Sides["circumference"].Millimetres;
        Assert.True(design.Width.Millimetres > round, "It laps.");
        Assert.All(design.Panels, p => Assert.True(p.X.Millimetres + p.Width.Millimetres <= round + 0.01m));
    }
}
