using System.Collections.Immutable;
using CsCheck;
using LabelForge.Markets;
using LabelForge.Measures;
using LabelForge.Print.Arrangements;
using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Fitting;
using LabelForge.Print.Lettering;
using LabelForge.Print.Ornaments;
using LabelForge.Recipes.Files;

namespace LabelForge.Print.Tests.Looks;

/// <summary>Words of a front are moved as far as the rules and what else stands there let them, and no further.</summary>
public sealed class MovedWordsTests
{
    private static readonly string[] Shapes = ["bar-front-2x2", "front-round-2in", "bottle-front-2x2.625", "jar-side-2x8", "bar-2x4"];

    private static readonly Role[] Movable =
        [Role.Name, Role.Business, Role.Identity, Role.NetQuantity, Role.ScentLine, Role.Price];

    /// <summary>However far words are asked to go, one after the other, the label stays within every rule that it is measured
    /// against, and no word stands on an ornament or on another.</summary>
    [Fact]
    public void Words_that_are_moved_never_break_a_rule() =>
        Gen.Select(Of([.. ArrangementFile.Known]), Of(Shapes), Of(Movable),
                Of(Movable), Gen.Double[-80, 80].Array[4], Gen.Int[0, OrnamentFamily.All.Length - 1])
            .Sample((arrangement, shape, one, other, by, family) =>
            {
                var layout = Moved(shape, arrangement, OrnamentFamily.All[family], Asked((one, by[0], by[1]), (other, by[2], by[3])));
                FrontTests.Lawful(layout, $"{arrangement}, {shape}, {one} {by[0]:0.0} {by[1]:0.0}, {other} {by[2]:0.0} {by[3]:0.0}");
            });

    [Fact]
    public void Words_go_as_far_as_they_are_asked_where_nothing_stands()
    {
        var (was, now) = (Moved("bar-front-2x2", "ranged-left", null, Asked()),
            Moved("bar-front-2x2", "ranged-left", null, Asked((Role.Name, 3, -2))));
        var (from, to) = (Place(was, Role.Name), Place(now, Role.Name));
        Assert.Equal(3, to.X - from.X, 3);
        Assert.Equal(-2, to.Y - from.Y, 3);
        Assert.Equal((3.0, -2.0), (Math.Round(now.Moved[Role.Name].X, 6), Math.Round(now.Moved[Role.Name].Y, 6)));
        Assert.Equal(was.Texts.Where(t => t.Role != Role.Name), now.Texts.Where(t => t.Role != Role.Name));
    }

    [Fact]
    public void Words_stop_at_the_ornament_at_other_words_and_at_the_edge()
    {
        var down = Moved("bar-front-2x2", "ranged-left", OrnamentFamily.All[0], Asked((Role.Name, 0, 100)));
        var window = down.Drawings.Last(d => !d.IsGround).Box;
        Assert.True(Points.Of(down.Texts.Single(t => t.Role == Role.Name).Y) < window.Top);
        var up = Moved("bar-front-2x2", "ranged-left", OrnamentFamily.All[0], Asked((Role.Name, 0, -100)));
        Assert.True(Place(up, Role.Name).Y > Place(up, Role.Business).Y);
        var left = Moved("bar-front-2x2", "ranged-left", OrnamentFamily.All[0], Asked((Role.Business, -100, 0)));
        Assert.InRange(Place(left, Role.Business).X, Points.OfMillimetres(1.4m), Points.OfMillimetres(1.8m));
    }

    [Fact]
    public void Words_on_a_plate_that_runs_over_a_round_labels_cut_stop_at_the_cut()
    {
        var layout = Moved("front-round-2in", "colour-block", OrnamentFamily.All[20],
            Asked((Role.Name, 47, 0), (Role.Identity, -2, -6.1)));
        FrontTests.Lawful(layout, "the name moved to the right");
        Assert.InRange(layout.Moved[Role.Name].X, 0, 46);
    }

    [Fact]
    public void The_net_quantity_is_moved_to_the_sides_and_never_up()
    {
        var (was, now) = (Moved("bar-front-2x2", "stack", null, Asked()),
            Moved("bar-front-2x2", "stack", null, Asked((Role.NetQuantity, 20, -30))));
        Assert.True(Place(now, Role.NetQuantity).X > Place(was, Role.NetQuantity).X);
        Assert.Equal(Place(was, Role.NetQuantity).Y, Place(now, Role.NetQuantity).Y, 6);
    }

    [Theory]
    [InlineData("{ name: [1.5 mm, -2 mm] }", null)]
    [InlineData("{ name: [1.5, -2] }", "look.moved")]
    [InlineData("{ name: [1.5 mm] }", "look.moved")]
    [InlineData("{ name: [900 mm, 0 mm] }", "look.moved")]
    public void What_is_moved_is_written_in_millimetres(string written, string? refused)
    {
        ImmutableDictionary<Role, (double X, double Y)> Read() => LabelForge.Print.Looks.LookText.Moved(
            YamlFile.ReadText($"moved: {written}\n", "look.yaml").OptionalMap("moved"));
        if (refused is null)
            Assert.Equal(Points.OfMillimetres(-2m), Read()[Role.Name].Y);
        else
            Assert.Equal(refused, Assert.Throws<InputException>(() => Read()).Problem.Code);
    }

    private static Gen<T> Of<T>(T[] all) => Gen.Int[0, all.Length - 1].Select(i => all[i]);

    private static (double X, double Y) Place(LabelLayout layout, Role role) =>
        layout.Texts.Single(t => t.Role == role) is var text ? (Points.Of(text.X), Points.Of(text.Y)) : default;

    private static ImmutableDictionary<Role, (double X, double Y)> Asked(params (Role Role, double X, double Y)[] moved) =>
        moved.Aggregate(ImmutableDictionary<Role, (double X, double Y)>.Empty, (all, m) => all.SetItem(m.Role, (m.X, m.Y)));

    private static LabelLayout Moved(string shape, string arrangement, OrnamentFamily? family,
        ImmutableDictionary<Role, (double X, double Y)> moved)
    {
        var look = FrontTests.Of(arrangement, "bookish", family ?? OrnamentFamily.All[0], null, 200);
        return LabelFitter.Fit(LabelDesign.Load(shape).In(look with { Moved = moved, Ornament = family is null ? null : look.Ornament }),
            FrontTests.Usual(Market.Us), Samples.Block()).OrRefuse();
    }
}
