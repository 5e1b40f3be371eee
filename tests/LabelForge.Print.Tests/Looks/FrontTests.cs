using System.Collections.Immutable;
using LabelForge.Declarations;
using LabelForge.Markets;
using LabelForge.Measures;
using LabelForge.Print.Arrangements;
using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Fitting;
using LabelForge.Print.Lettering;
using LabelForge.Print.Looks;
using LabelForge.Print.Ornaments;
using LabelForge.Print.Palettes;
using LabelForge.Quantities;

namespace LabelForge.Print.Tests.Looks;

/// <summary>Beauty never costs the law: every arrangement, frame, ornament and shape, with long
/// words and short, in four markets.</summary>
public class FrontTests
{
    // 0.5 mm.
    private const double ClearOfOrnament = 0.5 * 72 / 25.4;

    private static readonly string[] Shapes = ["bar-front-2x2", "bar-2x4", "front-round-2in", "jar-side-2x8", "bottle-front-2x2.625",
        "hang-tag-fold", "bag-seal-fold", "lip-tube-wrap", "tin-lid-2in", "bar-band", "jar-lid-2.5in", "jar-lid-2in", "bar-57x99.1mm",
        "bottle-wrap-3.333x4", "bottle-wrap-67.7x99.1mm", "jar-side-1.25x8in", "dip-tin-lid-1.5in",
        "front-oval-1.5x2.5in"];

    private static readonly string[] Types = ["bookish", "round", "capitals", "soft", "stylish", "deco", "brush"];

    private static readonly Role[] Required = [Role.Identity, Role.NetQuantity, Role.Ingredients, Role.Warnings, Role.Responsible];

    // Of each manner some that are quickly drawn: all are cut off at their windows, as another test here holds.
    private static readonly OrnamentFamily[] Light =
        [.. new[] { "rays", "comb", "sprig", "stars", "ridges" }.Select(id => OrnamentFamily.Named(id)!)];

    public static TheoryData<string, string> ArrangementsAndShapes =>
        [.. ArrangementFile.Known.SelectMany(a => Shapes.Select(s => (a, s)))];

    public static TheoryData<string> Arrangements => [.. ArrangementFile.Known];

    /// <summary>Each market, with the shortest words, usual ones and the longest, by turns without a frame and with one; ornament and
    /// types change from one to the next.</summary>
    [Theory, MemberData(nameof(ArrangementsAndShapes))]
    public void Every_front_keeps_the_rules_it_is_measured_against(string arrangement, string shape)
    {
        var turn = 0;
        var arranged = 0;
        foreach (var market in Market.All)
        {
            foreach (var content in new[] { Short(market), Usual(market), Long(market) })
            {
                // Without a frame and with one in turn: every frame comes up on every shape, over the arrangements.
                foreach (var frame in new[] { turn % 2 == 0
                    ? null
                    : FrameFamily.All[(turn / 2 + Array.IndexOf(Shapes, shape)) % FrameFamily.All.Length] })
                {
                    var family = Light[turn % Light.Length];
                    var look = Of(arrangement, Types[turn++ % Types.Length], family, frame, turn * 37 % 360);
                    if (LabelFitter.Fit(LabelDesign.Load(shape).In(look), content, Samples.Block()) is not Fit.Fits { Layout: var layout })
                        continue;
                    arranged += layout.Design.Look?.Arrangement == arrangement ? 1 : 0;
                    Lawful(layout, $"{arrangement}, {shape}, {market}, {content.ProductName}, {frame?.Id ?? "no frame"}, {family.Id}");
                }
            }
        }
        // An arrangement that fits nothing proves nothing; ranged left has no round form and upright no oval one, and a lid
        // bears fewer words.
        Assert.True(arranged > 0
            || LabelDesign.Load(shape) is { Round: true } round && ArrangementFile.For(arrangement, Points.Of(round.Width),
                Points.Of(round.Height), true, DesignStyle.Load("plain")) is null
            || shape == "lip-tube-wrap" || shape == "bag-seal-fold", $"{arrangement} never fits {shape}.");
    }

