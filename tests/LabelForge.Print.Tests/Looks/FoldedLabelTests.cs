using LabelForge.Print.Designs;
using LabelForge.Quantities;

namespace LabelForge.Print.Tests.Looks;

/// <summary>What is seen of a label on its package, from the front and from behind: every panel once, and upright.</summary>
public class FoldedLabelTests
{
    [Theory]
    [InlineData("bar-band", "bar", "3.25x2.25x1 in", FoldManner.Band)]
    [InlineData("bar-band", "bar", "80x50x25 mm", FoldManner.Band)]
    [InlineData("lip-tube-wrap", "tube", "16.5x52 mm", FoldManner.Round)]
    [InlineData("tin-side", "tin", "2.25x0.75 in", FoldManner.Round)]
    [InlineData("bottle-wrap-3.333x4", "bottle", "2.2x4 in", FoldManner.Round)]
    [InlineData("bottle-wrap-67.7x99.1mm", "bottle", "2.2x4 in", FoldManner.Round)]
    [InlineData("jar-side-2x8", "jar", "3x2 in", FoldManner.Round)]
    [InlineData("jar-side-1.25x8in", "jar", "2.6x1.5 in", FoldManner.Round)]
    public void A_label_round_its_package_shows_its_front_in_front_and_its_back_behind(string id, string shape, string size,
        FoldManner manner)
    {
        var design = LabelDesign.Load(id, Package.Parse(shape, size).Value!);
        var folded = FoldedLabel.Of(design)!;
        Assert.Equal(manner, folded.Manner);
        var front = design.Panels.FirstOrDefault(p => p.Principal) ?? design.Panels[0];
        var middle = front.X.Millimetres + front.Width.Millimetres / 2;
        Assert.InRange(middle, folded.Front.X, folded.Front.X + folded.Front.Width);
        Assert.False(middle > folded.Back.X && middle < folded.Back.X + folded.Back.Width);
        Assert.Equal(folded.Front.Width, folded.Back.Width);
        Assert.False(folded.Front.Turned || folded.Back.Turned);
    }

    [Fact]
    public void The_faces_of_a_band_lie_side_by_side_and_leave_the_lap_over()
    {
        var design = LabelDesign.Load("bar-band", Package.Parse("bar", "3.25x2.25x1 in").Value!);
        var folded = FoldedLabel.Of(design)!;
        var faces = new[] { folded.BesideBack!, folded.Front, folded.BesideFront!, folded.Back };
        Assert.All(faces.Zip(faces.Skip(1)), pair => Assert.Equal(pair.First.X + pair.First.Width, pair.Second.X));
        Assert.Equal(10m, design.Width.Millimetres - folded.Back.X - folded.Back.Width);
    }

    [Theory]
    [InlineData("hang-tag-fold")]
    [InlineData("bag-seal-fold")]
    public void What_goes_over_the_top_is_turned_so_that_it_stands_upright_behind(string id)
    {
        var folded = FoldedLabel.Of(LabelDesign.Load(id))!;
        Assert.Equal((FoldManner.OverTop, false, true), (folded.Manner, folded.Front.Turned, folded.Back.Turned));
        Assert.Equal(folded.Front.Y, folded.Back.Y + folded.Back.Height);
    }

    [Theory]
    [InlineData("bar-2x4")]
    [InlineData("front-round-2in")]
    [InlineData("tin-lid-2in")]
    public void A_label_on_one_face_is_not_folded(string id) => Assert.Null(FoldedLabel.Of(LabelDesign.Load(id)));
}
