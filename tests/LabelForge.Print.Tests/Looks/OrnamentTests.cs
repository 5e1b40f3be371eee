using LabelForge.Print.Ornaments;
using LabelForge.Print.Ornaments.Families;
using SkiaSharp;

namespace LabelForge.Print.Tests.Looks;

public class OrnamentTests
{
    public static TheoryData<string> Families => [.. OrnamentFamily.All.Select(f => f.Id)];

    public static TheoryData<string> Frames => [.. FrameFamily.All.Select(f => f.Id)];

    [Fact]
    public void There_are_nineteen_families_and_six_frames_or_more_each_with_a_name_of_its_own()
    {
        Assert.True(OrnamentFamily.All.Length >= 19);
        Assert.True(FrameFamily.All.Length >= 6);
        Assert.Equal(OrnamentFamily.All.Length, OrnamentFamily.All.DistinctBy(f => f.Id).Count());
        Assert.Equal(FrameFamily.All.Length, FrameFamily.All.DistinctBy(f => f.Id).Count());
        Assert.All(Enum.GetValues<ScentFamily>(),
            scent => Assert.True(OrnamentFamily.All.Count(f => f.Suits.Contains(scent)) >= 3, $"{scent} has too few."));
    }

    [Fact] // The first numbers for the seed 1234567, as the generator's reference implementation gives them.
    public void Chance_is_SplitMix64()
    {
        var chance = new SeededNumbers(1234567);
        ulong[] published = [6457827717110365317, 3203168211198807973, 9817491932198370423, 4593380528125082431, 16408922859458223821];
        Assert.All(published, p => Assert.Equal(p, chance.Next()));
    }

    [Theory, MemberData(nameof(Families))]
    public void The_same_seed_gives_the_same_ornament_and_another_seed_another(string id)
    {
        var family = OrnamentFamily.Named(id)!;
        string Drawn(string seed) => string.Concat(family.Draw(30, 22, seed).Paths.Select(p => p.Data));
        Assert.Equal(Drawn("a"), Drawn("a"));
        // Nothing is left to chance in a sun, in scales, or in a bee that stands alone.
        if (id is not ("rays" or "scales" or "seed-head" or "plait" or "bees"))
            Assert.NotEqual(Drawn("a"), Drawn("b"));
    }

    /// <summary>Light enough for an ink-jet, and enough to be seen: between a fiftieth and three
    /// quarters of the box is inked, in every box.</summary>
    [Theory, MemberData(nameof(Families))]
    public void Every_family_inks_a_fair_share_of_any_box(string id)
    {
        foreach (var (width, height) in new[] { (20.0, 20.0), (44.0, 9.0), (8.3, 30.0), (60.0, 40.0) })
        {
            var share = Inked(OrnamentFamily.Named(id)!.Draw(width, height, "seed"));
            Assert.True(share is > 0.02 and < 0.75, $"{id} in {width} x {height} inks {share:P1}.");
        }
    }

    [Theory, MemberData(nameof(Families))]
    public void More_weight_is_more_ink(string id)
    {
        var family = OrnamentFamily.Named(id)!;
        Assert.True(Inked(family.Draw(24, 24, "seed", weight: 1.4)) > 0.97 * Inked(family.Draw(24, 24, "seed", weight: 0.8)), id);
    }

    [Theory, MemberData(nameof(Families))]
    public void Every_path_is_one_that_a_drawing_program_reads(string id)
    {
        foreach (var path in OrnamentFamily.Named(id)!.Draw(25, 18, "seed").Paths)
        {
            using var read = SKPath.ParseSvgPathData(path.Data);
            Assert.NotNull(read);
            Assert.False(read.IsEmpty);
            Assert.True(path.Stroke is 0 or >= 0.08, "A line thinner than a printer's dot comes out broken.");
        }
    }

    [Theory, MemberData(nameof(Frames))]
    public void A_frame_stays_on_the_edge_of_its_box_and_leaves_the_middle_free(string id)
    {
        var frame = FrameFamily.Named(id)!;
        foreach (var round in new[] { false, true })
        {
            foreach (var path in frame.Draw(50, 50, round, "seed").Paths)
            {
                using var read = SKPath.ParseSvgPathData(path.Data);
                var box = read.TightBounds;
                Assert.True(box.Left >= -0.7 && box.Top >= -0.7 && box.Right <= 50.7 && box.Bottom <= 50.7, $"{id}: {box}");
                var middle = SKRect.Create(11, 11, 28, 28);
                Assert.DoesNotContain(read.Points, p => middle.Contains(p));
            }
        }
    }

    [Fact]
    public void The_plane_groups_are_seventeen_and_each_is_a_group()
    {
        Assert.Equal(17, WallpaperGroup.All.Length);
        foreach (var group in WallpaperGroup.All)
        {
            // Two moves one after the other are a third one, whole cells apart: tried on a place of no symmetry.
            var place = new Spot(0.137, 0.291);
            foreach (var first in group.Moves)
                foreach (var second in group.Moves)
                    Assert.Contains(group.Moves, m => SameInCell(m.Of(place), second.Of(first.Of(place))));
            Assert.Equal(group.Moves.Length, group.Moves.Select(m => Cell(m.Of(place))).Distinct().Count());
        }
    }

    [Fact]
    public void A_path_is_turned_about_the_origin_and_moved()
    {
        Assert.Equal("M10 5L10 7A1 1 90 0 1 8 5Z", PathMove.Of("M0 0L2 0A1 1 0 0 1 0 2Z", 90, new Spot(10, 5)));
        Assert.Equal("M3 4L5 4L5 6L3 6Z", PathMove.Of("M0 0H2V2H0Z", 0, new Spot(3, 4)));
    }

    private static bool SameInCell(Spot a, Spot b) => Cell(a) == Cell(b);

    private static (double, double) Cell(Spot p) => (Math.Round((p.X % 1 + 2) % 1, 6), Math.Round((p.Y % 1 + 2) % 1, 6));

    private static double Inked(OrnamentDrawing drawing)
    {
        const int Dots = 10;
        using var surface = SKSurface.Create(new SKImageInfo((int)(drawing.Width * Dots), (int)(drawing.Height * Dots)));
        surface.Canvas.Clear(SKColors.White);
        surface.Canvas.Scale(Dots);
        foreach (var path in drawing.Paths)
        {
            using var shape = SKPath.ParseSvgPathData(path.Data);
            using var ink = new SKPaint
            {
                Color = path.Ink == OrnamentInk.Ground ? SKColors.White : SKColors.Black,
                IsAntialias = true,
                Style = path.Stroke > 0 ? SKPaintStyle.Stroke : SKPaintStyle.Fill,
                StrokeWidth = (float)path.Stroke,
            };
            surface.Canvas.DrawPath(shape, ink);
        }
        using var picture = surface.Snapshot();
        using var pixels = SKBitmap.FromImage(picture);
        return pixels.Pixels.Average(p => 1 - p.Red / 255.0);
    }
}