    /// <summary>Words stand where they stand whatever the ornament, and it is cut off at its window: so a few families of each manner
    /// speak for all in an arrangement, and each family comes up in some.</summary>
    [Theory, MemberData(nameof(Arrangements))]
    public void Words_stand_the_same_whatever_the_ornament_and_it_keeps_to_its_window(string arrangement)
    {
        var at = ArrangementFile.Known.ToList().IndexOf(arrangement);
        foreach (var shape in new[] { "bar-front-2x2", "front-round-2in" })
        {
            LabelLayout[] layouts = [.. OrnamentFamily.All.Where((_, i) => i % 8 == at)
                .Select(f => LabelFitter.Fit(LabelDesign.Load(shape).In(Of(arrangement, "bookish", f, null, 210)), Usual(Market.Us)))
                .OfType<Fit.Fits>().Select(f => f.Layout)];
            Assert.All(layouts, l => Lawful(l, $"{arrangement}, {shape}, {l.Design.Look?.Ornament?.Family.Id}"));
            Assert.All(layouts, l => Assert.Equal(layouts[0].Texts, l.Texts));
            Assert.All(layouts.SelectMany(l => l.Drawings), d => Assert.True(d.IsGround || d.Clip is not null || d.Paths.Length == 1,
                "Only a ring is drawn without a window."));
        }
    }

    [Theory, MemberData(nameof(Arrangements))]
    public void A_usual_product_gets_the_arrangement_that_was_asked_for(string arrangement)
    {
        var layout = LabelFitter.Fit(LabelDesign.Load("bar-front-2x2").In(Of(arrangement, "bookish", OrnamentFamily.All[0], null, 350)),
            Usual(Market.Us), null).OrRefuse();
        Assert.Equal(arrangement, layout.Design.Look?.Arrangement);
        Assert.NotEmpty(layout.Drawings);
        var (name, net) = (layout.Texts.Single(t => t.Role == Role.Name), layout.Texts.Single(t => t.Role == Role.NetQuantity));
        Assert.True(name.LetterHeight.Millimetres >= 1.55m * net.LetterHeight.Millimetres, $"{name.LetterHeight} over {net.LetterHeight}");
        Assert.True(net.LetterHeight.Millimetres <= 1.05m * net.RequiredFloor.Millimetres,
            "The net quantity is at its least or little more.");
    }

    [Theory, MemberData(nameof(Arrangements))]
    public void A_range_stands_at_one_size(string arrangement)
    {
        var design = LabelDesign.Load("bar-front-2x2");
        LabelContent[] range = [.. new[] { ("Hayloft", "Bar soap"), ("Bramble & Shea", "Shea bar soap"), ("Peach Morning", "Bar soap") }
            .Select(w => Usual(Market.Us) with { ProductName = w.Item1, Identity = w.Item2 })];
        var heights = range.Select(content =>
        {
            var look = RangeFit.Over(design, Of(arrangement, "bookish", OrnamentFamily.All[5], null, 20), range);
            return LabelFitter.Fit(design.In(look), content, null).OrRefuse().Texts
                .Single(t => t.Role == Role.Name).LetterHeight.Millimetres;
        }).ToList();
        Assert.True(heights.Max() - heights.Min() < 0.02m, string.Join(", ", heights));
    }

    // A round front has no ranged left; what is used instead is fitted over the range too.
    [Theory]
    [InlineData("front-round-2in"), InlineData("tin-lid-2in")]
    public void A_range_stands_at_one_size_in_the_arrangement_that_is_used_instead(string shape)
    {
        var design = LabelDesign.Load(shape);
        LabelContent[] range = [.. new[] { "Hayloft", "Bramble & Shea", "Peach Morning" }
            .Select(n => Usual(Market.Us) with { ProductName = n })];
        var names = range.Select(content => LabelFitter.Fit(
                design.In(RangeFit.Over(design, Of("ranged-left", "bookish", OrnamentFamily.All[5], null, 20), range)), content, null)
            .OrRefuse()).Select(l => (l.Design.Look?.Arrangement, l.Texts.Single(t => t.Role == Role.Name).LetterHeight)).ToList();
        Assert.All(names, n => Assert.Equal("stack", n.Arrangement));
        Assert.True(names.Max(n => n.LetterHeight.Millimetres) - names.Min(n => n.LetterHeight.Millimetres) < 0.02m);
    }

    // Round is a shape of its own; a bag's seal is a strip an inch high.
    [Theory]
    [InlineData("bar-front-2x2"), InlineData("bar-2x4"), InlineData("front-round-2in"), InlineData("jar-side-2x8")]
    [InlineData("bottle-front-2x2.625"), InlineData("hang-tag-fold"), InlineData("lip-tube-wrap"), InlineData("bar-57x99.1mm")]
    [InlineData("bottle-wrap-3.333x4"), InlineData("front-oval-2x3.333in")]
    public void A_common_shape_has_six_arrangements_to_choose_from(string shape)
    {
        var content = shape == "lip-tube-wrap" ? LipBalm : Usual(Market.Us);
        var found = ArrangementFile.Known.Where(a => LabelFitter.Fit(
            LabelDesign.Load(shape).In(Of(a, "bookish", OrnamentFamily.All[3], null, 150)), content, null)
                is Fit.Fits { Layout.Design.Look.Arrangement: var used } && used == a).ToList();
        Assert.True(found.Count >= 6, $"{shape}: {string.Join(", ", found)}");
    }

