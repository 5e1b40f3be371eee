using CsCheck;
using LabelForge.Print.Palettes;

namespace LabelForge.Print.Tests.Looks;

public class PigmentMixTests
{
    // Darker than the plain base in every channel: what is lighter than the base in one may lighten it there.
    private static readonly Gen<Colour> Colours = Gen.Select(Gen.Byte[30, 220], Gen.Byte[30, 220], Gen.Byte[30, 220],
        (r, g, b) => new Colour(r, g, b));
    private static readonly Gen<Pigment> Pigments = Gen.Select(Colours, Gen.Double[0.002, 0.02], (seen, at) => new Pigment(seen, at));

    // Kubelka 1948: R of an infinitely thick layer from K/S, and K/S from R. For R = 1/2, K/S = 1/4.
    [Fact]
    public void Half_the_light_comes_back_where_absorption_is_a_quarter_of_scattering()
    {
        var grey = PigmentMix.Ratios(new Colour(188, 188, 188));
        Assert.Equal(0.25, grey.Red, 2);
        Assert.Equal(new Colour(188, 188, 188), grey.ToColour());
    }

    [Fact]
    public void A_colourant_at_the_share_of_its_swatch_gives_its_swatch() =>
        Pigments.Sample(p => Assert.True(Oklch.Distance(p.Seen, PigmentMix.Of(PigmentMix.PlainBase, [(p, p.At)])) < 0.006));

    [Fact]
    public void More_of_a_dark_colourant_never_lightens() =>
        Gen.Select(Pigments, Gen.Double[0, 2], Gen.Double[0, 2]).Sample((p, one, other) =>
        {
            var (less, more) = (PigmentMix.Of(PigmentMix.PlainBase, [(p, p.At * Math.Min(one, other))]),
                PigmentMix.Of(PigmentMix.PlainBase, [(p, p.At * Math.Max(one, other))]));
            Assert.True(more.Red <= less.Red && more.Green <= less.Green && more.Blue <= less.Blue);
        });

    [Fact]
    public void The_order_of_stirring_in_does_not_matter() => Gen.Select(Pigments, Pigments).Sample((a, b) =>
        Assert.Equal(PigmentMix.Of(PigmentMix.PlainBase, [(a, a.At), (b, b.At)]),
            PigmentMix.Of(PigmentMix.PlainBase, [(b, b.At), (a, a.At)])));

    // What every child with a box of paints knows, and what mixing of light gets wrong.
    [Fact]
    public void Blue_and_yellow_make_green()
    {
        var mixed = Oklch.Of(PigmentMix.Of(PigmentMix.PlainBase,
            [(new Pigment(new Colour(0x2a, 0x5c, 0xa8), 0.005), 0.0025), (new Pigment(new Colour(0xf2, 0xc8, 0x1e), 0.005), 0.005)]));
        Assert.InRange(mixed.Hue, 110, 190);
    }

    [Fact]
    public void A_shade_that_two_colourants_make_is_found_again() =>
        Gen.Select(Pigments, Pigments, Pigments, Gen.Double[0.3, 1.5], Gen.Double[0.3, 1.5]).Sample((a, b, c, one, other) =>
        {
            var wanted = PigmentMix.Of(PigmentMix.PlainBase, [(a, a.At * one), (b, b.At * other)]);
            var found = ShadeMatch.Nearest(wanted, PigmentMix.PlainBase, [(a, a.At * 4), (b, b.At * 4), (c, c.At * 4)]);
            // The search may do with one colourant less where nobody would see it.
            Assert.True(found.Off < 0.035, $"{found.Off} off with {string.Join(", ", found.Shares)}");
            Assert.Equal(found.Gives, PigmentMix.Of(PigmentMix.PlainBase, new[] { a, b, c }.Zip(found.Shares)));
        }, iter: 100);

    [Fact]
    public void No_more_goes_in_than_may() => Gen.Select(Colours, Pigments, Gen.Double[0.0001, 0.004]).Sample((wanted, pigment, most) =>
        Assert.True(ShadeMatch.Nearest(wanted, PigmentMix.PlainBase, [(pigment, most)]).Shares[0] <= most));
}