    [Theory]
    [InlineData("bar-57x99.1mm"), InlineData("bottle-wrap-3.333x4")]
    [InlineData("bar-2x4"), InlineData("bottle-back-2x2.625"), InlineData("jar-side-2x8"), InlineData("bar-back-2x2.625")]
    public void The_backs_of_a_range_are_read_at_one_size(string design)
    {
        foreach (var market in Market.All)
        {
            var drawn = LabelDesign.Load(design);
            var usual = Usual(market);
            LabelContent[] range =
            [
                usual with { Ingredients = [.. usual.Ingredients.Take(9)] },
                usual with
                {
                    ProductName = "Salt Meadow", Ingredients = [.. usual.Ingredients.Take(13), "Ferric Ferrocyanide"],
                Directions = "Work up a lather with water, then rinse.",
                },
                usual with { ProductName = "Hayloft", Directions = "Work up a lather with water, then rinse. Keep it dry between uses." },
            ];
            var labels =
                range.Select(
                    content =>
                        LabelFitter.Fit(drawn.In(RangeFit.Over(drawn, Of("stack", "bookish", OrnamentFamily.All[5], null, 20), range,
                            Samples.Block())), content, Samples.Block()).OrRefuse()).ToList();
            foreach (var role in new[] { Role.Ingredients, Role.Directions, Role.Warnings, Role.Responsible, Role.Contact, Role.Lot })
            {
                var heights = labels.SelectMany(l => l.Texts).Where(t => t.Role == role).Select(t => t.LetterHeight.Millimetres).ToList();
                Assert.True(heights.Count == 0 || heights.Max() - heights.Min() < 0.005m,
                    $"{design}, {market}, {role}: {string.Join(", ", heights)}");
            }
            Assert.Single(labels.Select(l => l.Drawings.Count(d => !d.IsGround)).Distinct());
        }
    }

    [Fact]
    public void The_smallest_letters_of_a_back_grow_first()
    {
        var texts = LabelFitter.Fit(LabelDesign.Load("bar-back-2x2.625"), Usual(Market.Us), null).OrRefuse().Texts
            .Where(t => t.Role is Role.Ingredients or Role.Responsible or Role.Contact).ToList();
        var (low, high) = (texts.Min(t => t.LetterHeight.Millimetres), texts.Max(t => t.LetterHeight.Millimetres));
        // Either they stand at one height, or what is lower is at its most and what is higher at its least.
        Assert.True(high - low < 0.02m
            || texts.All(t => t.LetterHeight.Millimetres - low < 0.02m
                || t.LetterHeight.Millimetres <= t.RequiredFloor.Millimetres * 1.02m
                || low >= 1.39m), $"{low} and {high}");
    }

    [Theory, MemberData(nameof(Arrangements))]
    public void A_logo_stands_on_the_front_or_is_said_to_be_left_out(string arrangement)
    {
        var logo = new ArtBlock(30, 10) { Paths = [new ArtPath("M0 0H30V10H0Z", Colour.Black, null, 0, true)] };
        var extras = LabelExtras.None with { Art = LabelExtras.None.Art.Add(LabelExtras.Logo, logo) };
        foreach (var shape in new[] { "bar-front-2x2", "bottle-front-2x2.625", "jar-side-2x8" })
        {
            var layout = LabelFitter.Fit(LabelDesign.Load(shape).In(Of(arrangement, "bookish", OrnamentFamily.All[0], null, 20)),
                Usual(Market.Us), Samples.Block(), extras).OrRefuse();
            Lawful(layout, $"{arrangement}, {shape}");
            Assert.True(layout.Shapes.Length == 1 != layout.LeftOut.Any(l => l.Contains("logo", StringComparison.Ordinal)),
                $"{arrangement}, {shape}: {layout.Shapes.Length} drawn");
            if (layout.Shapes.IsEmpty)
                continue;
            var drawn = layout.Shapes[0];
            var (wide, high) = (30 * drawn.Scale, 10 * drawn.Scale);
            Assert.InRange(high, 3, 6.5 * 72 / 25.4 + 0.01);
            Assert.All(layout.Lines,
                l => Assert.False(l.X < drawn.X + wide
                    && l.X + l.Text.Width > drawn.X
                    && l.Y - l.Text.Shape.Top * l.Text.Size < drawn.Y + high && l.Y > drawn.Y && !l.Upright && l.Radius == 0,
                    $"{arrangement}, {shape}: {l.Text.Text} stands on the logo"));
        }
    }

    [Fact]
    public void An_empty_slot_leaves_no_hole()
    {
        var design = LabelDesign.Load("bar-front-2x2").In(Of("split", "round", OrnamentFamily.All[0], null, 20));
        var content = Usual(Market.Us);
        var without = LabelFitter.Fit(design, content, null).OrRefuse();
        var with = LabelFitter.Fit(design, content with { ScentLine = "sea lavender, lime", Price = "$8" }, null).OrRefuse();
        Assert.Contains(with.Texts, t => t is { Role: Role.ScentLine, Text: "sea lavender, lime" });
        Assert.Contains(with.Texts, t => t.Role == Role.Price);
        Assert.Equal(with.Texts.Length - 2, without.Texts.Length);
    }

    internal static void Lawful(LabelLayout layout, string what)
    {
        Assert.True(SmallRoomTests.IsInsideTheCut(layout), $"{what}: words cross the cut");
        Assert.All(layout.Constraints.Where(c => c.Required), c => Assert.True(c.Kept, $"{what}: {c.Broken.Wrong}"));
        foreach (var line in layout.Lines)
        {
            var contrast = Colour.Contrast(line.Ink ?? layout.Design.Ink, line.Ground ?? layout.Design.Ground);
            Assert.True(contrast >= (line.Role is { } role && Required.Contains(role)
                ? Palette.RequiredContrast
                : Palette.DisplayContrast), $"{what}: {line.Text.Text} at {contrast:0.00} to 1");
        }
        foreach (var text in layout.Texts)
        {
            Assert.True(text.LetterHeight.Millimetres >= text.RequiredFloor.Millimetres - 0.0002m, $"{what}: {text.Text}");
            Assert.True(OrnamentClearance.Keeps(layout, text, Required.Contains(text.Role) ? ClearOfOrnament : 0.2),
                $"{what}: {text.Text} stands too near to an ornament");
            Assert.True(text.X.Millimetres >= 0 && text.X.Millimetres + text.Width.Millimetres <= layout.Design.Width.Millimetres + 0.01m
                && text.Y.Millimetres + text.Height.Millimetres <= layout.Design.Height.Millimetres + 0.01m,
                $"{what}: {text.Text} leaves the label");
        }
    }

    internal static Look Of(string arrangement, string types, OrnamentFamily family, FrameFamily? frame, double hue) => new()
    {
        Arrangement = arrangement,
        Types = types,
        Frame = frame,
        Ornament = new OrnamentChoice(family, "seed"),
        Palette = Palette.Of(hue),
    };

    internal static LabelContent Usual(Market market) => Samples.Bar with
    {
        BusinessName = "Thistlepond Bench",
        ProductName = "Bramble & Shea",
        NetQuantity = NetOf(market),
        Market = market,
        Identity = market == Market.Ca ? "Bar soap / Pain de savon" : "Glycerin bar soap",
        Warnings = ["For external use only. Keep out of eyes."],
        Floors = FloorsOf(market),
        PrincipalPanel = Panel.Rectangle(Length.FromInches(2.2m), Length.FromInches(2.2m)),
    };

    internal static LabelContent LipBalm => Usual(Market.Us) with
    {
        ProductName = "Moss Lane",
        Identity = "Lip balm",
        NetQuantity = "Net Wt 0.15 oz (4.5 g)",
        Directions = "Smooth over lips.",
        Ingredients = ["Cocos Nucifera (Coconut) Oil", "Beeswax", "Tocopherol", "Fragrance"],
        Warnings = [],
    };

    private static LabelContent Short(Market market) =>
        Usual(market) with
        {
            BusinessName = "Elm",
            ProductName = "Io",
            Identity = "Soap",
            Ingredients = ["Glycerin"],
            Warnings = [],
            Directions = null,
        };

    private static LabelContent Long(Market market) => Usual(market) with
    {
        BusinessName = "The Lower Wendle Soap and Body Company",
        ProductName = "Elderflower, Salt & Wild Honey Morning",
        Identity = "Olive, coconut and shea bar soap with oats",
        Ingredients = [.. Samples.Bar.Ingredients.Concat(Samples.Bar.Ingredients).Take(30)],
        Warnings = ["For external use only. Keep out of eyes; rinse well if soap gets in them.",
            "Pour usage externe seulement. Éviter le contact avec les yeux; bien rincer.", "Cesser l'emploi si la peau s'irrite."],
    };

    private static string NetOf(Market market) => market == Market.Us ? "Net Wt 4 oz (113 g)" : "113 g";

    private static LetterFloors FloorsOf(Market market) =>
        LetterFloors.For(market, NetAmount.Parse("113 g").Value!, Panel.Rectangle(Length.FromInches(2.2m), Length.FromInches(2.2m)), null,
            new DateOnly(2026, 11, 25));
}
